/** One worker thread, seen from the main thread: a question, an answer, or its loss. */
import { Worker } from 'node:worker_threads';
import type { EvaluationRequest, EvaluationResult } from './evaluation.ts';

export type ThreadAnswer =
  | { kind: 'answer'; result: EvaluationResult }
  | { kind: 'timed out' }
  | { kind: 'lost'; reason: string };

export interface ThreadSettings {
  workerFile: string | URL;
  /** s for one evaluation. */
  timeLimit: number;
  /** MB of heap for one thread. */
  memoryLimit: number;
}

export class Thread {
  readonly #worker: Worker;
  readonly #settings: ThreadSettings;
  #settle: ((answer: ThreadAnswer) => void) | null = null;
  #lossReason = '';
  /** False once the thread has ended or was ended. */
  alive = true;
  readonly #online: Promise<unknown>;

  constructor(settings: ThreadSettings) {
    this.#settings = settings;
    this.#worker = new Worker(settings.workerFile, {
      execArgv: [],
      resourceLimits: { maxOldGenerationSizeMb: settings.memoryLimit },
    });
    this.#online = new Promise((resolve) => this.#worker.once('online', resolve));
    this.#worker.on('message', (result: EvaluationResult) => this.#answer({ kind: 'answer', result }));
    this.#worker.on('messageerror', (error) => this.#lose(`its answer could not be read (${error.message})`));
    this.#worker.on('error', (error: NodeJS.ErrnoException) =>
      this.#lose(
        error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? `it ran out of memory (${settings.memoryLimit} MB)` : error.message,
      ),
    );
    this.#worker.on('exit', (code) => this.#lose(`it ended with code ${code}`));
  }

  /** Asks one question; the caller waits for the answer before it asks again. */
  ask(request: EvaluationRequest): Promise<ThreadAnswer> {
    return new Promise((resolve) => {
      if (!this.alive) {
        resolve({ kind: 'lost', reason: this.#lossReason });
        return;
      }
      let timer: NodeJS.Timeout | undefined;
      // Starting the thread does not count, so that a busy machine is not mistaken for a design that hangs.
      void this.#online.then(() => {
        if (this.#settle === settle) timer = setTimeout(() => this.#giveUp(), this.#settings.timeLimit * 1000);
      });
      const settle = (answer: ThreadAnswer) => {
        clearTimeout(timer);
        this.#settle = null;
        resolve(answer);
      };
      this.#settle = settle;
      this.#worker.postMessage(request);
    });
  }

  #giveUp(): void {
    this.#answer({ kind: 'timed out' });
    void this.end();
  }

  #answer(answer: ThreadAnswer): void {
    this.#settle?.(answer);
  }

  #lose(reason: string): void {
    if (this.alive) this.#lossReason = reason;
    this.alive = false;
    this.#answer({ kind: 'lost', reason });
  }

  async end(): Promise<void> {
    this.alive = false;
    await this.#worker.terminate();
  }
}
