/** Section along one petal: plate with its port, petal shut and open, curved stop. */
import type { Engine, ReedIntake } from '../../../../shared/engine/engine.ts';
import { rowPort, stopRadius, wheelPorts } from '../../../../shared/fabrication/patterns/reed.ts';
import { petalLayout } from '../../../../shared/fabrication/petal-layout.ts';
import { plateThickness, SEAT_LAND } from '../../../../shared/fabrication/proportions.ts';
import { panelThickness, stopThickness } from '../../../../shared/fabrication/reed-parts.ts';
import { el } from '../../charts/svg.ts';
import type { SectionDrawing } from '../../drawing-set.ts';
import { anchor } from '../../format/escape.ts';
import type { Paper } from '../../page.ts';
import { AnnotationStack } from '../annotation-stack.ts';
import {
  chainOfPoints,
  coordinate,
  drawingSvg,
  FINE_SCALES,
  lengthText,
  scaleText,
  segment,
  standardScale,
  uprightDimensionLine,
  write,
  type XY,
} from '../drafting.ts';
import { DRAWING_WIDTH } from '../side-view.ts';
import { box, cutFace } from './hatch.ts';
import type { SectionOptions } from './index.ts';

const SIDE_MARGIN = 26;
const LARGEST_HEIGHT = 50;

/** Lengths along the petal from the clamp edge, heights from the seat face; m. */
function shape(engine: Engine, intake: ReedIntake) {
  const layout = petalLayout(engine, intake);
  const wheel = layout.kind === 'wheel';
  const { land } = wheel ? wheelPorts(layout, intake.portArea) : rowPort(layout, intake.portArea);
  return {
    wheel,
    clamped: wheel ? layout.rootRadius : layout.clampDepth,
    plate: wheel ? plateThickness(engine.sections[0].startDiameter) : panelThickness(engine),
    portStart: Math.max(land, SEAT_LAND),
    portEnd: intake.length - land,
    rim: 0.004,
    stop: stopThickness(intake),
    radius: stopRadius(intake.length, intake.stopLift),
  };
}

