/**
 * Choosing the points of a front that matter: dropping, one after another, the point whose loss costs the least
 * hypervolume (Beume, Naujoks and Emmerich, European Journal of Operational Research 181, 2007).
 */
import { hypervolume3d } from './hypervolume.ts';

/** Worst value of each objective over the points plus a tenth of the range (of 1, where the range is nothing). */
export function referenceBeyond(points: readonly ArrayLike<number>[], share = 0.1): number[] {
  return Array.from({ length: points[0].length }, (_, k) => {
    let low = Infinity;
    let high = -Infinity;
    for (const point of points) {
      if (point[k] < low) low = point[k];
      if (point[k] > high) high = point[k];
    }
    return high + share * (high > low ? high - low : 1);
  });
}

/** Indices of the `keep` points left after dropping the least contributor again and again. 2 or 3 objectives; mutually non-dominated points. */
export function truncateFront(points: readonly ArrayLike<number>[], keep: number): number[] {
  if (points.length <= keep) return points.map((_, i) => i);
  return points[0].length === 2 ? truncatePlanar(points, keep) : truncateSpatial(points, keep);
}

/** In the plane a point's contribution is the rectangle between its two neighbours; the ends stay while two may. */
function truncatePlanar(points: readonly ArrayLike<number>[], keep: number): number[] {
  const count = points.length;
  const order = points.map((_, i) => i).sort((i, j) => points[i][0] - points[j][0] || points[j][1] - points[i][1]);
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  order.forEach((index, n) => {
    x[n] = points[index][0];
    y[n] = points[index][1];
  });
  const before = new Int32Array(count);
  const after = new Int32Array(count);
  const loss = new Float64Array(count);
  for (let n = 0; n < count; n++) {
    before[n] = n - 1;
    after[n] = n + 1;
  }
  function measure(n: number): void {
    const left = before[n];
    const right = after[n];
    loss[n] = left < 0 || right >= count ? Infinity : (x[right] - x[n]) * (y[left] - y[n]);
  }
  for (let n = 0; n < count; n++) measure(n);
  const gone = new Uint8Array(count);
  for (let left = count; left > keep; left--) {
    let least = -1;
    for (let n = 0; n < count; n++) if (gone[n] === 0 && (least < 0 || loss[n] < loss[least])) least = n;
    gone[least] = 1;
    const a = before[least];
    const b = after[least];
    if (a >= 0) after[a] = b;
    if (b < count) before[b] = a;
    if (a >= 0) measure(a);
    if (b < count) measure(b);
  }
  return order.filter((_, n) => gone[n] === 0);
}

function truncateSpatial(points: readonly ArrayLike<number>[], keep: number): number[] {
  const reference = referenceBeyond(points);
  const alive = points.map((_, i) => i);
  const contribution = Float64Array.from(alive, (i) => exclusiveVolume(points[i], points, alive, i, -1, reference));
  const corner = [0, 0, 0];
  while (alive.length > keep) {
    let least = 0;
    for (let n = 1; n < alive.length; n++) if (contribution[alive[n]] < contribution[alive[least]]) least = n;
    const removed = alive[least];
    alive.splice(least, 1);
    // What the removed point shared with one other alone now belongs to that other.
    for (const i of alive) {
      for (let k = 0; k < 3; k++) corner[k] = Math.max(points[i][k], points[removed][k]);
      contribution[i] += exclusiveVolume(corner, points, alive, i, removed, reference);
    }
  }
  return alive;
}

/** Volume between `corner` and the reference that no living point but i and j dominates. */
function exclusiveVolume(
  corner: ArrayLike<number>,
  points: readonly ArrayLike<number>[],
  alive: readonly number[],
  i: number,
  j: number,
  reference: readonly number[],
): number {
  const [a, b, c] = [corner[0], corner[1], corner[2]];
  if (a >= reference[0] || b >= reference[1] || c >= reference[2]) return 0;
  for (let n = 0; n < alive.length; n++) {
    const q = points[alive[n]];
    if (q[0] <= a && q[1] <= b && q[2] <= c && alive[n] !== i && alive[n] !== j) return 0;
  }
  const clipped: number[][] = [];
  for (let n = 0; n < alive.length; n++) {
    if (alive[n] === i || alive[n] === j) continue;
    const q = points[alive[n]];
    clipped.push([Math.max(a, q[0]), Math.max(b, q[1]), Math.max(c, q[2])]);
  }
  const box = (reference[0] - a) * (reference[1] - b) * (reference[2] - c);
  return Math.max(0, box - hypervolume3d(clipped, reference));
}
