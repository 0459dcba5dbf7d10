/** What designs drawn by chance from the demo studies cost, apart by whether they run: a search meets mostly those that do not. */
import { join } from 'node:path';
import { simulate } from '../../shared/engine/simulate.ts';
import { loadStudy } from '../config/files.ts';
import { packageFolder } from '../report/package-folder.ts';
import { createRandom } from '../search/random.ts';
import { architecturesOf } from '../space/architectures.ts';
import type { Figures } from './bench-parts.ts';
import { chanceDesign } from './chance-design.ts';

const STUDIES = ['demo-night.yaml', 'demo-quick.yaml'];
/** Designs of each study: the first ones warm the compilers up. */
const WARM = 60;
const TIMED = 150;

export async function chance(): Promise<Figures> {
  const random = createRandom('benchmark');
  const sums = { runs: { seconds: 0, updates: 0, count: 0 }, dies: { seconds: 0, updates: 0, count: 0 } };
  for (const file of STUDIES) {
    const reading = await loadStudy(join(packageFolder(), 'configs', file));
    if (!reading.ok) throw new Error(`${file} cannot be read`);
    const spaces = architecturesOf(reading.study);
    for (let drawn = 0, done = 0; done < WARM + TIMED; drawn++) {
      const space = spaces[drawn % spaces.length];
      const engine = space.toEngine(chanceDesign(space, random));
      if ('refused' in engine) continue;
      const before = process.cpuUsage().user;
      const { running, cellUpdates } = simulate(engine);
      const seconds = (process.cpuUsage().user - before) / 1e6;
      if (done++ < WARM) continue;
      const sum = running ? sums.runs : sums.dies;
      sum.seconds += seconds;
      sum.updates += cellUpdates;
      sum.count++;
    }
  }
  const { runs, dies } = sums;
  const mean = ({ seconds, count }: typeof runs) => seconds / count;
  return {
    'designs drawn by chance that run, %': (100 * runs.count) / (runs.count + dies.count),
    'verdict on one of those, ms': 1e3 * mean(runs),
    'verdict on one that does not run, ms': 1e3 * mean(dies),
    'the second over the first': mean(dies) / mean(runs),
    'the same in cell-updates': dies.updates / dies.count / (runs.updates / runs.count),
  };
}