export function reedSection(
  engine: Engine,
  intake: ReedIntake,
  paper: Paper,
  { id, marks }: SectionOptions,
): SectionDrawing {
  const s = shape(engine, intake);
  const length = s.clamped + intake.length + s.rim;
  const rise = intake.stopLift + s.stop + intake.thickness;
  const width = DRAWING_WIDTH[paper];
  const scale = standardScale(length, rise + s.plate, width - 2 * SIDE_MARGIN, LARGEST_HEIGHT, FINE_SCALES);
  const k = scale * 1e3;
  const left = (width - length * k) / 2 + s.clamped * k;
  const px = (x: number) => left + x * k;
  const py = (y: number) => -y * k;
  const arc = (offset: number): XY[] =>
    Array.from({ length: 25 }, (_, i) => {
      const turn = ((intake.length / s.radius) * i) / 24;
      return {
        x: px((s.radius - offset) * Math.sin(turn)),
        y: py(intake.thickness + s.radius - (s.radius - offset) * Math.cos(turn)),
      };
    });
  const key = anchor(id);
  const lower = arc(0);
  const upper = arc(s.stop);
  const root = px(-s.clamped);
  const stop = [
    { x: root, y: py(intake.thickness) },
    ...lower,
    ...upper.reverse(),
    { x: root, y: py(intake.thickness + s.stop) },
  ];
  const petalWeight = Math.min(0.9, Math.max(0.35, intake.thickness * k));
  const flat = (y: number): XY[] => [
    { x: root, y },
    { x: px(intake.length), y },
  ];
  const seat = py(intake.thickness / 2);
  const above = new AnnotationStack(-1, py(rise) - 3, { left: 1, right: width - 1 });
  const below = new AnnotationStack(1, py(-s.plate) + 2, { left: 1, right: width - 1 });
  const named = (part: string, text: string) => (marks[part] ? `${marks[part]}: ${text}` : text);
  const heightAt = (x: number) => intake.thickness + s.radius - Math.sqrt(s.radius ** 2 - Math.min(x, s.radius) ** 2);
  const tip = s.radius * Math.sin(intake.length / s.radius);
  const thickness = (metres: number) => `${(metres * 1e3).toFixed(2)} mm`;
  above.addLabels([
    {
      text: named(
        s.wheel ? 'valve-plate' : 'wedge-panel',
        `${s.wheel ? 'valve plate' : 'wedge panel'}, ${thickness(s.plate)}`,
      ),
      from: px(intake.length + s.rim / 2),
      to: px(intake.length + s.rim / 2),
      startAt: () => py(-s.plate / 3),
    },
    {
      text: named(
        s.wheel ? 'stop-plate' : 'stop-strip',
        `stop, ${thickness(s.stop)}, R ${lengthText(s.radius)} over the free length`,
      ),
      from: px(tip * 0.5),
      to: px(tip * 0.5),
      startAt: () => py(heightAt(tip * 0.5) + s.stop),
    },
    {
      text: named(
        s.wheel ? 'petal-wheel' : 'petal',
        `petal, ${thickness(intake.thickness)} ${intake.material}, shut; open as a dashed line`,
      ),
      from: px(tip * 0.9),
      to: px(tip * 0.9),
      startAt: () => seat,
    },
    {
      text: s.wheel ? 'clamped to the axis' : 'clamped',
      from: px(-s.clamped / 2),
      to: px(-s.clamped / 2),
      startAt: () => py(intake.thickness + s.stop),
    },
  ]);
  below.addDimensions(
    [
      { text: `port ${lengthText(s.portEnd - s.portStart)}`, x0: px(s.portStart), x1: px(s.portEnd) },
      { text: `free length ${lengthText(intake.length)}`, x0: px(0), x1: px(intake.length) },
    ],
    () => py(-s.plate),
  );
  const liftX = px(intake.length + s.rim) + 5;
  const liftTop = py(intake.stopLift + intake.thickness);
  const top = above.reach - 1;
  const svg = drawingSvg(
    {
      id: `${key}-reed`,
      title: `Section along one petal of ${id}, scale ${scaleText(scale)}`,
      description: `Free length ${lengthText(intake.length)}, lift at the tip ${lengthText(intake.stopLift)}, stop radius ${lengthText(s.radius)}.`,
      width,
      height: below.reach + 1 - top,
    },
    el(
      'g',
      { transform: `translate(0 ${coordinate(-top)})` },
      cutFace(box(root, py(0), px(s.portStart), py(-s.plate)), `${key}-reed-a`),
      cutFace(box(px(s.portEnd), py(0), px(intake.length + s.rim), py(-s.plate)), `${key}-reed-b`),
      cutFace(stop, `${key}-reed-c`, -1),
      chainOfPoints(flat(seat), { weight: petalWeight }),
      chainOfPoints(
        lower.map((p) => ({ x: p.x, y: p.y + petalWeight / 2 + 0.6 })),
        { weight: petalWeight, dash: 'dashed' },
      ),
      s.wheel ? segment({ x: root, y: py(rise) - 1 }, { x: root, y: py(-s.plate) + 3 }, { dash: 'chain' }) : null,
      segment({ x: px(intake.length) + 1, y: py(intake.thickness) }, { x: liftX + 1, y: py(intake.thickness) }),
      segment({ x: px(tip) + 1, y: liftTop }, { x: liftX + 1, y: liftTop }),
      uprightDimensionLine(liftX, liftTop, py(intake.thickness)),
      write(`lift ${lengthText(intake.stopLift)}`, { x: liftX + 1.5, y: (liftTop + py(intake.thickness)) / 2 + 0.9 }),
      above.draw(),
      below.draw(),
    ),
  );
  return { svg, caption: `Section along one petal, chamber above. Scale ${scaleText(scale)}.` };
}
