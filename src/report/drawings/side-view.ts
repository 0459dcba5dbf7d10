/** Dimensioned side view of an engine to a stated scale, U bends laid out truly. */
import type { Engine } from '../../../shared/engine/engine.ts';
import { totalTurn } from '../../../shared/fabrication/centreline.ts';
import { drawnExtent } from '../../../shared/fabrication/overall-size.ts';
import { shellPieces } from '../../../shared/fabrication/shell-pieces.ts';
import { el, type Markup } from '../charts/svg.ts';
import type { SideView } from '../drawing-set.ts';
import type { Paper } from '../page.ts';
import { AnnotationStack } from './annotation-stack.ts';
import { type BodyLine, bodyLines } from './body.ts';
import {
  chainOfPoints,
  coordinate,
  diameterText,
  drawingSvg,
  lengthText,
  scaleText,
  segment,
  standardScale,
  uprightDimensionLine,
  WEIGHT,
  widthOf,
  write,
  type XY,
} from './drafting.ts';
import { type Leg, sideLegs } from './side-features.ts';

/** Width of a drawing on the printed page, mm: the paper less the report's margins. */
export const DRAWING_WIDTH: Record<Paper, number> = { A4: 177, Letter: 183 };
/** Kept free at each side for the overall height and for text, mm. */
const SIDE_MARGIN = 14;
const LARGEST_BODY_HEIGHT = { full: 95, brief: 55 };
const NOTE_PITCH = 4;
/** Shorter parts, mm on paper, go without a name on sheets of half a page. */
const SHORTEST_NAMED = 2;

export interface SideViewOptions {
  /** Begins every id in the drawing, e.g. the candidate's id. */
  id: string;
  /** Marks of the parts list by part identifier. */
  marks: Record<string, string>;
  /** Lower, and without stations: for sheets of half a page. */
  brief?: boolean;
}

/** Draws the engine; throws only for dimensions that are not numbers. */
export function sideView(engine: Engine, paper: Paper, options: SideViewOptions): SideView {
  const width = DRAWING_WIDTH[paper];
  const extent = drawnExtent(engine);
  const length = extent.x[1] - extent.x[0];
  const height = extent.y[1] - extent.y[0];
  const scale = standardScale(
    length,
    height,
    width - 2 * SIDE_MARGIN,
    LARGEST_BODY_HEIGHT[options.brief ? 'brief' : 'full'],
  );
  const k = scale * 1e3;
  const left = (width - length * k) / 2;
  const px = (x: number) => left + (x - extent.x[0]) * k;
  const py = (y: number) => (extent.y[1] - y) * k;
  const lines = bodyLines(engine);

  const heightText = `${totalTurn(engine) === 0 ? 'Ø ' : ''}${lengthText(height)}`;
  // The upright text of the overall height may be longer than the body is high.
  const overhang = Math.max(0, (widthOf(heightText) - height * k) / 2);
  const bounds = { left: 1, right: width - 1 };
  const above = new AnnotationStack(-1, py(extent.y[1]) - overhang - 3, bounds);
  const below = new AnnotationStack(1, py(extent.y[0]) + overhang + 3, bounds);
  const legs = sideLegs(engine);
  for (const leg of legs) annotate(leg, legs.length === 1, { above, below, px, py }, options);
  const ends = extent.x.map((x) => ({ x: px(x), y: py(endHeight(lines, x)) }));
  below.addDimensions([{ text: `overall ${lengthText(length)}`, x0: ends[0].x, x1: ends[1].x }], (x) =>
    Math.abs(x - ends[0].x) < Math.abs(x - ends[1].x) ? ends[0].y : ends[1].y,
  );

  const notes = noteLines(engine, scale, options);
  const top = above.reach - 1;
  const noteTop = below.reach + (options.brief ? 0 : 3);
  const total = noteTop + (notes.length + (options.brief ? 0 : 1)) * NOTE_PITCH - top;
  const svg = drawingSvg(
    {
      id: `${options.id}-side`,
      title: `Side view of ${options.id}, scale ${scaleText(scale)}`,
      description: `${engine.name}: overall length ${lengthText(length)}, overall height ${lengthText(height)}, in mm and inches. ${notes.join(' ')}`,
      width,
      height: total,
    },
    el(
      'g',
      { transform: `translate(0 ${coordinate(-top)})` },
      lines.map((line) => drawBodyLine(line, px, py)),
      above.draw(),
      below.draw(),
      overallHeight(engine, lines, extent, { px, py }, heightText),
      scaleBar(width, noteTop + (options.brief ? 0 : NOTE_PITCH) + 1.5, scale),
      notes.map((line, i) => write(line, { x: 1, y: noteTop + 2.5 + i * NOTE_PITCH })),
    ),
  );
  return { svg, scaleText: scaleText(scale) };
}

interface Board {
  above: AnnotationStack;
  below: AnnotationStack;
  px: (x: number) => number;
  py: (y: number) => number;
}

