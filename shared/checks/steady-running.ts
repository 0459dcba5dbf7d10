import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { percent } from './say.ts';

/** Peak pressures that vary more than this from cycle to cycle sound rough and blow out easily. */
const ROUGH = 0.15;

export const steadyRunning: CheckRule = {
  id: 'steady-running',
  title: 'Runs evenly from cycle to cycle',
  source: 'common practice, no source',
  binding: false,
  judge({ running, caution }) {
    if (running === null) return notApplicable('The engine does not run.');
    const judged = atMost(
      { value: running.cycleVariation, limit: ROUGH, unit: '', cautionMargin: caution },
      {
        pass: `Peaks vary by ${percent(running.cycleVariation)} from cycle to cycle.`,
        caution: `Peaks vary by ${percent(running.cycleVariation)}, ${percent(ROUGH)} is rough: set the fuel carefully, a little richer.`,
        fail: `Peaks vary by ${percent(running.cycleVariation)} (${percent(ROUGH)} is rough): it is near blow-out; enrich it slightly or lengthen the tailpipe.`,
      },
    );
    if (judged.verdict === 'pass' && !running.audits.limitCycleReached) {
      return {
        ...judged,
        verdict: 'caution',
        sentence: `It had not settled when the run ended, with peaks ${percent(running.cycleVariation)} apart: its figures still drift, so run it finer before you trust them.`,
      };
    }
    return judged;
  },
};
