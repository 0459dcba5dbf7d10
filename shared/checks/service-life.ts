/** Running time that a shell is built for. */
import type { Facts } from './facts.ts';

/** A season of short runs, s. Common practice, no source. */
const SEASON = 36_000;

/** The longer of the endurance and a season, s. */
export function serviceLife({ endurance }: Facts): number {
  return Math.max(endurance, SEASON);
}
