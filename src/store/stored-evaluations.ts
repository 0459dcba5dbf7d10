/**
 * An evaluator that remembers: every answer lies in the study's log before anyone hears it, and a question that was ever
 * answered is not asked again.
 */
import type { EvaluationRequest, EvaluationResult, EvaluationSummary, Evaluator } from '../evaluation/evaluation.ts';
import { requestKey } from '../evaluation/request-key.ts';
import { summarise } from '../evaluation/summary.ts';
import type { LogRecord } from './record-line.ts';
import type { RecordLog } from './record-log.ts';
import type { StudyClock } from './study-clock.ts';

/** A request with what the log notes beside the answer. */
export interface Job {
  request: EvaluationRequest;
  /** Names the design within the study, e.g. "reed_plain_premixed-propane/120". */
  id: string;
  /** What the answer is for, e.g. "search" or "robustness". */
  stage: string;
  architecture: string;
  x: readonly number[];
}

export interface StoredEvaluationsOptions {
  evaluator: Evaluator;
  /** Short answers. */
  evaluations: RecordLog;
  /** Full answers. */
  finalists: RecordLog;
  modelVersion: string;
  clock: StudyClock;
  signal?: AbortSignal;
  /** Hears of every answer: fresh is false when it came from the log. */
  onAnswer?: (job: Job, summary: EvaluationSummary, fresh: boolean) => void;
}

export class StoredEvaluations {
  readonly #options: StoredEvaluationsOptions;

  constructor(options: StoredEvaluationsOptions) {
    this.#options = options;
  }

  /**
   * Short answers in the order of the jobs.
   * @param onOwn hears where the record begins that was written for this very job; two designs may build the same engine
   * @throws {Interrupted} when the run was asked to stop
   * @throws {StoreError} when an answer cannot be stored
   */
  async summaries(jobs: readonly Job[], onOwn?: (job: Job, position: number) => void): Promise<EvaluationSummary[]> {
    const { evaluations, onAnswer } = this.#options;
    return this.#answers(
      jobs,
      evaluations,
      (job, result, key) => ({ key, ...noted(job), ...summarise(result) }),
      (record, job, fresh) => {
        const summary = summaryOf(record);
        onAnswer?.(job, summary, fresh);
        if (onOwn && isOwn(record, job)) onOwn(job, evaluations.positionOf((record as LogRecord).key) as number);
        return summary;
      },
      { figuresOnly: true },
    );
  }

  /** Full answers in the order of the jobs; throws as `summaries` does. */
  async results(jobs: readonly Job[]): Promise<EvaluationResult[]> {
    const { finalists, onAnswer } = this.#options;
    return this.#answers(
      jobs,
      finalists,
      (job, result, key) => ({ key, ...noted(job), result }),
      (record, job, fresh) => {
        const { result } = record as unknown as { result: EvaluationResult };
        onAnswer?.(job, summarise(result), fresh);
        return result;
      },
    );
  }

  async #answers<T>(
    jobs: readonly Job[],
    log: RecordLog,
    encode: (job: Job, result: EvaluationResult, key: string) => { key: string; [name: string]: unknown },
    decode: (record: object, job: Job, fresh: boolean) => T,
    asking: { figuresOnly?: boolean } = {},
  ): Promise<T[]> {
    const { evaluator, modelVersion, clock, signal } = this.#options;
    const keys = jobs.map((job) => requestKey(job.request, modelVersion));
    const answers = new Map<string, T>();
    const asked: number[] = [];
    const unique = new Set<string>();
    keys.forEach((key, index) => {
      if (unique.has(key)) return;
      unique.add(key);
      const record = log.get(key);
      if (record) {
        clock.recall(Number(record.elapsed));
        answers.set(key, decode(record, jobs[index], false));
      } else asked.push(index);
    });
    await evaluator.evaluate(
      asked.map((index) => jobs[index].request),
      {
        ...asking,
        signal,
        onResult: async (place, result) => {
          const index = asked[place];
          // Through text and back, so that a fresh answer has the same bits as one read from the log.
          const elapsed = clock.stamp();
          const record = JSON.parse(JSON.stringify({ ...encode(jobs[index], result, keys[index]), elapsed }));
          await log.append([record]);
          answers.set(keys[index], decode(record, jobs[index], true));
        },
      },
    );
    return keys.map((key) => answers.get(key) as T);
  }
}

function noted({ id, stage, architecture, x, request }: Job) {
  return { id, stage, architecture, fidelity: request.fidelity, x };
}

function isOwn(record: object, { id, x }: Job): boolean {
  const written = record as ReturnType<typeof noted>;
  return written.id === id && written.x.length === x.length && written.x.every((value, i) => value === x[i]);
}

/** The part of a log's record that is the summary. */
export function summaryOf(record: object): EvaluationSummary {
  const {
    status,
    reason,
    tsfc,
    valveLife,
    thrust,
    frequency,
    fuelFlow,
    mass,
    followRatio,
    forceOffered,
    forceNeeded,
    violations,
    flags,
  } = record as EvaluationSummary;
  return {
    status,
    reason,
    tsfc,
    valveLife,
    thrust,
    frequency,
    fuelFlow,
    mass,
    followRatio,
    forceOffered,
    forceNeeded,
    violations,
    flags,
  };
}
