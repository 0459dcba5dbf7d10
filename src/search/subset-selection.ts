/**
 * The few points that stand for a large front. In the plane the best subset is found exactly by dynamic programming with
 * a moving hull of lines (Bringmann, Friedrich and Klitzke, GECCO 2014); in space greedily, whose hypervolume is within
 * 1 − 1/e of the best (Nemhauser, Wolsey and Fisher, Mathematical Programming 14, 1978) and in practice far nearer.
 */
import { hypervolume3d } from './hypervolume.ts';
import { referenceBeyond } from './hypervolume-contribution.ts';

/** Indices of at most `keep` of the mutually non-dominated points, chosen for hypervolume (spread, above 3 objectives). */
export function selectSubset(points: readonly ArrayLike<number>[], keep: number): number[] {
  if (points.length <= keep) return points.map((_, i) => i);
  const objectives = points[0].length;
  if (objectives === 1) return points.slice(0, keep).map((_, i) => i);
  if (objectives === 2) return selectPlanar(points, keep);
  if (objectives === 3) return selectSpatial(points, keep);
  return selectSpread(points, keep);
}

/**
 * Best area with m points of which the rightmost is j: A_m(j) = max over i left of j of A_{m−1}(i) + (x_j − x_i)(R − y_i),
 * where each point fills the strip from itself to the next one. For fixed i that is a line in x_j whose slope R − y_i grows
 * with i, so the best i only moves right along the upper hull of lines.
 */
function selectPlanar(points: readonly ArrayLike<number>[], keep: number): number[] {
  const [right, ceiling] = referenceBeyond(points);
  const order = points.map((_, i) => i).sort((i, j) => points[i][0] - points[j][0] || points[j][1] - points[i][1]);
  const count = order.length;
  const x = Float64Array.from(order, (i) => points[i][0]);
  const slope = Float64Array.from(order, (i) => ceiling - points[i][1]);
  let area = new Float64Array(count);
  const cameFrom: Int32Array[] = [];
  const hull = new Int32Array(count);
  for (let m = 1; m < keep; m++) {
    const next = new Float64Array(count);
    const from = new Int32Array(count);
    const offset = area.map((value, i) => value - slope[i] * x[i]);
    let size = 0;
    let at = 0;
    for (let j = m; j < count; j++) {
      const added = j - 1;
      while (size >= 2 && hides(hull[size - 2], hull[size - 1], added, slope, offset)) size--;
      hull[size++] = added;
      if (at >= size) at = size - 1;
      while (at + 1 < size && valueAt(hull[at + 1], x[j], slope, offset) >= valueAt(hull[at], x[j], slope, offset))
        at++;
      from[j] = hull[at];
      next[j] = valueAt(hull[at], x[j], slope, offset);
    }
    // Fewer points than m cannot end left of the m-th.
    for (let j = 0; j < m; j++) next[j] = -Infinity;
    area = next;
    cameFrom.push(from);
  }
  let last = keep - 1;
  for (let j = keep; j < count; j++) {
    if (area[j] + slope[j] * (right - x[j]) > area[last] + slope[last] * (right - x[last])) last = j;
  }
  const chosen = [order[last]];
  for (let m = cameFrom.length - 1; m >= 0; m--) {
    last = cameFrom[m][last];
    chosen.push(order[last]);
  }
  return chosen.reverse();
}

function valueAt(line: number, x: number, slope: Float64Array, offset: Float64Array): number {
  return offset[line] + slope[line] * x;
}

/** True when line b is nowhere above both a and c (slopes rise from a to c). */
function hides(a: number, b: number, c: number, slope: Float64Array, offset: Float64Array): boolean {
  if (offset[b] === -Infinity) return true;
  if (slope[b] === slope[c]) return offset[c] >= offset[b];
  return (offset[c] - offset[a]) * (slope[b] - slope[a]) >= (offset[b] - offset[a]) * (slope[c] - slope[a]);
}

