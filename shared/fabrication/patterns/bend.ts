/** Patterns of a mitred bend: full gores and end gores with their exact edge curves. */
import { SEAM_ALLOWANCE } from '../proportions.ts';
import type { BendPiece } from '../shell-pieces.ts';
import { developBend, neutralDiameter } from './developments.ts';
import { TEXT_WIDTH } from './labels.ts';
import { line, type Outline, type Point } from './outline.ts';
import type { Label, Mark, Pattern } from './pattern.ts';

/** Points of an edge curve; the chord error stays below a hundredth of a millimetre for any duct under half a metre. */
const CURVE_POINTS = 240;

/**
 * Half length of a gore at a turn round its girth from the throat (0 to 1), m: h = tan α (R − r cos 2πt).
 * Exact for a cylinder cut by a plane.
 */
export function goreHalfLength(piece: BendPiece, turn: number): number {
  const radius = neutralDiameter(piece.diameter, piece.thickness) / 2;
  const slope = Math.tan(piece.angle / (2 * piece.mitres));
  return slope * (piece.centreRadius - radius * Math.cos(2 * Math.PI * turn));
}

/** One pattern for all full gores (none for a single mitre) and one for the two end gores. */
export function bendPatterns(
  piece: BendPiece,
  joints: { upstream: string | null; downstream: string | null },
): Pattern[] {
  const diameter = neutralDiameter(piece.diameter, piece.thickness);
  const { circumference, mitreHalfAngle } = developBend(diameter, piece.angle, piece.centreRadius, piece.mitres);
  const mitre = `${piece.id}:mitre`;
  const full = gore(piece, circumference, true);
  const half = gore(piece, circumference, false);
  const endJoints = [joints.upstream, joints.downstream].filter((joint) => joint !== null);
  const patterns: Pattern[] = [
    {
      ...half,
      id: `${piece.id}-end-gore`,
      name: `${piece.name}, end gore`,
      count: 2,
      mating: [{ joint: mitre, edges: [4] }, ...endJoints.map((joint) => ({ joint, edges: [0] }))],
    },
  ];
  if (piece.mitres > 1) {
    patterns.unshift({
      ...full,
      id: `${piece.id}-gore`,
      name: `${piece.name}, full gore`,
      count: piece.mitres - 1,
      mating: [
        { joint: mitre, edges: [0] },
        { joint: mitre, edges: [4] },
      ],
    });
  }
  const degrees = ((2 * mitreHalfAngle * 180) / Math.PI).toFixed(2);
  const note = `${piece.mitres} mitres of ${degrees}°; seam at the throat (inside) of the bend, back (outside) in the middle.`;
  return patterns.map((pattern) => ({ ...pattern, notes: [note, ...pattern.notes] }));
}

function gore(piece: BendPiece, girth: number, full: boolean) {
  const right = girth + SEAM_ALLOWANCE;
  const curve = (sign: 1 | -1): Point[] =>
    Array.from({ length: CURVE_POINTS + 1 }, (_, i) => {
      const turn = i / CURVE_POINTS;
      return { x: girth * turn, y: sign * goreHalfLength(piece, turn) };
    });
  const throat = goreHalfLength(piece, 0);
  const bottom = full ? -throat : 0;
  const outline: Outline = {
    edges: [
      full ? { kind: 'polyline', points: curve(-1) } : line({ x: 0, y: 0 }, { x: girth, y: 0 }),
      line({ x: girth, y: bottom }, { x: right, y: bottom }),
      line({ x: right, y: bottom }, { x: right, y: throat }),
      line({ x: right, y: throat }, { x: girth, y: throat }),
      { kind: 'polyline', points: curve(1).reverse() },
      line({ x: 0, y: throat }, { x: 0, y: bottom }),
    ],
  };
  const lowAt = (turn: number) => (full ? -goreHalfLength(piece, turn) : 0);
  const marks: Mark[] = [{ layer: 'SEAM', edge: line({ x: girth, y: bottom }, { x: girth, y: throat }) }];
  for (let k = 1; k < 12; k++) {
    const turn = k / 12;
    const low = lowAt(turn);
    const high = goreHalfLength(piece, turn);
    const at = (y: number): Point => ({ x: girth * turn, y });
    if (k % 3 === 0) {
      marks.push({ layer: 'MARK', edge: line(at(low), at(high)) });
    } else {
      marks.push({ layer: 'BEND', edge: line(at(low), at(low + 0.15 * (high - low))) });
      marks.push({ layer: 'BEND', edge: line(at(high - 0.15 * (high - low)), at(high)) });
    }
  }
  const name = `${piece.id} ${full ? 'gore' : 'end gore'}`;
  // Between two quarter lines on the wider half, as high as the room allows.
  const height = Math.min(
    0.004,
    (goreHalfLength(piece, 0.25) * (full ? 2 : 1)) / 7,
    (0.22 * girth) / (TEXT_WIDTH * name.length),
  );
  const middle = full ? 0 : goreHalfLength(piece, 0.25) / 2;
  const labels: Label[] = [
    {
      text: name,
      at: { x: girth * 0.375, y: middle + height },
      height,
      angle: 0,
    },
    {
      text: `${piece.material} · ${(piece.thickness * 1e3).toFixed(2)} mm`,
      at: { x: girth * 0.375, y: middle - height },
      height: height * 0.8,
      angle: 0,
    },
    { text: 'BACK', at: { x: girth * 0.54, y: middle }, height: height * 0.8, angle: 0 },
  ];
  return {
    material: piece.material,
    thickness: piece.thickness,
    outlines: [outline],
    marks,
    labels,
    notes: ['Outside of the finished part faces you.'],
  };
}
