/** What a coarse run, a full run and a full run of an engine that dies really cost, by processor time. */
import type { Brief } from '../../../shared/engine/brief.ts';
import { evaluateRequest } from '../../evaluation/evaluate-request.ts';
import { summarise } from '../../evaluation/summary.ts';
import { createRandom } from '../../search/random.ts';
import type { DesignSpace } from '../../space/architectures.ts';
import { chanceDesign } from '../chance-design.ts';

/** Designs that are timed, drawn by chance over all architectures in turn. */
const TIMED = 30;

export interface ScreeningCosts {
  /** Processor time of a full run of an engine that runs, s. */
  full: number;
  /** Over that: a coarse run of it, and a full run of an engine that dies; NaN when no design was of the kind. */
  coarse: number;
  dying: number;
}

export function measureCosts(spaces: readonly DesignSpace[], brief: Brief): ScreeningCosts {
  const random = createRandom('costs');
  const sums = { full: [0, 0], coarse: [0, 0], dying: [0, 0] };
  const add = (sum: number[], seconds: number) => {
    sum[0] += seconds;
    sum[1]++;
  };
  let timed = 0;
  // The first is for warming up.
  for (let n = 0; timed <= TIMED; n++) {
    const space = spaces[n % spaces.length];
    const engine = space.toEngine(chanceDesign(space, random));
    if ('refused' in engine) continue;
    const measured = (fidelity: 'screen' | 'full') => {
      const start = process.cpuUsage();
      const { status } = summarise(evaluateRequest({ engine, brief, fidelity, constantsDraw: null }));
      const { user, system } = process.cpuUsage(start);
      return { status, seconds: (user + system) / 1e6 };
    };
    const coarse = measured('screen');
    const full = measured('full');
    if (timed++ === 0) continue;
    if (full.status !== 'ok') add(sums.dying, full.seconds);
    else {
      add(sums.full, full.seconds);
      add(sums.coarse, coarse.seconds);
    }
  }
  const mean = ([sum, count]: number[]) => sum / count;
  const full = mean(sums.full);
  return { full, coarse: mean(sums.coarse) / full, dying: mean(sums.dying) / full };
}
