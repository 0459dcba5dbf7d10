/**
 * The results of a study: everything that the report shows, and nothing that it must compute.
 * Written to results.json. Holds no clock and no machine, so that the same seed gives the same bytes.
 */
import type { Assessment, Band } from '../../shared/checks/check.ts';
import type { Engine } from '../../shared/engine/engine.ts';
import type { Performance } from '../../shared/engine/performance.ts';
import type { Study } from '../config/study.ts';
import type { EvaluationSummary } from '../evaluation/evaluation.ts';
import type { ScreeningReport } from '../search/search-result.ts';
import type { Architecture } from '../space/architecture.ts';

/** How one design variable moves the results: relative change of each per +1 % (real) or +1 step (integer, choice). */
export interface Sensitivity {
  variable: string;
  label: string;
  /** Human text of the step, e.g. "+2 % (1.3 mm)". */
  step: string;
  tsfc: number | null;
  thrust: number | null;
  valveLife: number | null;
  /** True when the step stops the engine. */
  stops: boolean;
}

export interface Robustness {
  draws: number;
  /** Share of draws that sustain themselves. */
  sustainChance: number;
  /** Share of draws that sustain themselves and meet every binding check and wish. */
  feasibleChance: number;
  /** 5–50–95 % over the draws that run. */
  tsfc: Band | null;
  thrust: Band | null;
  frequency: Band | null;
  valveLife: Band | null;
  fuelFlow: Band | null;
}

export interface Candidate {
  /** C1, C2, … in rank order. */
  id: string;
  rank: number;
  architecture: Architecture;
  /** Coordinates with names and values for people. */
  variables: { name: string; label: string; value: string }[];
  x: number[];
  engine: Engine;
  performance: Performance;
  assessment: Assessment;
  robustness: Robustness;
  sensitivities: Sensitivity[];
  feasible: boolean;
  /** On the non-dominated line of TSFC against valve life (robust values). */
  nonDominated: boolean;
  /** Ranking score, lower is better, and the words that explain the rank. */
  score: number;
  why: string;
  /** What thicker or better sheet gains, the present sheet first; missing when it does not run or in results of older versions. */
  alternatives?: SheetChoice[];
}

/** The shell in one sheet, at the heat and pressure of the running engine. */
export interface SheetChoice {
  /** Standard designation. */
  name: string;
  /** m, and nearest gauge number. */
  thickness: number;
  gauge: number;
  present: boolean;
  /** Hoop stress at peak pressure over hot yield, worst place. */
  yieldUse: number;
  /** Running time until a quarter of the wall is scale, and until creep rupture, s; null is without limit. */
  oxidationLife: number | null;
  creepLife: number | null;
  /** Hottest wall over the scaling limit for runs with cooling between, K; negative is clear. */
  overScalingLimit: number;
  /** Shell mass over that of the present sheet. */
  massRatio: number;
}

/** A point of the trade picture that is no finalist. */
export interface TradePoint {
  architecture: string;
  tsfc: number;
  valveLife: number;
  thrust: number;
  feasible: boolean;
  /** First reason when infeasible. */
  reason: string;
}

export interface ArchitectureResult {
  architecture: Architecture;
  evaluations: number;
  running: number;
  feasible: number;
  /** Its best candidate in the ranking, or null. */
  bestCandidate: string | null;
  /** When nothing was feasible: the least-violating design. */
  leastViolating: { engine: Engine; summary: EvaluationSummary; bindingConstraint: string } | null;
  /** Why it failed, or what holds it back, in one or two sentences with numbers. */
  reason: string;
  /** The smallest change that would free it; '' when feasible. */
  freedBy: string;
  /**
   * Force that suction offers one valve and force that it needs, N; time within which it must be open and time that it takes
   * with the force offered, s.
   */
  forces: { offered: number; needed: number; timeOffered: number; timeNeeded: number } | null;
  /** Count of each failure reason. */
  failures: { reason: string; count: number }[];
}

export interface ValidationRow {
  engine: string;
  quantity: string;
  unit: string;
  /** Published value or range. */
  measuredLow: number;
  measuredHigh: number;
  /** null: the engine does not run in the model. */
  computed: number | null;
  /** Accepted error band as low and high of `computed`. */
  acceptLow: number;
  acceptHigh: number;
  within: boolean;
  role: 'fitted' | 'checked';
  source: string;
}

export interface Convergence {
  evaluations: number;
  hypervolume: number;
}

export interface StudyResults {
  formatVersion: 1;
  study: Study;
  /** SHA-256 of the canonical configuration, and of the model. */
  configurationDigest: string;
  modelVersion: string;
  toolVersion: string;
  /** The answer of page one in short paragraphs: what to build first; then alternatives, trust, why not the others, what was explored. */
  answer: string[];
  /** Wishes that contradict physics, in words; first thing on page one. */
  contradictions: string[];
  candidates: Candidate[];
  tradePoints: TradePoint[];
  /** Candidate ids along the non-dominated line, by rising TSFC. */
  front: string[];
  architectures: ArchitectureResult[];
  evaluations: { total: number; screen: number; full: number; refused: number; robustness: number };
  /** Missing in results of older versions. */
  screening?: ScreeningReport;
  stoppedBecause: string;
  convergence: Convergence[];
  constants: { name: string; value: number; standardError: number; meaning: string; source: string }[];
  validation: ValidationRow[];
}

/** Facts of the run that may differ between machines; written to run.json, never to results.json. */
export interface RunFacts {
  /** ISO 8601 start of the study; the PDF carries it as its date. */
  startedAt: string;
  wallTimeSeconds: number;
  workers: number;
  node: string;
  platform: string;
}
