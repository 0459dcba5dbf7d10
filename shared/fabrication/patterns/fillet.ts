/** Rounds the corners of a polygon with tangent arcs. */
import { type Edge, line, type Outline, type Point } from './outline.ts';

export interface Corner extends Point {
  /** Wished radius, m; it is reduced where the sides are too short. 0 leaves the corner sharp. */
  radius: number;
}

/**
 * Outline of the polygon with every corner rounded. Tangent length is r tan(turn/2), so the radius is cut back until the
 * two arcs on a side leave it a length of at least zero.
 */
export function filletPolygon(corners: Corner[]): Outline {
  const n = corners.length;
  const at = (i: number) => corners[(i + n) % n];
  const rounded = corners.map((corner, i) => {
    const before = unit(at(i - 1), corner);
    const after = unit(corner, at(i + 1));
    const turn = Math.atan2(before.x * after.y - before.y * after.x, before.x * after.x + before.y * after.y);
    const slope = Math.tan(Math.abs(turn) / 2);
    const room = 0.499 * Math.min(distance(at(i - 1), corner), distance(corner, at(i + 1)));
    const radius = slope < 1e-9 ? 0 : Math.min(corner.radius, room / slope);
    const tangent = radius * slope;
    const side = Math.sign(turn);
    const enter = { x: corner.x - before.x * tangent, y: corner.y - before.y * tangent };
    return {
      radius,
      turn,
      enter,
      leave: { x: corner.x + after.x * tangent, y: corner.y + after.y * tangent },
      centre: { x: enter.x - side * before.y * radius, y: enter.y + side * before.x * radius },
      start: Math.atan2(-side * before.x, side * before.y),
    };
  });
  const edges: Edge[] = [];
  rounded.forEach((corner, i) => {
    if (corner.radius > 1e-9) {
      const { centre, radius, turn: sweep } = corner;
      edges.push({ kind: 'arc', centre, radius, start: corner.start, sweep });
    }
    edges.push(line(corner.leave, rounded[(i + 1) % n].enter));
  });
  return { edges };
}

function distance(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

function unit(from: Point, to: Point): Point {
  const length = distance(from, to);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}