/** Greedy, lazily: a point's gain only shrinks as others are taken, so a stale gain below the leader's need not be renewed. */
function selectSpatial(points: readonly ArrayLike<number>[], keep: number): number[] {
  const reference = referenceBeyond(points);
  const gain = Float64Array.from(points, (p) => (reference[0] - p[0]) * (reference[1] - p[1]) * (reference[2] - p[2]));
  const fresh = new Int32Array(points.length);
  const taken = new Uint8Array(points.length);
  const chosen: number[] = [];
  while (chosen.length < keep) {
    let best = -1;
    for (;;) {
      best = -1;
      for (let i = 0; i < points.length; i++) if (taken[i] === 0 && (best < 0 || gain[i] > gain[best])) best = i;
      if (fresh[best] === chosen.length) break;
      gain[best] = gainOver(points[best], chosen, points, reference);
      fresh[best] = chosen.length;
    }
    taken[best] = 1;
    chosen.push(best);
  }
  return improveBySwaps(points, chosen, reference);
}

/** Volume that `point` adds to the chosen ones. */
function gainOver(
  point: ArrayLike<number>,
  chosen: readonly number[],
  points: readonly ArrayLike<number>[],
  reference: readonly number[],
): number {
  const [a, b, c] = [point[0], point[1], point[2]];
  const clipped: number[][] = [];
  for (const index of chosen) {
    const q = points[index];
    clipped.push([Math.max(a, q[0]), Math.max(b, q[1]), Math.max(c, q[2])]);
  }
  return (reference[0] - a) * (reference[1] - b) * (reference[2] - c) - hypervolume3d(clipped, reference);
}

/** One pass of exchanges: each chosen point makes room for the spare that adds most in its place, when that is better. */
function improveBySwaps(
  points: readonly ArrayLike<number>[],
  chosen: number[],
  reference: readonly number[],
): number[] {
  const spare = selectSpread(points, Math.min(points.length, 3 * chosen.length)).filter((i) => !chosen.includes(i));
  for (let n = 0; n < chosen.length; n++) {
    const others = chosen.filter((_, k) => k !== n);
    let best = gainOver(points[chosen[n]], others, points, reference);
    for (let s = 0; s < spare.length; s++) {
      const gain = gainOver(points[spare[s]], others, points, reference);
      if (gain <= best * (1 + 1e-12)) continue;
      best = gain;
      [chosen[n], spare[s]] = [spare[s], chosen[n]];
    }
  }
  return chosen;
}

/** Farthest-first: start from the ends, then again and again the point farthest from those taken (Gonzalez, Theoretical Computer Science 38, 1985). */
export function selectSpread(points: readonly ArrayLike<number>[], keep: number): number[] {
  if (points.length <= keep) return points.map((_, i) => i);
  const objectives = points[0].length;
  const low = new Float64Array(objectives).fill(Infinity);
  const high = new Float64Array(objectives).fill(-Infinity);
  const lowest = new Int32Array(objectives);
  points.forEach((point, i) => {
    for (let k = 0; k < objectives; k++) {
      if (point[k] < low[k]) {
        low[k] = point[k];
        lowest[k] = i;
      }
      if (point[k] > high[k]) high[k] = point[k];
    }
  });
  const extent = high.map((value, k) => (value > low[k] ? value - low[k] : 1));
  const distance = new Float64Array(points.length).fill(Infinity);
  const chosen: number[] = [];
  function take(index: number): void {
    chosen.push(index);
    for (let i = 0; i < points.length; i++) {
      let sum = 0;
      for (let k = 0; k < objectives; k++) sum += ((points[i][k] - points[index][k]) / extent[k]) ** 2;
      if (sum < distance[i]) distance[i] = sum;
    }
    distance[index] = -1;
  }
  for (const index of new Set(lowest)) if (chosen.length < keep) take(index);
  while (chosen.length < keep) {
    let farthest = 0;
    for (let i = 1; i < points.length; i++) if (distance[i] > distance[farthest]) farthest = i;
    take(farthest);
  }
  return chosen;
}
