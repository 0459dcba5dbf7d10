/** Random engines through the worker pool: each gets a verdict or a failure with its reason, in bounded time. */
import type { Brief } from '../../../shared/engine/brief.ts';
import type { EvaluationResult } from '../../evaluation/evaluation.ts';
import { pathOfNotFinite } from '../../evaluation/not-finite.ts';
import { summarise } from '../../evaluation/summary.ts';
import type { WorkerPool } from '../../evaluation/worker-pool.ts';
import { childRandom } from '../../search/random.ts';
import { type MemorySample, memoryInWords, sampleMemory } from './memory.ts';
import { randomEngine } from './random-engine.ts';
import { countFault, countsInWords, emptyTally, type Tally } from './tally.ts';

/** Limits of the audits, as the model's contract states them. */
const BALANCE = 1e-3;
const THRUST_BALANCE = 1e-2;

/** What is wrong with a result; null when nothing is. */
export function faultOf(result: EvaluationResult): string | null {
  const { verdict, running } = result.performance;
  const path = pathOfNotFinite(result);
  if (path !== null) return `${path} is not a finite number`;
  if (verdict.message.trim() === '') return `the verdict "${verdict.kind}" gives no reason`;
  if ((running !== null) !== (verdict.kind === 'self-sustaining'))
    return `the verdict is "${verdict.kind}", but figures are ${running ? '' : 'not '}there`;
  const summary = summarise(result);
  if (summary.status !== 'ok' && summary.reason === '') return `the summary "${summary.status}" gives no reason`;
  if (running === null) return null;
  const { frequency, fuelFlow, airFlow, peakPressure, lowestPressure, audits } = running;
  for (const [name, value] of Object.entries({ frequency, fuelFlow, airFlow, peakPressure, lowestPressure }))
    if (!(value > 0)) return `${name} of a running engine is ${value}`;
  const { massError, energyError, thrustError } = audits;
  const closes =
    Math.abs(massError) <= BALANCE && Math.abs(energyError) <= BALANCE && Math.abs(thrustError) <= THRUST_BALANCE;
  if (audits.closed !== closes)
    return `audits are said ${audits.closed ? '' : 'not '}to close, but mass ${massError}, energy ${energyError}, thrust ${thrustError}`;
  return null;
}

export interface SoakDesignsInput {
  designs: number;
  seed: string;
  brief: Brief;
  pool: WorkerPool;
  onProgress: (done: number) => void;
}

export async function soakDesigns({ designs, seed, brief, pool, onProgress }: SoakDesignsInput): Promise<Tally> {
  const tally = emptyTally('random designs, coarse grid');
  const verdicts = new Map<string, number>();
  const failures = new Map<string, number>();
  const memory: MemorySample[] = [];
  let open = 0;
  let longest = 0;
  let next = 0;
  const lane = async () => {
    while (next < designs) {
      const index = next++;
      const engine = randomEngine(childRandom(seed, `design ${index}`), `design ${index}`);
      const began = performance.now();
      const [result] = await pool.evaluate([{ engine, brief, fidelity: 'screen', constantsDraw: null }]);
      longest = Math.max(longest, performance.now() - began);
      const { verdict, running } = result.performance;
      tally.tried++;
      verdicts.set(verdict.kind, (verdicts.get(verdict.kind) ?? 0) + 1);
      if (verdict.kind === 'model failure') {
        const reason = verdict.message
          .replace(/^\S+ (?=of the engine is|is not a)/, 'a figure ')
          .replace(/[-+]?\d[\d.e+-]*|NaN|-?Infinity/g, '…')
          .slice(0, 120);
        failures.set(reason, (failures.get(reason) ?? 0) + 1);
      }
      if (running && !running.audits.closed) open++;
      if (result.fault) countFault(tally, 'lost', `design ${index}: ${verdict.message}`);
      const fault = faultOf(result);
      if (fault !== null) countFault(tally, 'wrong', `design ${index}: ${fault}`);
      if (tally.tried % Math.ceil(designs / 5) === 0) memory.push(sampleMemory(tally.tried));
      if (tally.tried % 100 === 0) onProgress(tally.tried);
    }
  };
  await Promise.all(Array.from({ length: pool.workers }, lane));
  tally.notes.push(`verdicts: ${countsInWords(verdicts)}`);
  tally.notes.push(`running engines whose audits are said not to close: ${open}`);
  tally.notes.push(`longest evaluation: ${(longest / 1000).toFixed(1)} s`);
  tally.notes.push(`memory ${memoryInWords(memory)}`);
  if (failures.size > 0) tally.notes.push(`reasons of model failures: ${countsInWords(failures)}`);
  return tally;
}
