/**
 * Evaluates in threads of this process.
 *
 * Results are placed by the index of their request, never by arrival. A thread that crashes is replaced and its request
 * asked once more; a second crash, or an evaluation over its time limit, becomes a result that says so.
 */
import { availableParallelism } from 'node:os';
import pLimit from 'p-limit';
import {
  type EvaluateOptions,
  type EvaluationRequest,
  type EvaluationResult,
  type Evaluator,
  Interrupted,
} from './evaluation.ts';
import { failedResult } from './failed-result.ts';
import { slimResult } from './slim-result.ts';
import { Thread, type ThreadSettings } from './thread.ts';

/** Seconds that one evaluation may take: some hundred times what a slow one needs. */
export const DEFAULT_TIME_LIMIT = 120;
export const DEFAULT_MEMORY_LIMIT = 512;

export interface WorkerPoolOptions extends Partial<ThreadSettings> {
  workers?: number;
  /** Hears about threads that were lost and replaced. */
  onFault?: (sentence: string) => void;
}

/** Threads that this machine carries. */
export function defaultWorkers(): number {
  return Math.max(1, availableParallelism());
}

export class WorkerPool implements Evaluator {
  readonly workers: number;
  readonly #settings: ThreadSettings;
  readonly #onFault: (sentence: string) => void;
  readonly #limit: ReturnType<typeof pLimit>;
  readonly #idle: Thread[] = [];
  readonly #all = new Set<Thread>();
  #closed = false;

  constructor(options: WorkerPoolOptions = {}) {
    this.workers = options.workers ?? defaultWorkers();
    if (!Number.isInteger(this.workers) || this.workers < 1)
      throw new RangeError(`a pool needs at least one worker, not ${this.workers}`);
    this.#settings = {
      workerFile: options.workerFile ?? new URL('./worker.js', import.meta.url),
      timeLimit: options.timeLimit ?? DEFAULT_TIME_LIMIT,
      memoryLimit: options.memoryLimit ?? DEFAULT_MEMORY_LIMIT,
    };
    this.#onFault = options.onFault ?? (() => {});
    this.#limit = pLimit(this.workers);
  }

  /**
   * @throws {Interrupted} when the signal fires
   * @throws whatever onResult throws
   */
  async evaluate(requests: readonly EvaluationRequest[], options: EvaluateOptions = {}): Promise<EvaluationResult[]> {
    const { signal, onResult, figuresOnly } = options;
    let stopped = false;
    const one = async (request: EvaluationRequest, index: number): Promise<EvaluationResult> => {
      try {
        const result = await this.#limit(() => {
          if (stopped) throw new Interrupted();
          return this.#evaluateOne(request, signal);
        });
        await onResult?.(index, result);
        // Two thousand robustness draws would else keep two thousand sets of curves until the last of them ends.
        return figuresOnly ? slimResult(result) : result;
      } catch (error) {
        stopped = true;
        throw error;
      }
    };
    // Every request has come to its end before the batch fails, so that nothing writes behind the caller's back.
    const outcomes = await Promise.allSettled(requests.map(one));
    const failures = outcomes.flatMap((outcome) => (outcome.status === 'rejected' ? [outcome.reason] : []));
    if (failures.length > 0) throw failures.find((reason) => !(reason instanceof Interrupted)) ?? failures[0];
    return outcomes.map((outcome) => (outcome as PromiseFulfilledResult<EvaluationResult>).value);
  }

  async #evaluateOne(request: EvaluationRequest, signal: AbortSignal | undefined): Promise<EvaluationResult> {
    let reason = '';
    for (let attempt = 1; attempt <= 2; attempt++) {
      if (this.#closed || signal?.aborted) throw new Interrupted();
      const thread = this.#take();
      const answer = await thread.ask(request);
      if (this.#closed || signal?.aborted) {
        // An answer that came in time is still worth keeping.
        this.#giveBack(thread);
        if (answer.kind === 'answer') return answer.result;
        throw new Interrupted();
      }
      this.#giveBack(thread);
      if (answer.kind === 'answer') return answer.result;
      if (answer.kind === 'timed out') {
        this.#onFault(
          `"${request.engine.name}" took longer than ${this.#settings.timeLimit} s; its worker was replaced`,
        );
        return failedResult(`no verdict within the time limit of ${this.#settings.timeLimit} s`, 'timed out');
      }
      reason = answer.reason;
      this.#onFault(`the worker on "${request.engine.name}" was lost: ${reason}`);
    }
    return failedResult(`the evaluation lost its worker twice: ${reason}`, 'crashed');
  }

  #take(): Thread {
    for (let thread = this.#idle.pop(); thread; thread = this.#idle.pop()) {
      if (thread.alive) return thread;
      this.#all.delete(thread);
    }
    const thread = new Thread(this.#settings);
    this.#all.add(thread);
    return thread;
  }

  #giveBack(thread: Thread): void {
    if (thread.alive) this.#idle.push(thread);
    else this.#all.delete(thread);
  }

  /** Ends every thread at once; evaluations that were running are lost. */
  async close(): Promise<void> {
    this.#closed = true;
    await Promise.all([...this.#all].map((thread) => thread.end()));
    this.#all.clear();
  }
}
