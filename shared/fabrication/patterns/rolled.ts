/** Pattern of a rolled cylinder or cone: exact development, seam allowance, roll, orientation and station marks. */
import { SEAM_ALLOWANCE } from '../proportions.ts';
import type { RolledPiece } from '../shell-pieces.ts';
import { type ConeDevelopment, developSection, neutralDiameter } from './developments.ts';
import { keepClearLabels, TEXT_WIDTH } from './labels.ts';
import { type Edge, line, type Outline, type Point, polar } from './outline.ts';
import type { Label, Mark, MatingEdge, Pattern } from './pattern.ts';

/** Roll lines that divide the girth. */
const ROLL_LINES = 12;
const ORIGIN: Point = { x: 0, y: 0 };

/** Place on the developed surface: `along` 0 at the upstream, 1 at the downstream edge; `turn` 0 to 1 round the girth from the seam. */
export type SurfacePoint = (along: number, turn: number) => Point;

interface Developed {
  outline: Outline;
  /** Edge indices of the outer outline that meet the neighbours. */
  upstream: number;
  downstream: number;
  surface: SurfacePoint;
  seam: Edge;
  /** Area between the edges and the closing lines, m². */
  netArea: number;
  /** Width of the strip beyond the closing line, m. */
  allowance: number;
  /** Reading direction of text at a turn, rad. */
  textAngle: (turn: number) => number;
  facts: string;
}

/** Develops a piece. Upstream edge on top; the middle of the pattern is the top of the engine, the seam its underside. */
export function developPiece(piece: RolledPiece): Developed {
  const start = neutralDiameter(piece.startDiameter, piece.thickness);
  const end = neutralDiameter(piece.endDiameter, piece.thickness);
  const development = developSection(start, end, piece.length);
  if (development.kind === 'cone') return developedCone(development, start > end);
  const { circumference: girth, length } = development;
  const right = girth + SEAM_ALLOWANCE;
  const p = (x: number, y: number): Point => ({ x, y });
  return {
    outline: {
      edges: [
        line(p(0, 0), p(girth, 0)),
        line(p(girth, 0), p(right, 0)),
        line(p(right, 0), p(right, length)),
        line(p(right, length), p(girth, length)),
        line(p(girth, length), p(0, length)),
        line(p(0, length), p(0, 0)),
      ],
    },
    upstream: 4,
    downstream: 0,
    surface: (along, turn) => p(girth * turn, length * (1 - along)),
    seam: line(p(girth, 0), p(girth, length)),
    netArea: development.area,
    allowance: SEAM_ALLOWANCE,
    textAngle: () => 0,
    facts: `girth ${mm(girth)} mm, length ${mm(length)} mm`,
  };
}

/**
 * Sector with its apex at the origin, symmetrical about the y axis. The large edge is upstream for a narrowing cone, and
 * the sector then opens upwards; a widening cone opens downwards, so that the upstream edge is always on top.
 */
function developedCone(cone: ConeDevelopment, narrowing: boolean): Developed {
  const { outerRadius: R, innerRadius: r, angle, slant } = cone;
  const middle = narrowing ? Math.PI / 2 : -Math.PI / 2;
  const first = middle - angle / 2;
  const last = middle + angle / 2;
  const allowance = coneSeamAllowance(cone);
  const across: Point = { x: -Math.sin(last), y: Math.cos(last) };
  const beyond = (point: Point): Point => ({ x: point.x + across.x * allowance, y: point.y + across.y * allowance });
  const outerEnd = polar(ORIGIN, R, last);
  const innerEnd = polar(ORIGIN, r, last);
  // Seen from outside with the flow running down the page, turn 0 to 1 runs from left to right.
  const angleAt = (turn: number) => (narrowing ? last - angle * turn : first + angle * turn);
  return {
    outline: {
      edges: [
        { kind: 'arc', centre: ORIGIN, radius: R, start: first, sweep: angle },
        line(outerEnd, beyond(outerEnd)),
        line(beyond(outerEnd), beyond(innerEnd)),
        line(beyond(innerEnd), innerEnd),
        { kind: 'arc', centre: ORIGIN, radius: r, start: last, sweep: -angle },
        line(polar(ORIGIN, r, first), polar(ORIGIN, R, first)),
      ],
    },
    upstream: narrowing ? 0 : 4,
    downstream: narrowing ? 4 : 0,
    surface: (along, turn) => polar(ORIGIN, narrowing ? R - slant * along : r + slant * along, angleAt(turn)),
    seam: line(innerEnd, outerEnd),
    netArea: cone.area,
    allowance,
    textAngle: (turn) => angleAt(turn) - middle,
    facts: `R ${mm(R)} mm, r ${mm(r)} mm, angle ${((angle * 180) / Math.PI).toFixed(3)}°, slant ${mm(slant)} mm`,
  };
}

/** Seam allowance, cut back where a nearly flat sector leaves less room between its two sides. */
export function coneSeamAllowance(cone: ConeDevelopment): number {
  const opening = 2 * Math.PI - cone.angle;
  const room = opening >= Math.PI / 2 ? Infinity : cone.innerRadius * Math.sin(opening);
  return Math.min(SEAM_ALLOWANCE, 0.8 * room);
}

export interface WallHole {
  name: string;
  /** Stations from the piece's upstream edge as a fraction, and turn round the girth from the seam. */
  along: number;
  turn: number;
  diameter: number;
}

