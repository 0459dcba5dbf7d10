/**
 * Evaluates on other machines: hands batches to a queue and places the answers by their keys.
 *
 * A batch is named by its content, so asking twice is harmless. An answer counts however late and from whichever worker it
 * comes. What no worker can answer (a batch that took several workers down with it, an answer that makes no sense) is
 * evaluated by this process itself, so the results are those of a local run in any case.
 */
import type { Queue, QueueEvents } from 'bullmq';
import {
  type EvaluateOptions,
  type EvaluationRequest,
  type EvaluationResult,
  type Evaluator,
  Interrupted,
} from '../evaluation.ts';
import { requestKey } from '../request-key.ts';
import { addressText, type QueueAddress } from './address.ts';
import { takeAnswer } from './answer-box.ts';
import { cutIntoBatches } from './batches.ts';
import {
  closeCalmly,
  lastingConnection,
  loadQueueLibrary,
  OutageTeller,
  PREFIX,
  proveConnection,
} from './connection.ts';
import { type Identity, identityOf, ownName, queueName } from './identity.ts';
import { type Batch, batchId, LONGEST_QUESTION, readAnswer, writeQuestion } from './messages.ts';
import { Workforce } from './workforce.ts';

/** Workers that may fail on a batch before this process takes it. */
const ATTEMPTS = 3;
/** ms between looks at batches whose announcement may have been lost. */
const SWEEP = 4000;
/** s assumed for a design before the first answer, and the weight of the latest batch in the average. */
const FIRST_GUESS = 0.1;
const LATEST = 0.3;
/** s that the service keeps a batch that failed, and announcements that it keeps. */
const KEEP_FAILED = 3600;
const ANNOUNCEMENTS = 1000;

export interface QueueEvaluatorOptions {
  address: QueueAddress;
  modelVersion: string;
  /** Takes what the queue cannot answer; its threads start only then. Closed by its owner. */
  local: Evaluator;
  /** Hears of workers that come, go or do not fit, and of the service's outages. */
  onNote?: (sentence: string) => void;
  /** Instead of this machine's own, for tests. */
  identity?: Identity;
}

interface Pending {
  batch: Batch;
  question: string;
  promise: Promise<EvaluationResult[]>;
  resolve(results: EvaluationResult[]): void;
  reject(error: unknown): void;
  looking: boolean;
}

export class QueueEvaluator implements Evaluator {
  readonly #options: QueueEvaluatorOptions;
  readonly #queue: Queue;
  readonly #events: QueueEvents;
  readonly #workforce: Workforce;
  readonly #note: (sentence: string) => void;
  readonly #pending = new Map<string, Pending>();
  readonly #sweep: NodeJS.Timeout;
  #secondsEach = FIRST_GUESS;
  #closed = false;

