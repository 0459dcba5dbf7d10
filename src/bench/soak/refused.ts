/** Engines with a figure that none has, through the pool and its real threads: answered in no time, so that a leak shows. */
import type { Brief } from '../../../shared/engine/brief.ts';
import type { WorkerPool } from '../../evaluation/worker-pool.ts';
import { childRandom } from '../../search/random.ts';
import { faultOf } from './designs.ts';
import { type MemorySample, memoryInWords, sampleMemory } from './memory.ts';
import { randomEngine } from './random-engine.ts';
import { countFault, emptyTally, type Tally } from './tally.ts';

/** Requests of one batch, as a generation of a large study. */
const BATCH = 250;

export interface SoakRefusedInput {
  refused: number;
  seed: string;
  brief: Brief;
  pool: WorkerPool;
  onProgress: (done: number) => void;
}

export async function soakRefused({ refused, seed, brief, pool, onProgress }: SoakRefusedInput): Promise<Tally> {
  const tally = emptyTally('refused engines through the pool');
  const samples: MemorySample[] = [];
  while (tally.tried < refused) {
    const count = Math.min(BATCH, refused - tally.tried);
    const requests = Array.from({ length: count }, (_, n) => {
      const name = `refused ${tally.tried + n}`;
      const engine = randomEngine(childRandom(seed, name), name);
      engine.sections[0].length = n % 2 ? Number.NaN : 1e6;
      return { engine, brief, fidelity: 'screen' as const, constantsDraw: null };
    });
    const results = await pool.evaluate(requests);
    for (const result of results) {
      tally.tried++;
      const { verdict } = result.performance;
      if (result.fault) countFault(tally, 'lost', verdict.message);
      const fault =
        verdict.kind === 'model failure' && / of the engine is /.test(verdict.message)
          ? faultOf(result)
          : `it is not refused: ${verdict.message}`;
      if (fault !== null) countFault(tally, 'wrong', fault);
    }
    const fifth = Math.ceil(refused / 5);
    if (Math.floor(tally.tried / fifth) > Math.floor((tally.tried - count) / fifth)) {
      samples.push(sampleMemory(tally.tried));
      onProgress(tally.tried);
    }
  }
  tally.notes.push(`memory ${memoryInWords(samples)}`);
  return tally;
}
