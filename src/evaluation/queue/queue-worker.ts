/** Serves a queue with the threads of this machine until it is asked to stop. The other end of queue-evaluator.ts. */
import type { Job, Queue, Worker } from 'bullmq';
import type { Evaluator } from '../evaluation.ts';
import { slimResult } from '../slim-result.ts';
import type { QueueAddress } from './address.ts';
import { putAnswer } from './answer-box.ts';
import {
  closeCalmly,
  lastingConnection,
  loadQueueLibrary,
  OutageTeller,
  PREFIX,
  proveConnection,
  type QueueLibrary,
} from './connection.ts';
import { type Identity, identityOf, mismatch, ownName, queueName } from './identity.ts';
import { BATCH_ID, readQuestion, writeAnswer, writeRefusal } from './messages.ts';
import { type Entry, meet, RENEWAL } from './presence.ts';

/** ms that a batch belongs to a worker without renewal, and between looks for batches whose worker is gone. */
const LOCK = 10_000;
const STALL_LOOK = 5000;
/** Workers that may die over one batch before it is handed back to its run. */
const MOST_DEATHS = 3;
/** Batches in hand beyond one a thread, so that no thread waits for the next. */
const AHEAD = 1;

export interface QueueWorkerOptions {
  address: QueueAddress;
  modelVersion: string;
  /** Evaluates off the main thread, which renews the locks meanwhile. Closed by its owner. */
  pool: Evaluator;
  threads: number;
  /** For people; default: host and process number. */
  name?: string;
  /** Hears of runs that do not fit, odd questions, and the service's outages. */
  onNote?: (sentence: string) => void;
  /** Hears of every batch that was answered. */
  onBatch?: (designs: number) => void;
  /** Instead of this machine's own, for tests. */
  identity?: Identity;
}

export class QueueWorker {
  readonly #options: QueueWorkerOptions;
  readonly #library: QueueLibrary;
  readonly #entry: Entry;
  readonly #queue: Queue;
  readonly #worker: Worker;
  readonly #note: (sentence: string) => void;
  readonly #outage: OutageTeller;
  readonly #refused = new Set<string>();
  readonly #timer: NodeJS.Timeout;
  /** Batches in hand, and when the last one ended, s. */
  #inHand = 0;
  #lastEnd = 0;

  private constructor(options: QueueWorkerOptions, library: QueueLibrary) {
    const { address, threads, name, modelVersion, onNote = () => {} } = options;
    const identity = options.identity ?? identityOf(modelVersion);
    const settings = { prefix: PREFIX, connection: lastingConnection(address) };
    this.#options = options;
    this.#library = library;
    this.#note = onNote;
    this.#entry = { name: name ?? ownName(), ...identity, threads };
    this.#outage = new OutageTeller(address, onNote);
    this.#queue = new library.Queue(queueName(identity), { ...settings, skipMetasUpdate: true });
    this.#queue.on('error', (error) => this.#outage.lost(error));
    this.#worker = new library.Worker(queueName(identity), (job) => this.#serve(job), {
      ...settings,
      name: this.#entry.name,
      concurrency: threads + AHEAD,
      lockDuration: LOCK,
      stalledInterval: STALL_LOOK,
      maxStalledCount: MOST_DEATHS,
    });
    // A lock that was lost (a laptop that slept) costs nothing: the answer lies in its box, or another worker gives it.
    this.#worker.on('error', () => {});
    this.#worker.on('failed', (_, error) => this.#note(`A batch failed here: ${error.message}.`));
    this.#timer = setInterval(() => void this.#renew().catch(() => {}), RENEWAL);
  }

  /**
   * Begins to serve.
   * @throws {QueueError} when the package is missing, or the service cannot be reached or refuses
   */
  static async open(options: QueueWorkerOptions): Promise<QueueWorker> {
    const library = await loadQueueLibrary();
    await proveConnection(library, options.address);
    const worker = new QueueWorker(options, library);
    await worker.#worker.waitUntilReady();
    await worker.#renew();
    return worker;
  }

  get name(): string {
    return this.#entry.name;
  }

  async #serve(job: Job): Promise<string> {
    const { modelVersion, pool, threads, onBatch } = this.#options;
    if (!BATCH_ID.test(job.id ?? ''))
      throw new this.#library.UnrecoverableError('a job whose name is none of a batch is not looked at');
    const id = job.id as string;
    const client = await this.#queue.client;
    const question = readQuestion(job.data, modelVersion);
    if (!question.ok) {
      this.#note(`A batch is refused: ${question.reason}.`);
      await putAnswer(client, id, writeRefusal(this.name, question.reason));
      return 'refused';
    }
    const { requests, keys, figuresOnly } = question.batch;
    if (this.#inHand++ === 0) this.#lastEnd = performance.now() / 1000;
    try {
      const whole = await pool.evaluate(requests, { figuresOnly });
      const results = figuresOnly ? whole.map(slimResult) : whole;
      const now = performance.now() / 1000;
      const seconds = (now - this.#lastEnd) * threads;
      this.#lastEnd = now;
      await putAnswer(client, id, writeAnswer({ keys, results, modelVersion, worker: this.name, seconds }));
      onBatch?.(requests.length);
      return 'answered';
    } finally {
      this.#inHand--;
    }
  }

  async #renew(): Promise<void> {
    const runs = await meet(await this.#queue.client, 'worker', this.#entry);
    this.#outage.answered();
    for (const run of runs) {
      const why = mismatch(this.#entry, run);
      if (why === null || this.#refused.has(run.name)) continue;
      this.#refused.add(run.name);
      this.#note(`This worker does not serve run ${run.name}: it ${why}.`);
    }
  }

  /** Ends what is in hand, takes nothing new, and says goodbye. */
  async close(): Promise<void> {
    clearInterval(this.#timer);
    await this.#worker.close();
    const goodbye = this.#queue.client.then((client) => meet(client, 'worker', this.#entry, false)).catch(() => []);
    await Promise.race([goodbye, new Promise((resolve) => void setTimeout(resolve, 1000).unref())]);
    await closeCalmly(this.#queue);
  }
}
