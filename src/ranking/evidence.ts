/** What the pipeline hands to the ranking: everything that was evaluated, as plain data. */
import type { Engine } from '../../shared/engine/engine.ts';
import type { Study } from '../config/study.ts';
import type { EvaluationResult, EvaluationSummary } from '../evaluation/evaluation.ts';
import type { Architecture } from '../space/architecture.ts';
import type { DesignSpace } from '../space/architectures.ts';
import type { JudgedDesign } from './finalists.ts';
import type { StudyResults } from './results.ts';
import type { SensitivityPlan } from './sensitivity.ts';

/** What the search found out about one architecture. */
export interface ArchitectureEvidence {
  architecture: Architecture;
  /** Designs simulated, designs that ran by themselves, designs that also meet every binding check and wish. */
  evaluations: number;
  running: number;
  feasible: number;
  /** Most frequent first. */
  failures: { reason: string; count: number }[];
  /** When nothing was feasible: the design that came nearest, evaluated at full fidelity. */
  nearest: { engine: Engine; result: EvaluationResult; summary: EvaluationSummary } | null;
}

/** Everything about one finalist. */
export interface FinalistEvidence {
  /** finalistKey, with which robustnessPlan was asked. */
  key: string;
  architecture: Architecture;
  x: number[];
  engine: Engine;
  /** At the fidelity of the report. */
  result: EvaluationResult;
  summary: EvaluationSummary;
  /** Answers to robustnessPlan, in its order. */
  draws: EvaluationSummary[];
  /** sensitivityPlan and the answers to its requests, in their order. */
  sensitivity: { plan: SensitivityPlan; answers: EvaluationSummary[] };
}

export interface StudyEvidence {
  study: Study;
  spaces: readonly DesignSpace[];
  modelVersion: string;
  toolVersion: string;
  architectures: ArchitectureEvidence[];
  finalists: FinalistEvidence[];
  /** Designs that ran, in the order of asking; thinned when there are very many. */
  designs: readonly JudgedDesign[];
  evaluations: StudyResults['evaluations'];
  stoppedBecause: string;
  convergence: StudyResults['convergence'];
  constants: StudyResults['constants'];
  validation: StudyResults['validation'];
}

/** Names a finalist apart from its rank: architecture and coordinates. */
export function finalistKey(architecture: string, x: readonly number[]): string {
  return `${architecture} ${JSON.stringify(x)}`;
}
