/** Section through one poppet on its seat: plate, head, stem, guide, spring and retainer; the open head dashed. */
import type { Engine, PoppetIntake } from '../../../../shared/engine/engine.ts';
import { poppetLengths } from '../../../../shared/fabrication/poppet-layout.ts';
import { plateThickness } from '../../../../shared/fabrication/proportions.ts';
import type { Markup } from '../../charts/svg.ts';
import type { SectionDrawing } from '../../drawing-set.ts';
import { anchor } from '../../format/escape.ts';
import type { Paper } from '../../page.ts';
import {
  chainOfPoints,
  diameterText,
  drawingSvg,
  FINE_SCALES,
  lengthText,
  ring,
  scaleText,
  segment,
  standardScale,
  uprightDimensionLine,
  WEIGHT,
  write,
} from '../drafting.ts';
import { DRAWING_WIDTH } from '../side-view.ts';
import { calloutColumn } from './callouts.ts';
import { box, cutFace } from './hatch.ts';
import type { SectionOptions } from './index.ts';

const LARGEST = { width: 70, height: 100 };
const MARGIN = { left: 24, top: 4 };

/** The axis stands upright: air comes from above, the chamber lies below, the valve opens downwards. */
export function poppetSection(
  engine: Engine,
  intake: PoppetIntake,
  paper: Paper,
  { id, marks }: SectionOptions,
): SectionDrawing {
  const lengths = poppetLengths(engine, intake);
  const plate = plateThickness(engine.sections[0].startDiameter);
  const above = lengths.stemLength;
  const below = intake.lift + lengths.headThickness;
  const reach = intake.headDiameter * 0.75;
  const scale = standardScale(2 * reach, above + below, LARGEST.width, LARGEST.height, FINE_SCALES);
  const k = scale * 1e3;
  const axis = MARGIN.left + reach * k;
  const px = (x: number) => axis + x * k;
  /** Height over the seat face, m, to paper. */
  const py = (y: number) => MARGIN.top + (above - y) * k;
  const key = anchor(id);
  const stem = intake.stemDiameter / 2;
  const port = intake.portDiameter / 2;
  const head = intake.headDiameter / 2;
  const guideTop = plate + lengths.guideLength;
  const springTop = guideTop + lengths.spring.installedLength;
  const retainerTop = springTop + lengths.retainerThickness;
  const guide = 2 * stem;
  const outline = (points: ReturnType<typeof box>, dash?: 'dashed') =>
    chainOfPoints(points, { weight: dash ? WEIGHT.thin : WEIGHT.outline, dash: dash ?? 'solid' }, true);
  const rectangle = (half: number, top: number, bottom: number) => box(px(-half), py(top), px(half), py(bottom));
  const sides = [-1, 1] as const;
  const drawing: (Markup | Markup[])[] = [
    ...sides.map((s) => cutFace(box(px(s * port), py(plate), px(s * reach), py(0)), `${key}-poppet-p${s + 1}`)),
    ...sides.map((s) =>
      cutFace(box(px(s * stem), py(guideTop), px(s * guide), py(plate)), `${key}-poppet-g${s + 1}`, -1, 1.1),
    ),
    outline(rectangle(stem, above, 0)),
    outline(rectangle(head, 0, -lengths.headThickness)),
    outline(rectangle(head, -intake.lift, -intake.lift - lengths.headThickness), 'dashed'),
    ...sides.map((s) =>
      cutFace(
        box(px(s * stem), py(retainerTop), px((s * lengths.retainerDiameter) / 2), py(springTop)),
        `${key}-poppet-r${s + 1}`,
        1,
        1.1,
      ),
    ),
    springCoils(lengths.spring, guideTop, px, py, k),
    segment({ x: axis, y: py(above) - 3 }, { x: axis, y: py(-below) + 3 }, { dash: 'chain' }),
  ];
  const liftX = px(-head) - 6;
  drawing.push(
    segment({ x: px(-reach) - 1, y: py(0) }, { x: liftX - 1, y: py(0) }),
    segment({ x: px(-head) - 1, y: py(-intake.lift) }, { x: liftX - 1, y: py(-intake.lift) }),
    uprightDimensionLine(liftX, py(0), py(-intake.lift)),
    write(`lift ${lengthText(intake.lift)}`, { x: liftX - 1.5, y: py(-intake.lift / 2) + 0.9 }, { anchor: 'end' }),
  );
  const named = (part: string, text: string) => (marks[part] ? `${marks[part]}: ${text}` : text);
  const mm = (metres: number) => `${(metres * 1e3).toFixed(2)} mm`;
  const { spring } = lengths;
  const column = px(reach) + 10;
  const width = DRAWING_WIDTH[paper];
  const callouts = [
    {
      text: named(
        'spring-retainer',
        `retainer, ${diameterText(lengths.retainerDiameter)}, ${mm(lengths.retainerThickness)} thick`,
      ),
      x: lengths.retainerDiameter / 2,
      y: retainerTop,
    },
    {
      text: named(
        'valve-spring',
        `spring, wire Ø ${mm(spring.wireDiameter)}, mean coil ${diameterText(spring.meanCoilDiameter)}, ${spring.activeCoils.toFixed(1)} active coils and 2 dead, free ${lengthText(spring.freeLength)}, fitted ${lengthText(spring.installedLength)}; ${intake.springRate.toFixed(0)} N/m, ${intake.preload.toFixed(2)} N when shut`,
      ),
      x: spring.meanCoilDiameter / 2,
      y: (guideTop + springTop) / 2,
    },
    {
      text: named('stem-guide', `guide, bore to suit the stem, ${lengthText(lengths.guideLength)} long, on its spider`),
      x: guide,
      y: (plate + guideTop) / 2,
    },
    {
      text: named(
        marks['poppet-stem'] ? 'poppet-stem' : 'poppet-valve',
        `stem, ${diameterText(intake.stemDiameter)}, ${lengthText(lengths.stemLength)} long${marks['poppet-stem'] ? ', welded to the head' : ', in one piece with the head'}`,
      ),
      x: stem,
      y: above - lengths.retainerThickness / 2,
    },
    {
      text: named('valve-plate', `seat plate, ${mm(plate)}; port ${diameterText(intake.portDiameter)}`),
      x: reach,
      y: plate / 2,
    },
    {
      text: named(
        marks['poppet-head'] ? 'poppet-head' : 'poppet-valve',
        `head, ${diameterText(intake.headDiameter)}, ${mm(lengths.headThickness)} thick, ${intake.material}; dashed: open`,
      ),
      x: head,
      y: -lengths.headThickness / 2,
    },
  ];
  const height = Math.max(py(-below) + 5, MARGIN.top + callouts.length * 13);
  const svg = drawingSvg(
    {
      id: `${key}-poppet`,
      title: `Section through one poppet of ${id} on its seat, scale ${scaleText(scale)}`,
      description: `${callouts.map((c) => c.text).join('; ')}; lift ${lengthText(intake.lift)}.`,
      width,
      height,
    },
    drawing,
    calloutColumn(
      callouts.map((c) => ({ text: c.text, at: { x: px(c.x), y: py(c.y) } })),
      column,
      width - column - 1,
      MARGIN.top + 4,
      height - 6,
    ),
  );
  return {
    svg,
    caption: `Section through one poppet on its seat, air from above, chamber below. Scale ${scaleText(scale)}. The guide's spider is left out.`,
  };
}

/** Cut wire on both sides, half a pitch apart. */
function springCoils(
  spring: { wireDiameter: number; meanCoilDiameter: number; activeCoils: number; installedLength: number },
  bottom: number,
  px: (x: number) => number,
  py: (y: number) => number,
  k: number,
): Markup[] {
  const coils = Math.max(2, Math.round(spring.activeCoils + 2));
  const r = spring.wireDiameter / 2;
  const pitch = (spring.installedLength - 2 * r) / (coils - 0.5);
  return [-1, 1].flatMap((side) =>
    Array.from({ length: coils }, (_, i) =>
      ring(
        {
          x: px((side * spring.meanCoilDiameter) / 2),
          y: py(bottom + r + pitch * (i + (side > 0 ? 0.5 : 0))),
        },
        Math.max(0.25, r * k),
      ),
    ),
  );
}
