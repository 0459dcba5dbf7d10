/** Whether an engine repeats itself: two groups of cycles compared. */
import type { Ledger } from './ledger.ts';

/**
 * Largest relative change of impulse, air, period and peak pressure over `ambient`, Pa, between the last two groups of `group`
 * cycles; infinite before there are two behind copy `since` of the books.
 */
function disagreement(ledger: Ledger, since: number, group: number, ambient: number): number {
  const c = ledger.count - 1;
  if (c - since < 2 * group) return Number.POSITIVE_INFINITY;
  let worst = 0;
  const compare = (a: number, b: number) => {
    const d = Math.abs(a - b) / Math.max(1e-12, 0.5 * Math.abs(a + b));
    if (d > worst) worst = d;
  };
  compare(ledger.between(c - group, c, 'exhaustImpulse'), ledger.between(c - 2 * group, c - group, 'exhaustImpulse'));
  compare(ledger.between(c - group, c, 'airIn'), ledger.between(c - 2 * group, c - group, 'airIn'));
  compare(ledger.between(c - group, c, 'time'), ledger.between(c - 2 * group, c - group, 'time'));
  let late = 0;
  let early = 0;
  for (let n = 0; n < group; n++) {
    late += ledger.at(c - n, 'peakPressure') - ambient;
    early += ledger.at(c - group - n, 'peakPressure') - ambient;
  }
  compare(late, early);
  return worst;
}

/**
 * What is left of the way to the limit cycle: relative change per `group` cycles. Groups half as long tell sooner, and change half
 * as much when an engine drifts; the smaller figure counts, since a change of only one of the two is the engine's own unrest.
 * Cycles up to copy `since` of the books, those with starting air, are not compared.
 */
export function drift(ledger: Ledger, since: number, group: number, ambient: number): number {
  return Math.min(disagreement(ledger, since, group, ambient), 2 * disagreement(ledger, since, group / 2, ambient));
}
