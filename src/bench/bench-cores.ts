/**
 * How much work all cores do over one: in processes of their own and in threads of one process, by wall time.
 *
 * Each process warms up and waits; all start at one word, and the time runs until the last has ended. One and all are measured
 * in turn, so that a ratio's two times lie close together. Plain arithmetic shows what the machine itself allows: cores that share
 * hardware, or that others use, do less than as many times one. The processor time that the same work needs tells which of the
 * two it is: shared hardware makes it grow, waiting for a core does not.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { V8_FLAGS } from '../cli/v8-flags.mjs';
import type { WorkKind } from './bench-work.ts';

/** Times of all that started at one word, s. */
export interface Timing {
  /** From the word until the last has ended. */
  wall: number;
  /** User and system, mean of the processes. */
  processor: number;
}

/** Starts `processes` of them with `file --work KIND COUNT LOOPS`, each doing its share once. Throws Error when one fails. */
export async function timeTogether(
  file: string,
  kind: WorkKind,
  { processes = 1, threads = 1, loops = 'kernel' },
): Promise<Timing> {
  const children = Array.from({ length: processes }, () =>
    spawn(process.execPath, [...V8_FLAGS, file, '--work', kind, String(threads), loops], {
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    }),
  );
  try {
    await Promise.all(children.map((child) => word(child, kind)));
    const from = performance.now();
    const times = await Promise.all(
      children.map((child) => {
        const done = word(child, kind);
        child.send('go');
        return done;
      }),
    );
    const wall = (performance.now() - from) / 1e3;
    return { wall, processor: times.reduce((sum, time) => sum + time, 0) / processes };
  } finally {
    for (const child of children) child.kill();
  }
}

/** The next number that a process says. */
function word(child: ChildProcess, kind: WorkKind): Promise<number> {
  return new Promise((resolve, reject) => {
    const ended = (why: unknown) => reject(new Error(`the benchmark's work "${kind}" ended early: ${String(why)}`));
    child.once('exit', ended);
    child.once('error', ended);
    child.once('message', (seconds) => {
      child.off('exit', ended);
      child.off('error', ended);
      resolve(Number(seconds));
    });
  });
}

/** The other end, in the process that works: says 0 when it is warm and the processor time, s, when it has done its share. */
export async function workAtAWord(kind: WorkKind, threads: number): Promise<void> {
  // Loaded on demand, so that its code does not weigh on the start-up and the memory of other parts.
  const { WORKS } = await import('./bench-work.ts');
  const work = await WORKS[kind](threads);
  const told = new Promise((resolve) => process.once('message', resolve));
  process.send?.(0);
  await told;
  const before = process.cpuUsage();
  await work.run();
  const { user, system } = process.cpuUsage(before);
  process.send?.((user + system) / 1e6);
  await work.end();
  process.disconnect();
}
