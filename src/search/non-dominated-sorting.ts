/**
 * Sorting into non-dominated fronts by efficient non-dominated sort (Zhang, Tian, Cheng and Jin, IEEE Transactions on
 * Evolutionary Computation 19, 2015): walk the points in lexicographic order and put each into the first front none of
 * whose members dominates it, found by bisection. With two objectives only a front's last member can dominate, which
 * makes it O(n log n).
 */
import { dominates } from './domination.ts';

/** Indices of `points` front by front, best first; inside a front in lexicographic order of the objectives. */
export function nonDominatedSort(points: readonly ArrayLike<number>[]): number[][] {
  const order = points.map((_, i) => i);
  order.sort((i, j) => compareLexicographically(points[i], points[j]) || i - j);
  const planar = points.length > 0 && points[0].length === 2;
  const fronts: number[][] = [];
  for (const index of order) {
    const point = points[index];
    let first = 0;
    let last = fronts.length;
    while (first < last) {
      const middle = (first + last) >> 1;
      const beaten = planar
        ? dominates(points[fronts[middle][fronts[middle].length - 1]], point)
        : anyDominates(fronts[middle], points, point);
      if (beaten) first = middle + 1;
      else last = middle;
    }
    if (first === fronts.length) fronts.push([index]);
    else fronts[first].push(index);
  }
  return fronts;
}

export function compareLexicographically(a: ArrayLike<number>, b: ArrayLike<number>): number {
  for (let k = 0; k < a.length; k++) {
    if (a[k] < b[k]) return -1;
    if (a[k] > b[k]) return 1;
  }
  return 0;
}

/** Latest members first: they are the nearest in the first objective and the likeliest to dominate. */
function anyDominates(front: number[], points: readonly ArrayLike<number>[], point: ArrayLike<number>): boolean {
  for (let k = front.length - 1; k >= 0; k--) if (dominates(points[front[k]], point)) return true;
  return false;
}

/** Indices of the points that no other dominates, in lexicographic order; equal points all stay. */
export function nonDominated(points: readonly ArrayLike<number>[]): number[] {
  return nonDominatedSort(points)[0] ?? [];
}
