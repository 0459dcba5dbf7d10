/** Short words for the terminal. */

import type { Candidate } from '../ranking/results.ts';
import { duration } from '../report/format/duration.ts';
import { metric } from '../report/format/quantity.ts';
import { keyFigures } from '../report/view/key-figures.ts';
import type { Member } from '../search/outcome.ts';

/** "best 0.221 kg/(N·h), longest life 42 min" of a front with objectives [TSFC, −log₁₀ life]. */
export function bestInWords(front: readonly Member[]): string {
  if (front.length === 0) return 'nothing feasible yet';
  const tsfc = Math.min(...front.map(({ f }) => f[0]));
  const life = 10 ** -Math.min(...front.map(({ f }) => f[1]));
  return `best ${metric(tsfc, 'kg/(N s)')}, longest life ${duration(life)}`;
}

/** One candidate on one line. */
export function candidateLine(candidate: Candidate, currency: string): string {
  const { thrust, tsfc, life, sustainChance } = keyFigures(candidate, currency);
  return `${candidate.id}  ${candidate.architecture.label}: thrust ${thrust.metric}, ${tsfc.metric}, life ${life.metric}, runs in ${sustainChance}`;
}
