/** What the pipeline hands to the ranking: everything that was found out, as plain data. */

import type { Study } from '../config/study.ts';
import type { EvaluationResult, EvaluationSummary } from '../evaluation/evaluation.ts';
import type { Architecture } from '../space/architecture.ts';
import type { DesignSpace } from '../space/architectures.ts';
import type { Robustness, Sensitivity, StudyResults, TradePoint } from './results.ts';

/** A design evaluated in full. */
export interface JudgedInFull {
  space: DesignSpace;
  x: number[];
  result: EvaluationResult;
  summary: EvaluationSummary;
}

/** A finalist, from robustnessFrom and sensitivitiesFrom. */
export interface FinalistEvidence extends JudgedInFull {
  robustness: Robustness;
  sensitivities: Sensitivity[];
}

/** What the search found out about one architecture. */
export interface ArchitectureEvidence {
  architecture: Architecture;
  /** Designs simulated, designs that ran by themselves, designs that also meet every binding check and wish. */
  evaluations: number;
  running: number;
  feasible: number;
  /** Most frequent first. */
  failures: { reason: string; count: number }[];
  /** When nothing was feasible: the design that came nearest. */
  nearest: JudgedInFull | null;
  /** When geometry refused every design: its objection to the nearest one, as a sentence. */
  objection?: string;
}

export interface StudyEvidence {
  study: Study;
  modelVersion: string;
  toolVersion: string;
  architectures: ArchitectureEvidence[];
  finalists: FinalistEvidence[];
  /** Designs that ran, finalists or not; thinned when there are very many. */
  tradePoints: TradePoint[];
  evaluations: StudyResults['evaluations'];
  screening?: StudyResults['screening'];
  stoppedBecause: string;
  convergence: StudyResults['convergence'];
  constants: StudyResults['constants'];
  validation: StudyResults['validation'];
}

/** Names a finalist apart from its rank, to seed its draws: architecture and coordinates. */
export function finalistKey(architecture: string, x: readonly number[]): string {
  return `${architecture} ${JSON.stringify(x)}`;
}
