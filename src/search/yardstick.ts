/** One measure of hypervolume for a whole run: a reference fixed once from the first designs that ran, and kept. */
import { hypervolume } from './hypervolume.ts';
import { nonDominated } from './non-dominated-sorting.ts';
import type { Member } from './outcome.ts';

export interface Yardstick {
  /** Objective values that count as 0 and 1 when objectives are put on one scale. */
  ideal: number[];
  nadir: number[];
}

/**
 * From at least two designs that ran, feasible or not: ideal is their best value of each objective; nadir the worse of the
 * front's worst and the median, so that one wild design does not set the scale. Null while too little is known.
 */
export function createYardstick(members: readonly Member[]): Yardstick | null {
  const points = members.filter((member) => member.f.length > 0).map((member) => member.f);
  if (points.length < 2) return null;
  const front = nonDominated(points).map((index) => points[index]);
  const ideal: number[] = [];
  const nadir: number[] = [];
  for (let k = 0; k < points[0].length; k++) {
    const values = points.map((point) => point[k]).sort((a, b) => a - b);
    const worst = Math.max(values[values.length >> 1], ...front.map((point) => point[k]));
    if (!(worst > values[0])) return null;
    ideal.push(values[0]);
    nadir.push(worst);
  }
  return { ideal, nadir };
}

/** Hypervolume on the yardstick's scale, reference 1.1 in each objective (1, 2 or 3 objectives). */
export function measure(yardstick: Yardstick, members: readonly Member[]): number {
  const { ideal, nadir } = yardstick;
  const points = members.map((member) => member.f.map((value, k) => (value - ideal[k]) / (nadir[k] - ideal[k])));
  return hypervolume(
    points,
    ideal.map(() => 1.1),
  );
}
