/**
 * Hypervolume: the area (2 objectives) or volume (3) that a set of points dominates, bounded by a reference point
 * (Zitzler and Thiele, PPSN V, 1998). Exact: in the plane by one sweep, in space by sweeping the third objective over a
 * staircase of the first two (Fonseca, Paquete and López-Ibáñez, CEC 2006), O(n log n) plus the moves of the staircase.
 */
export function hypervolume(points: readonly ArrayLike<number>[], reference: ArrayLike<number>): number {
  if (reference.length === 1) {
    let best = reference[0];
    for (const point of points) if (point[0] < best) best = point[0];
    return reference[0] - best;
  }
  if (reference.length === 2) return hypervolume2d(points, reference);
  if (reference.length === 3) return hypervolume3d(points, reference);
  throw new RangeError(`Hypervolume is exact for 1, 2 or 3 objectives; ${reference.length} were asked for.`);
}

/** Points beyond the reference, dominated ones and repeats may be among them: they add nothing. */
export function hypervolume2d(points: readonly ArrayLike<number>[], reference: ArrayLike<number>): number {
  const inside = points.filter((p) => p[0] < reference[0] && p[1] < reference[1]);
  inside.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  let area = 0;
  let ceiling = reference[1];
  for (const p of inside) {
    if (p[1] >= ceiling) continue;
    area += (reference[0] - p[0]) * (ceiling - p[1]);
    ceiling = p[1];
  }
  return area;
}

/** As in the plane, with a third objective. */
export function hypervolume3d(points: readonly ArrayLike<number>[], reference: ArrayLike<number>): number {
  const inside = points.filter((p) => p[0] < reference[0] && p[1] < reference[1] && p[2] < reference[2]);
  inside.sort((a, b) => a[2] - b[2]);
  const stairs = new Staircase(reference[0], reference[1]);
  let volume = 0;
  for (let i = 0; i < inside.length; i++) {
    stairs.add(inside[i][0], inside[i][1]);
    const top = i + 1 < inside.length ? inside[i + 1][2] : reference[2];
    volume += stairs.area * (top - inside[i][2]);
  }
  return volume;
}

/** The lower left border of a growing set of points in the plane, and the area that it dominates. */
class Staircase {
  area = 0;
  /** Rising in x, falling in y. */
  private readonly xs: number[] = [];
  private readonly ys: number[] = [];

  constructor(
    private readonly right: number,
    private readonly ceiling: number,
  ) {}

  add(x: number, y: number): void {
    const { xs, ys } = this;
    let first = 0;
    let last = xs.length;
    while (first < last) {
      const middle = (first + last) >> 1;
      if (xs[middle] < x) first = middle + 1;
      else last = middle;
    }
    let height = first > 0 ? ys[first - 1] : this.ceiling;
    if (height <= y || (first < xs.length && xs[first] === x && ys[first] <= y)) return;
    // Walk right over the steps that the new point covers, adding what it gains above each.
    let position = x;
    let next = first;
    while (next < xs.length && ys[next] >= y) {
      this.area += (xs[next] - position) * (height - y);
      position = xs[next];
      height = ys[next];
      next++;
    }
    const end = next < xs.length ? xs[next] : this.right;
    this.area += (end - position) * (height - y);
    xs.splice(first, next - first, x);
    ys.splice(first, next - first, y);
  }
}
