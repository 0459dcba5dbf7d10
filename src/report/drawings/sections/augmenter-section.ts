/** The augmenter in place behind the exit, in section, with gap, bell, duct and stays. */
import type { Augmenter, Engine } from '../../../../shared/engine/engine.ts';
import { augmenterPieces, bellRadius } from '../../../../shared/fabrication/bell-pieces.ts';
import { el, type Markup } from '../../charts/svg.ts';
import type { SectionDrawing } from '../../drawing-set.ts';
import { anchor } from '../../format/escape.ts';
import type { Paper } from '../../page.ts';
import { AnnotationStack } from '../annotation-stack.ts';
import {
  chainOfPoints,
  coordinate,
  diameterText,
  drawingSvg,
  FINE_SCALES,
  lengthText,
  scaleText,
  segment,
  standardScale,
  uprightDimensionLine,
  WEIGHT,
  write,
  type XY,
} from '../drafting.ts';
import { DRAWING_WIDTH } from '../side-view.ts';
import type { SectionOptions } from './index.ts';

const SIDE_MARGIN = 30;
const LARGEST_HEIGHT = 70;

export function augmenterSection(
  engine: Engine,
  augmenter: Augmenter,
  paper: Paper,
  { id, marks }: SectionOptions,
): SectionDrawing {
  const { gap, diameter, length, taper } = augmenter;
  const bell = bellRadius(diameter);
  const exit = engine.sections.at(-1)!.endDiameter;
  const last = engine.sections.at(-1)!;
  const stub = Math.max(0.35 * length, 1.2 * last.length);
  const end = gap + bell + length;
  const lip = diameter / 2 + bell;
  const width = DRAWING_WIDTH[paper];
  const scale = standardScale(stub + end, 2 * lip, width - 2 * SIDE_MARGIN, LARGEST_HEIGHT, FINE_SCALES);
  const k = scale * 1e3;
  const origin = (width - (stub + end) * k) / 2 + stub * k;
  const px = (x: number) => origin + x * k;
  const py = (y: number) => -y * k;
  const wall = (points: { x: number; r: number }[]): Markup[] =>
    [1, -1].map((side) =>
      // A sheet wall is thinner than a line at these scales, so that one heavy line stands for it.
      chainOfPoints(
        points.map((p): XY => ({ x: px(p.x), y: py(side * p.r) })),
        { weight: WEIGHT.outline },
      ),
    );
  const pieces = augmenterPieces(engine);
  const duct = [
    ...pieces.map((p) => ({ x: gap + p.startStation, r: p.startDiameter / 2 })),
    { x: end, r: (diameter * taper) / 2 },
  ];
  const startRadius = last.startDiameter / 2;
  const tail = [
    { x: -stub, r: startRadius },
    { x: -last.length, r: startRadius },
    { x: 0, r: exit / 2 },
  ];
  const stay = [1, -1].map((side) =>
    chainOfPoints(
      [
        { x: px(-0.2 * stub), y: py(side * (exit / 2)) - side * 0.6 },
        { x: px(0), y: py(side * (exit / 2)) - side * 0.6 },
        { x: px(gap + bell), y: py(side * (diameter / 2)) - side * 0.6 },
        { x: px(gap + bell + 0.15 * length), y: py(side * ((diameter / 2) * (1 + 0.15 * (taper - 1)))) - side * 0.6 },
      ],
      { dash: 'dashed' },
    ),
  );
  const cross = [
    ...pieces.slice(1).map((p) => ({ x: gap + p.startStation, r: p.startDiameter / 2 })),
    { x: 0, r: exit / 2 },
    { x: gap, r: lip },
    { x: end, r: (diameter * taper) / 2 },
    { x: -last.length, r: startRadius },
  ].map(({ x, r }) => segment({ x: px(x), y: py(r) }, { x: px(x), y: py(-r) }));
  const above = new AnnotationStack(-1, py(lip) - 3, { left: 1, right: width - 1 });
  const below = new AnnotationStack(1, py(-lip) + 3, { left: 1, right: width - 1 });
  const named = (part: string, text: string) => (marks[part] ? `${marks[part]}: ${text}` : text);
  const ductPart = pieces.find((p) => p.id.startsWith('augmenter-duct'))!.id;
  above.addLabels([
    { text: `exit, ${diameterText(exit)}`, from: px(0), to: px(0), startAt: () => py(exit / 2) },
    {
      text: named('augmenter-stay', 'three stays at 120° (dashed)'),
      from: px(gap / 2),
      to: px(gap / 2),
      startAt: () => py((exit + diameter) / 4),
    },
    { text: named(pieces[0].id, `bell, R ${lengthText(bell)}`), from: px(gap), to: px(gap), startAt: () => py(lip) },
    {
      text: named(ductPart, `duct, throat ${diameterText(diameter)}`),
      from: px(gap + bell + 0.3 * length),
      to: px(gap + bell + 0.7 * length),
      startAt: (share) => py((diameter / 2) * (1 + (taper - 1) * (0.3 + 0.4 * share))),
    },
  ]);
  below.addDimensions(
    [
      { text: `gap ${lengthText(gap)}`, x0: px(0), x1: px(gap) },
      { text: lengthText(bell), x0: px(gap), x1: px(gap + bell) },
      { text: `duct ${lengthText(length)}`, x0: px(gap + bell), x1: px(end) },
      { text: `behind the exit ${lengthText(end)}`, x0: px(0), x1: px(end) },
    ],
    (x) => {
      if (x < px(gap / 2)) return py(-exit / 2);
      return x > px(gap + bell + length / 2)
        ? py((-diameter * taper) / 2)
        : x > px(gap + bell / 2)
          ? py(-diameter / 2)
          : py(-lip);
    },
  );
  const right = px(end) + 6;
  const exitRadius = (diameter * taper) / 2;
  const axisText = diameterText(diameter * taper);
  const top = above.reach - 1;
  const svg = drawingSvg(
    {
      id: `${anchor(id)}-augmenter`,
      title: `Augmenter of ${id} in place, scale ${scaleText(scale)}`,
      description: `Gap ${lengthText(gap)}, bell radius ${lengthText(bell)}, throat ${diameterText(diameter)}, duct ${lengthText(length)}, outlet ${axisText}.`,
      width,
      height: below.reach + 1 - top,
    },
    el(
      'g',
      { transform: `translate(0 ${coordinate(-top)})` },
      cross,
      wall(tail),
      wall(duct),
      stay,
      segment({ x: px(-stub) - 4, y: py(0) }, { x: px(end) + 3, y: py(0) }, { dash: 'chain' }),
      [1, -1].map((side) =>
        segment({ x: px(end) + 1, y: py(side * exitRadius) }, { x: right + 1, y: py(side * exitRadius) }),
      ),
      uprightDimensionLine(right, py(exitRadius), py(-exitRadius)),
      write(axisText, { x: right + 3.4, y: py(0) }, { turn: -90, anchor: 'middle' }),
      above.draw(),
      below.draw(),
    ),
  );
  return {
    svg,
    caption: `Augmenter in place, in section; inside diameters. Scale ${scaleText(scale)}. The wall, ${(engine.shell.thickness * 1e3).toFixed(2)} mm, is drawn as one heavy line.`,
  };
}
