/**
 * What the queue costs: `--entry bench-queue` measures it against a service named by PULSEJET_QUEUE_URL.
 *
 * The workers are processes of their own on this machine. Each has one thread that sleeps for the time of a design instead
 * of computing, so that the figures are those of the queue and not of processors that are shared; the results that travel
 * are those of a real evaluation.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import pLimit from 'p-limit';
import { modelVersion } from '../cli/versions.ts';
import { loadEngine } from '../config/files.ts';
import { evaluateRequest } from '../evaluation/evaluate-request.ts';
import type { EvaluationRequest, EvaluationResult, Evaluator } from '../evaluation/evaluation.ts';
import { QueueEvaluator, QueueWorker, queueAddress } from '../evaluation/queue/index.ts';

const ENGINE = 'configs/engines/class-50-cm.yaml';
/** s of a design, and designs for each worker. */
const DESIGN = 0.08;
const EACH = 300;
/** Designs of the measurement without any work. */
const EMPTY = 6000;

async function example(): Promise<EvaluationRequest> {
  const reading = await loadEngine(ENGINE);
  if (!reading.ok) throw new Error(`${ENGINE} cannot be read; start this in the project's folder`);
  return { engine: reading.engine, brief: reading.brief, fidelity: 'full', constantsDraw: null };
}

/** s that this process' thread was busy. */
let busy = 0;

/** One thread that sleeps. */
function sleeper(result: EvaluationResult, seconds: number): Evaluator {
  const thread = pLimit(1);
  return {
    evaluate: (requests) =>
      Promise.all(
        requests.map(() =>
          thread(async () => {
            const start = performance.now();
            if (seconds > 0) await sleep(seconds * 1000);
            busy += (performance.now() - start) / 1000;
            return result;
          }),
        ),
      ),
    close: async () => {},
  };
}

const address = queueAddress(true, process.env);
const request = await example();

/** Requests that differ, so that none is asked for twice; `from` keeps those of different measurements apart. */
let from = 0;
function requests(count: number): EvaluationRequest[] {
  return Array.from({ length: count }, () => ({
    ...request,
    engine: { ...request.engine, feed: { ...request.engine.feed, equivalenceRatio: 0.5 + ++from * 1e-6 } },
  }));
}

async function serve(name: string, seconds: number): Promise<void> {
  const pool = sleeper(evaluateRequest(request), seconds);
  await QueueWorker.open({ address, modelVersion, pool, threads: 1, name });
  process.on('message', () => process.send?.(busy));
  process.send?.(0);
}

/** The next number that a worker says; it is asked for how long it was busy. */
function ask(child: ChildProcess): Promise<number> {
  return new Promise((resolve) => {
    child.once('message', (seconds) => resolve(Number(seconds)));
    if (child.connected) child.send('busy?');
  });
}

const total = (numbers: number[]) => numbers.reduce((sum, number) => sum + number, 0);

async function startWorkers(count: number, seconds: number): Promise<ChildProcess[]> {
  const children = Array.from({ length: count }, (_, i) =>
    spawn(process.execPath, [fileURLToPath(import.meta.url), 'serve', `bench-${i}`, String(seconds)], {
      stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    }),
  );
  await Promise.all(children.map((child) => new Promise((resolve) => child.once('message', resolve))));
  return children;
}

async function measure(workers: number, seconds: number, designs: number, figuresOnly: boolean) {
  const children = await startWorkers(workers, seconds);
  const run = await QueueEvaluator.open({ address, modelVersion, local: sleeper(evaluateRequest(request), 0) });
  try {
    // The first batches teach the run how long a design takes.
    await run.evaluate(requests(10 * workers), { figuresOnly });
    const asked = requests(designs);
    const before = total(await Promise.all(children.map(ask)));
    const [start, cpu] = [performance.now(), process.cpuUsage()];
    await run.evaluate(asked, { figuresOnly });
    const wall = (performance.now() - start) / 1000;
    const { user, system } = process.cpuUsage(cpu);
    return { wall, cpu: (user + system) / 1e6, busy: total(await Promise.all(children.map(ask))) - before };
  } finally {
    await run.close();
    for (const child of children) child.kill('SIGKILL');
  }
}

if (process.argv[2] === 'serve') await serve(process.argv[3], Number(process.argv[4]));
else {
  console.log('| workers | designs | seconds | designs/s | a design, ms | overhead | run: processor a design, ms |');
  console.log('|---|---|---|---|---|---|---|');
  for (const workers of [1, 2, 4]) {
    const designs = EACH * workers;
    const { wall, cpu, busy } = await measure(workers, DESIGN, designs, true);
    // Thread time that was not spent on designs, over that which was.
    const overhead = (wall * workers) / busy - 1;
    console.log(
      `| ${workers} | ${designs} | ${wall.toFixed(2)} | ${(designs / wall).toFixed(1)} | ${((1000 * busy) / designs).toFixed(1)} | ${(100 * overhead).toFixed(1)} % | ${((1000 * cpu) / designs).toFixed(2)} |`,
    );
  }
  for (const figuresOnly of [true, false]) {
    const { wall, cpu } = await measure(2, 0, EMPTY / (figuresOnly ? 1 : 4), figuresOnly);
    const designs = EMPTY / (figuresOnly ? 1 : 4);
    console.log(
      `${figuresOnly ? 'figures only' : 'full results'}, designs that take no time: ${(designs / wall).toFixed(0)} designs/s, run: ${((1000 * cpu) / designs).toFixed(2)} ms of processor a design`,
    );
  }
  process.exit(0);
}
