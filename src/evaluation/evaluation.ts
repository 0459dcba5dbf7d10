/** What one evaluation asks and answers. Pure data, so that threads or other machines can carry it. */
import type { Assessment } from '../../shared/checks/check.ts';
import type { Brief } from '../../shared/engine/brief.ts';
import type { Engine } from '../../shared/engine/engine.ts';
import type { Performance } from '../../shared/engine/performance.ts';

/** screen: the coarse grid alone; full: shipped resolution; detailed: full with the x–t field for the report. */
export type Fidelity = 'screen' | 'full' | 'detailed';

export interface EvaluationRequest {
  engine: Engine;
  brief: Brief;
  fidelity: Fidelity;
  /** Standard-normal draws over the model constants (order of MODEL_CONSTANT_NAMES); null: the calibrated values. */
  constantsDraw: number[] | null;
  /** Repeat the verdict under small changes, to see whether it stands on an edge. */
  probeEdge?: boolean;
}

export interface EvaluationResult {
  performance: Performance;
  assessment: Assessment;
  /** Present when the machinery, not the model, gave up; the verdict is then a model failure that says so. */
  fault?: 'timed out' | 'crashed';
}

/** The few numbers of an evaluation that the search and the log keep. SI units. */
export interface EvaluationSummary {
  /** ok: it runs and every number is finite; the rest are failures with a reason. */
  status: 'ok' | 'dies' | 'refused' | 'model failure' | 'timed out';
  reason: string;
  tsfc: number | null;
  /** Median valve life, s. */
  valveLife: number | null;
  thrust: number | null;
  frequency: number | null;
  fuelFlow: number | null;
  mass: number | null;
  followRatio: number | null;
  forceOffered: number | null;
  forceNeeded: number | null;
  /** Failed binding checks and unmet wishes: identifier and normalised violation (> 0). */
  violations: { id: string; violation: number }[];
  /** Identifiers of cautions and non-binding fails. */
  flags: string[];
}

export interface EvaluateOptions {
  /** Called once for each request as its result arrives, in any order; the batch waits for what it returns. */
  onResult?: (index: number, result: EvaluationResult) => void | Promise<void>;
  /** Stops the batch: what has not begun is not begun, and the batch is rejected with an Interrupted. */
  signal?: AbortSignal;
  /** The caller keeps only summaries: curves, sentences, parts and needs may be left out of the results. */
  figuresOnly?: boolean;
}

/** Somebody asked the run to stop. */
export class Interrupted extends Error {
  constructor() {
    super('interrupted');
    this.name = 'Interrupted';
  }
}

/** Something that evaluates batches; threads and queues both sit behind it. Results come in the order of the requests. */
export interface Evaluator {
  evaluate(requests: readonly EvaluationRequest[], options?: EvaluateOptions): Promise<EvaluationResult[]>;
  close(): Promise<void>;
}