/** Names a leg on its own side; measures it there too, unless it is the only one. */
function annotate(leg: Leg, alone: boolean, { above, below, px, py }: Board, { marks, brief }: SideViewOptions): void {
  const named = leg.side === 1 ? above : below;
  const measured = alone ? below : named;
  // Plates, flanges and bosses are named on full sheets only.
  const spans = brief ? leg.spans.filter((span) => Math.abs(px(span.to) - px(span.from)) >= SHORTEST_NAMED) : leg.spans;
  named.addLabels(
    spans.map((span) => ({
      text: marks[span.partId] ? `${marks[span.partId]}  ${span.text}` : span.text,
      from: px(span.from),
      to: px(span.to),
      startAt: (share: number) => py(leg.axisY + leg.side * span.radiusAt(share)),
    })),
  );
  const side = alone ? -1 : leg.side;
  const edgeAt = (x: number) => {
    const station = leg.stations.find((s) => Math.abs(px(s.x) - x) < 0.02);
    return py(leg.axisY + side * (station?.radius ?? 0));
  };
  measured.addDimensions(
    leg.lengths.map((l) => ({ text: l.text, x0: px(l.x0), x1: px(l.x1) })),
    edgeAt,
  );
  if (brief) return;
  measured.addStations(leg.stations.map((s) => ({ text: s.text, x: px(s.x), from: py(leg.axisY + side * s.radius) })));
}

function drawBodyLine(line: BodyLine, px: (x: number) => number, py: (y: number) => number): Markup {
  const points = line.points.map((p): XY => ({ x: px(p.x), y: py(p.y) }));
  if (line.kind === 'outline') return chainOfPoints(points, { weight: WEIGHT.outline });
  const dash = line.kind === 'axis' ? 'chain' : line.kind === 'hidden' ? 'dashed' : 'solid';
  return chainOfPoints(points, { dash });
}

/** Height of the lowest outline point that lies at an end of the drawing, m: extension lines start there. */
function endHeight(lines: BodyLine[], x: number): number {
  const heights = lines
    .filter((l) => l.kind === 'outline')
    .flatMap((l) => l.points.filter((p) => Math.abs(p.x - x) < 2e-3).map((p) => p.y));
  return heights.length > 0 ? Math.min(...heights) : 0;
}

/** Upright dimension over everything, beside the end that is nearer to the widest feature. */
function overallHeight(
  engine: Engine,
  lines: BodyLine[],
  extent: { x: [number, number]; y: [number, number] },
  { px, py }: Pick<Board, 'px' | 'py'>,
  text: string,
): Markup[] {
  const right = engine.augmenter !== null;
  const x = right ? px(extent.x[1]) + 7 : px(extent.x[0]) - 6;
  const outline = lines.filter((l) => l.kind === 'outline').flatMap((l) => l.points);
  const extension = extent.y.map((y) => {
    const touching = outline.filter((p) => Math.abs(p.y - y) < 1e-6).map((p) => px(p.x));
    const from = touching.length === 0 ? px(extent.x[0]) : right ? Math.max(...touching) : Math.min(...touching);
    const outwards = right ? 1 : -1;
    return segment({ x: from + outwards, y: py(y) }, { x: x + outwards * 1.2, y: py(y) });
  });
  const middle = py((extent.y[0] + extent.y[1]) / 2);
  return [
    ...extension,
    ...uprightDimensionLine(x, py(extent.y[1]), py(extent.y[0])),
    write(text, { x: right ? x + 3.8 : x - 2, y: middle }, { turn: -90, anchor: 'middle' }),
  ];
}

function noteLines(engine: Engine, scale: number, { brief }: SideViewOptions): string[] {
  const { material, thickness } = engine.shell;
  const shell = `Shell ${material}, ${(thickness * 1e3).toFixed(2)} mm (${(thickness / 0.0254).toFixed(4)} in).`;
  if (brief) return [`${shell} Sections inside, overall sizes outside, mm (inches). Scale ${scaleText(scale)}.`];
  const notes = [
    `${shell} Section diameters are inside diameters; overall sizes are outside.`,
    `Lengths in mm (inches); upright figures are stations along the centreline. Scale ${scaleText(scale)}.`,
  ];
  for (const piece of shellPieces(engine)) {
    if (piece.shape !== 'bend') continue;
    const turn = (radians: number) => `${((radians * 180) / Math.PI).toFixed(1)}°`;
    notes.push(
      `Bend of ${turn(piece.angle)}: ${diameterText(piece.diameter)}, centreline radius ${lengthText(piece.centreRadius)}, ${piece.mitres} mitres of ${turn(piece.angle / piece.mitres)}.`,
    );
  }
  return notes;
}

/** A bar of a round length at the drawing's scale, for prints that were made larger or smaller. */
function scaleBar(width: number, y: number, scale: number): Markup[] {
  const metres = [1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01].find((m) => m * scale * 1e3 <= 45) ?? 0.01;
  const long = metres * scale * 1e3;
  const text = `${metres * 1e3} mm`;
  const right = width - 2 - widthOf(text) - 1;
  const left = right - long;
  const half = { x: (left + right) / 2, y };
  return [
    segment({ x: left, y }, half, { weight: 1 }),
    segment(half, { x: right, y }),
    ...[left, half.x, right].map((x) => segment({ x, y: y - 1 }, { x, y: y + 1 })),
    write(text, { x: right + 1, y: y + 0.9 }),
  ];
}
