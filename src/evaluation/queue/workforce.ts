/** The workers that a run sees: how many threads serve it, who came and went, who does not fit and why. */
import type { IRedisClient } from 'bullmq';
import { mismatch } from './identity.ts';
import { type Entry, meet, RENEWAL } from './presence.ts';

export interface WorkforceOptions {
  client: IRedisClient;
  /** This run. */
  entry: Entry;
  /** The queue's address for people. */
  place: string;
  onNote: (sentence: string) => void;
  /** The service answered. */
  onAnswered: () => void;
}

/** Threads assumed while no worker is there yet. */
const EXPECTED = 8;
/** Workers named one by one; beyond that only their number. */
const NAMED = 8;

export class Workforce {
  readonly #options: WorkforceOptions;
  readonly #refused = new Set<string>();
  #serving = new Map<string, Entry>();
  #timer: NodeJS.Timeout | null = null;
  #alone = false;
  mostThreads = 0;

  constructor(options: WorkforceOptions) {
    this.#options = options;
  }

  get threads(): number {
    return [...this.#serving.values()].reduce((sum, { threads }) => sum + threads, 0);
  }

  get threadsExpected(): number {
    return this.threads || EXPECTED;
  }

  async start(): Promise<void> {
    await this.#renew();
    this.#timer = setInterval(() => void this.#renew().catch(() => {}), RENEWAL);
  }

  async #renew(): Promise<void> {
    const { client, entry, onAnswered } = this.#options;
    const workers = await meet(client, 'run', entry);
    onAnswered();
    this.#compare(workers);
  }

  #compare(workers: readonly Entry[]): void {
    const { entry, place, onNote } = this.#options;
    const fitting = new Map<string, Entry>();
    for (const worker of workers) {
      const why = mismatch(entry, worker);
      if (why === null) fitting.set(worker.name, worker);
      else if (!this.#refused.has(worker.name)) {
        this.#refused.add(worker.name);
        onNote(`Worker ${worker.name} is refused: it ${why}.`);
      }
    }
    const came = [...fitting.values()].filter(({ name }) => !this.#serving.has(name));
    const left = [...this.#serving.values()].filter(({ name }) => !fitting.has(name));
    this.#serving = fitting;
    this.mostThreads = Math.max(this.mostThreads, this.threads);
    if (came.length > NAMED) onNote(`${came.length} workers came; ${this.threads} threads serve this run.`);
    else for (const { name, threads } of came) onNote(`Worker ${name} serves this run with ${threads} threads.`);
    if (left.length > NAMED) onNote(`${left.length} workers left; ${this.threads} threads serve this run.`);
    else for (const { name } of left) onNote(`Worker ${name} left; others take over what it had in hand.`);
    const alone = fitting.size === 0;
    if (alone && !this.#alone)
      onNote(`No worker serves this run. Start one on any machine: pulsejet-study worker --queue ${place}`);
    this.#alone = alone;
  }

  async stop(): Promise<void> {
    if (this.#timer) clearInterval(this.#timer);
    const gone = meet(this.#options.client, 'run', this.#options.entry, false).catch(() => []);
    await Promise.race([gone, new Promise((resolve) => void setTimeout(resolve, 1000).unref())]);
  }
}
