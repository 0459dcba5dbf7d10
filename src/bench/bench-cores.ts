/**
 * How much work all cores do over one: in processes of their own and in threads of one process, by wall time.
 *
 * Crews of processes warm up once and wait; at each word one of them or all do a share of work, and the time runs until the last
 * has ended. Words to crews follow one another closely, so that the times of a ratio, and ratios that are compared, come from the
 * same seconds. Plain arithmetic shows what the machine itself allows: cores that share hardware, or that others use, do less
 * than as many times one. Processor time tells which of the two it is: shared hardware makes that of the same work grow, others who
 * use the cores make it wait.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { V8_FLAGS } from '../cli/v8-flags.mjs';
import type { WorkKind } from './bench-work.ts';

/** Times of all that started at one word, s. */
export interface Timing {
  /** From the word until the last has ended. */
  wall: number;
  /** User and system, mean of the processes. */
  processor: number;
  /** While ready to run, for a core that others had: mean of the processes' main threads, 0 where the system does not tell. */
  waited: number;
}

/** What a process says after a share, s. */
type Said = Omit<Timing, 'wall'>;

/** Processes that do one kind of work at a word, warm from one word to the next. */
export class Crew {
  readonly #kind: WorkKind;
  readonly #members: readonly ChildProcess[];

  private constructor(kind: WorkKind, members: readonly ChildProcess[]) {
    this.#kind = kind;
    this.#members = members;
  }

  /** Starts `processes` of them with `file --work KIND THREADS LOOPS`. Throws Error when one ends before it is warm. */
  static async start(file: string, kind: WorkKind, { processes = 1, threads = 1, loops = 'kernel' }): Promise<Crew> {
    const members = Array.from({ length: processes }, () =>
      spawn(process.execPath, [...V8_FLAGS, file, '--work', kind, String(threads), loops], {
        stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
      }),
    );
    const crew = new Crew(kind, members);
    try {
      await Promise.all(members.map((member) => word(member, kind)));
    } catch (error) {
      crew.end();
      throw error;
    }
    return crew;
  }

  /** Lets the first `count` do a share each. Throws Error when one ends before it is done. */
  async go(count = this.#members.length): Promise<Timing> {
    const called = this.#members.slice(0, count);
    const from = performance.now();
    const said = await Promise.all(
      called.map((member) => {
        const done = word(member, this.#kind);
        member.send('go');
        return done;
      }),
    );
    const wall = (performance.now() - from) / 1e3;
    const mean = (part: keyof Said) => said.reduce((sum, one) => sum + one[part], 0) / called.length;
    return { wall, processor: mean('processor'), waited: mean('waited') };
  }

  end(): void {
    for (const member of this.#members) member.kill();
  }
}

/** The next thing that a process says. */
function word(child: ChildProcess, kind: WorkKind): Promise<Said> {
  return new Promise((resolve, reject) => {
    const ended = (why: unknown) => reject(new Error(`the benchmark's work "${kind}" ended early: ${String(why)}`));
    child.once('exit', ended);
    child.once('error', ended);
    child.once('message', (said) => {
      child.off('exit', ended);
      child.off('error', ended);
      resolve(said as Said);
    });
  });
}

/** The other end, in the process that works: speaks when it is warm and after each share. Ends when it is killed. */
export async function workAtAWord(kind: WorkKind, threads: number): Promise<void> {
  // Loaded on demand, so that its code does not weigh on the start-up and the memory of other parts.
  const { WORKS } = await import('./bench-work.ts');
  const share = await WORKS[kind](threads);
  const say = (said: Said) => process.send?.(said);
  process.on('message', async () => {
    const before = process.cpuUsage();
    const waited = waitedSoFar();
    await share();
    const { user, system } = process.cpuUsage(before);
    say({ processor: (user + system) / 1e6, waited: waitedSoFar() - waited });
  });
  process.on('disconnect', () => process.exit());
  say({ processor: 0, waited: 0 });
}

/** s that this thread was ready and had no core; Linux counts them. */
function waitedSoFar(): number {
  try {
    return Number(readFileSync('/proc/thread-self/schedstat', 'utf8').split(' ')[1]) / 1e9;
  } catch {
    return 0;
  }
}