  private constructor(options: QueueEvaluatorOptions, queue: Queue, events: QueueEvents, workforce: Workforce) {
    this.#options = options;
    this.#queue = queue;
    this.#events = events;
    this.#workforce = workforce;
    this.#note = options.onNote ?? (() => {});
    events.on('completed', ({ jobId }) => void this.#look(jobId));
    events.on('failed', ({ jobId }) => void this.#look(jobId));
    this.#sweep = setInterval(() => {
      for (const id of this.#pending.keys()) void this.#look(id);
    }, SWEEP);
  }

  /**
   * @throws {QueueError} when the package is missing, or the service cannot be reached or refuses
   */
  static async open(options: QueueEvaluatorOptions): Promise<QueueEvaluator> {
    const { address, modelVersion, onNote = () => {} } = options;
    const library = await loadQueueLibrary();
    await proveConnection(library, address);
    const identity = options.identity ?? identityOf(modelVersion);
    const settings = { prefix: PREFIX, connection: lastingConnection(address) };
    const name = queueName(identity);
    const queue = new library.Queue(name, { ...settings, streams: { events: { maxLen: ANNOUNCEMENTS } } });
    const events = new library.QueueEvents(name, settings);
    const outage = new OutageTeller(address, onNote);
    queue.on('error', (error) => outage.lost(error));
    events.on('error', () => {});
    const client = await queue.waitUntilReady();
    await events.waitUntilReady();
    const workforce = new Workforce({
      client,
      entry: { name: ownName(), ...identity, threads: 0 },
      place: addressText(address),
      onNote,
      onAnswered: () => outage.answered(),
    });
    await workforce.start();
    return new QueueEvaluator(options, queue, events, workforce);
  }

  /** The most threads that ever served this run at once. */
  get mostThreads(): number {
    return this.#workforce.mostThreads;
  }

  /**
   * @throws {Interrupted} when the signal fires
   * @throws whatever onResult throws
   */
  async evaluate(requests: readonly EvaluationRequest[], options: EvaluateOptions = {}): Promise<EvaluationResult[]> {
    const { signal, onResult, figuresOnly = false } = options;
    if (this.#closed || signal?.aborted) throw new Interrupted();
    const places = new Map<string, { request: EvaluationRequest; key: string; indices: number[] }>();
    requests.forEach((request, index) => {
      const key = requestKey(request, this.#options.modelVersion);
      const place = places.get(key);
      if (place) place.indices.push(index);
      else places.set(key, { request, key, indices: [index] });
    });
    const wishes = { threads: this.#workforce.threadsExpected, secondsEach: this.#secondsEach, figuresOnly };
    const batches = cutIntoBatches([...places.values()], wishes);
    const asked = batches.map((batch) => this.#pend(batch));
    const withdraw = () => this.#withdraw(batches);
    signal?.addEventListener('abort', withdraw, { once: true });
    const results: EvaluationResult[] = new Array(requests.length);
    const place = async (pending: Pending) => {
      try {
        const answers = await pending.promise;
        for (let i = 0; i < answers.length; i++) {
          for (const index of places.get(pending.batch.keys[i])?.indices ?? []) {
            results[index] = answers[i];
            await onResult?.(index, answers[i]);
          }
        }
      } catch (error) {
        withdraw();
        throw error;
      }
    };
    const placed = asked.map(place);
    try {
      void this.#send(asked).catch((error) => {
        for (const pending of asked) pending.reject(error);
      });
      // Every batch has come to its end before the whole fails, so that nothing writes behind the caller's back.
      const outcomes = await Promise.allSettled(placed);
      const failures = outcomes.flatMap((outcome) => (outcome.status === 'rejected' ? [outcome.reason] : []));
      if (failures.length > 0) throw failures.find((reason) => !(reason instanceof Interrupted)) ?? failures[0];
    } finally {
      signal?.removeEventListener('abort', withdraw);
    }
    return results;
  }

  /** A batch that is asked already is not asked again. */
  #pend(batch: Batch): Pending {
    const id = batchId(batch);
    const known = this.#pending.get(id);
    if (known) return known;
    const question = writeQuestion(batch, this.#options.modelVersion);
    let settle: Pick<Pending, 'resolve' | 'reject'> | null = null;
    const promise = new Promise<EvaluationResult[]>((resolve, reject) => {
      settle = { resolve, reject };
    }).finally(() => this.#pending.delete(id));
    promise.catch(() => {});
    const { resolve, reject } = settle as unknown as Pick<Pending, 'resolve' | 'reject'>;
    const pending: Pending = { batch, question, promise, resolve, reject, looking: false };
    this.#pending.set(id, pending);
    return pending;
  }

  async #send(asked: readonly Pending[]): Promise<void> {
    const travelling = asked.filter(({ question }) => question.length <= LONGEST_QUESTION);
    const jobs = travelling.map(({ batch, question }) => ({
      name: 'batch',
      data: { question },
      opts: {
        jobId: batchId(batch),
        attempts: ATTEMPTS,
        removeOnComplete: true,
        removeOnFail: { age: KEEP_FAILED },
      },
    }));
    for (const pending of asked)
      if (!travelling.includes(pending)) void this.#evaluateHere(pending, 'a batch is too long to travel');
    await this.#queue.addBulk(jobs);
  }

  /** Looks for the answer to a batch, and asks again when the service has forgotten it. */
  async #look(id: string): Promise<void> {
    const pending = this.#pending.get(id);
    if (!pending || pending.looking) return;
    pending.looking = true;
    try {
      const client = await this.#queue.client;
      let answer = await takeAnswer(client, id);
      if (answer === null) {
        const state = await this.#queue.getJobState(id);
        if (state === 'failed') {
          const job = await this.#queue.getJob(id);
          await job?.remove();
          await this.#evaluateHere(
            pending,
            `several workers failed on a batch (${job?.failedReason ?? 'no reason given'})`,
          );
        } else if (state === 'unknown') {
          // It may have been answered between the two looks.
          answer = await takeAnswer(client, id);
          if (answer === null && this.#pending.get(id) === pending) await this.#send([pending]);
        }
      }
      if (answer !== null) await this.#accept(pending, answer);
    } catch (error) {
      // The service went away, which OutageTeller says; the next sweep looks again.
      if (this.#closed) pending.reject(new Interrupted());
      else if (error instanceof TypeError) pending.reject(error);
    } finally {
      pending.looking = false;
    }
  }

  async #accept(pending: Pending, text: string): Promise<void> {
    const answer = readAnswer(text, pending.batch, this.#options.modelVersion);
    if (!answer.ok) {
      await this.#evaluateHere(pending, answer.reason);
      return;
    }
    const each = answer.seconds / answer.results.length;
    this.#secondsEach += LATEST * (each - this.#secondsEach);
    pending.resolve(answer.results);
  }

  async #evaluateHere({ batch, resolve, reject }: Pending, reason: string): Promise<void> {
    this.#note(`${reason[0].toUpperCase()}${reason.slice(1)}; this machine evaluates it.`);
    await this.#options.local.evaluate(batch.requests).then(resolve, reject);
  }

  /** Takes back what no worker has begun, as far as the service is there; nobody waits for that. */
  #withdraw(batches: readonly Batch[]): void {
    for (const id of batches.map(batchId)) {
      const pending = this.#pending.get(id);
      if (!pending) continue;
      pending.reject(new Interrupted());
      this.#queue.remove(id).catch(() => {});
    }
  }

  async close(): Promise<void> {
    if (this.#closed) return;
    this.#closed = true;
    clearInterval(this.#sweep);
    for (const { reject } of this.#pending.values()) reject(new Interrupted());
    await this.#workforce.stop();
    await Promise.all([closeCalmly(this.#events), closeCalmly(this.#queue)]);
  }
}
