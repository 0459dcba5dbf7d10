/** Work for measuring cores: what a process does at a word, after it has warmed up. */
import { join } from 'node:path';
import {
  droneEngine,
  engine50Cm,
  oneLargePoppet,
  twelveSmallPoppets,
  valvelessUTube,
} from '../../shared/calibration/reference-engines.ts';
import { loadEngine } from '../config/files.ts';
import { evaluateRequest } from '../evaluation/evaluate-request.ts';
import type { EvaluationRequest } from '../evaluation/evaluation.ts';
import { WorkerPool } from '../evaluation/worker-pool.ts';
import { packageFolder } from '../report/package-folder.ts';

/** One share of work has all kinds of engine, the longest first: the last to end leave a core idle for little. */
const ENGINES = [valvelessUTube(), engine50Cm(), droneEngine(), twelveSmallPoppets(), oneLargePoppet()];
/** Times that a share has each: about a second in all, beside which a collection or a compiler on one core counts for little. */
const ROUNDS = 5;
export const DESIGNS = ROUNDS * ENGINES.length;
/** Million turns of plain arithmetic that take about as long. */
const ARITHMETIC = 400;

/**
 * Shares done before the first that counts. Until the functions have been compiled for good, compilers work beside the model: on a
 * core that is free when one works and on none when all do, so that a cold start would make cores look less than they are. The first
 * share takes half as long again as the last, and shares get shorter for some ten seconds.
 */
const WARM_UP = 8;

/** Does one share. */
type Share = () => Promise<void>;

/** The kinds of work; each comes back once it is warm. */
export const WORKS = { arithmetic, model, threads };
export type WorkKind = keyof typeof WORKS;

/** A million turns on four numbers, which stay in registers. */
function turns(): number {
  let a = 1;
  let b = 0.5;
  let c = 0.25;
  let d = 0.125;
  for (let i = 0; i < 1e6; i++) {
    a = a * 0.999999 + 1e-6;
    b = b * 0.999998 + 1e-6;
    c = c * 0.999997 + 1e-6;
    d = d * 0.999996 + 1e-6;
  }
  return a + b + c + d;
}

/** What the cores themselves allow: no memory, no allocation, no messages. */
async function arithmetic(): Promise<Share> {
  const go = (n: number) => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += turns();
    if (!(sum > 0)) throw new Error('the arithmetic went wrong');
  };
  go(30);
  return async () => go(ARITHMETIC);
}

/** The designs, one after the other, in this thread. */
async function model(): Promise<Share> {
  const all = await requests(ROUNDS);
  const share = async () => {
    for (const request of all) evaluateRequest(request);
  };
  for (let n = 0; n < WARM_UP; n++) await share();
  return share;
}

/** As many shares as threads, through the pool of this process as a study does it. */
async function threads(count: number): Promise<Share> {
  const pool = new WorkerPool({ workers: count });
  const all = await requests(ROUNDS * count);
  const share = async () => {
    await pool.evaluate(all);
  };
  for (let n = 0; n < WARM_UP; n++) await share();
  return share;
}

async function requests(rounds: number): Promise<EvaluationRequest[]> {
  const file = join(packageFolder(), 'configs', 'engines', 'class-50-cm.yaml');
  const reading = await loadEngine(file);
  if (!reading.ok) throw new Error(`${file} cannot be read`);
  const { brief } = reading;
  return ENGINES.flatMap((engine) =>
    Array.from({ length: rounds }, () => ({ engine, brief, fidelity: 'full' as const, constantsDraw: null })),
  );
}
