import type { CheckRule } from './rule.ts';

/** Everything else hangs on this: the engine goes on by itself when starting air and spark are taken away. */
export const engineRuns: CheckRule = {
  id: 'engine-runs',
  title: 'Runs by itself',
  source: 'the gas-dynamic model: start attempts with air and spark, both then taken away',
  binding: true,
  judge({ performance, running }) {
    const { verdict } = performance;
    const runs = verdict.kind === 'self-sustaining' && running !== null;
    return {
      verdict: runs ? 'pass' : 'fail',
      value: runs ? 1 : 0,
      limit: 1,
      unit: '',
      margin: runs ? 0 : -1,
      sentence: verdict.message || (runs ? 'It runs by itself.' : 'It does not run by itself.'),
    };
  },
};