/** The whole pattern. `joints` name the upstream and downstream joint; null leaves that edge free. */
export function rolledPattern(
  piece: RolledPiece,
  joints: { upstream: string | null; downstream: string | null },
  holes: WallHole[] = [],
): Pattern {
  const developed = developPiece(piece);
  const { surface, outline } = developed;
  const mating: MatingEdge[] = [];
  if (joints.upstream) mating.push({ joint: joints.upstream, edges: [developed.upstream] });
  if (joints.downstream) mating.push({ joint: joints.downstream, edges: [developed.downstream] });
  const marks: Mark[] = [{ layer: 'SEAM', edge: developed.seam }];
  for (let k = 1; k < ROLL_LINES; k++) {
    const turn = k / ROLL_LINES;
    const quarter = k % 3 === 0;
    if (quarter) {
      marks.push({ layer: 'MARK', edge: line(surface(0, turn), surface(1, turn)) });
    } else {
      // Roll lines are scribed only near the edges, so that the middle of the sheet stays free to read.
      marks.push({ layer: 'BEND', edge: line(surface(0, turn), surface(0.12, turn)) });
      marks.push({ layer: 'BEND', edge: line(surface(0.88, turn), surface(1, turn)) });
    }
  }
  for (const hole of holes) marks.push(...crossMarks(surface(hole.along, hole.turn), hole.diameter));
  return {
    id: piece.id,
    name: piece.name,
    count: 1,
    material: piece.material,
    thickness: piece.thickness,
    outlines: [
      outline,
      ...holes.map((hole) => ({
        edges: [
          {
            kind: 'arc' as const,
            centre: surface(hole.along, hole.turn),
            radius: hole.diameter / 2,
            start: 0,
            sweep: 2 * Math.PI,
          },
        ],
      })),
    ],
    marks,
    labels: rolledLabels(piece, developed, holes),
    mating,
    notes: [
      'Outside of the finished part faces you; L and R as seen looking downstream.',
      developed.allowance > 0.0005
        ? `Seam allowance ${mm(developed.allowance)} mm beyond the closing line: lap it, or cut on the line for a butt weld.`
        : 'No room for a seam allowance: butt weld.',
    ],
  };
}

/** Long parts are written along the axis, wide ones along the girth, each text as large as its room allows. */
function rolledLabels(piece: RolledPiece, developed: Developed, holes: WallHole[]): Label[] {
  const { surface, textAngle } = developed;
  const axial = distance(surface(0, 0.5), surface(1, 0.5));
  const quarter = 3 * distance(surface(0.5, 0.5), surface(0.5, 0.5 - 1 / 12));
  const lengthwise = axial > 3 * quarter;
  const run = lengthwise ? 0.6 * axial : 0.92 * quarter;
  const rise = lengthwise ? quarter : axial;
  const write = (text: string, along: number, turn: number, room = run): Label => ({
    text,
    at: surface(along, turn),
    height: Math.min(0.004, rise / 10, room / (TEXT_WIDTH * text.length)),
    angle: textAngle(turn) + (lengthwise ? Math.PI / 2 : 0),
  });
  const upright = (text: string, along: number, turn: number): Label => ({
    text,
    at: surface(along, turn),
    height: Math.min(0.004, axial / 12, (0.26 * quarter) / (TEXT_WIDTH * text.length)),
    angle: textAngle(turn),
  });
  const lines = [
    `${piece.id} · ${piece.material} · ${mm(piece.thickness)} mm`,
    developed.facts,
    `stations ${mm(piece.startStation)} (top edge) to ${mm(piece.endStation)} mm`,
  ];
  const labels: Label[] = [];
  for (const hole of holes) {
    const at = surface(hole.along, hole.turn);
    const text = `${hole.name} Ø ${mm(hole.diameter)}`;
    const height = Math.min(0.003, (0.9 * quarter) / (TEXT_WIDTH * text.length));
    const up = textAngle(hole.turn) + Math.PI / 2;
    const off = hole.diameter / 2 + height;
    labels.push({
      text,
      at: { x: at.x + off * Math.cos(up), y: at.y + off * Math.sin(up) },
      height,
      angle: textAngle(hole.turn),
    });
  }
  labels.push(
    upright('TOP', 0.8, 0.5 - 1 / 24),
    upright('R', 0.8, 0.25 - 1 / 24),
    upright('L', 0.8, 0.75 + 1 / 24),
    upright('SEAM', 0.8, 1 / 24),
    ...lines.map((text, k) => (lengthwise ? write(text, 0.5, 0.54 + 0.065 * k) : write(text, 0.3 + 0.2 * k, 0.625))),
  );
  return keepClearLabels(labels);
}

/** Centre cross of a hole. */
export function crossMarks(at: Point, diameter: number): Mark[] {
  const reach = Math.min(0.003, diameter * 0.35);
  return [
    { layer: 'MARK', edge: line({ x: at.x - reach, y: at.y }, { x: at.x + reach, y: at.y }) },
    { layer: 'MARK', edge: line({ x: at.x, y: at.y - reach }, { x: at.x, y: at.y + reach }) },
  ];
}

function distance(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

const mm = (metres: number): string => (metres * 1e3).toFixed(2).replace(/\.?0+$/, '');
