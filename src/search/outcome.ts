/** What an evaluation tells the search. A failure is a status with a reason, never a huge number. */
import type { Variable } from '../space/architecture.ts';

export interface Outcome {
  status: 'ok' | 'failed';
  /** All to be minimised; null when the evaluation failed. */
  objectives: number[] | null;
  /**
   * One entry a constraint: at or below 0 is satisfied, above 0 is broken by that much, normalised to the limit. For a
   * failure: how far it is from working (e.g. 1 − follow ratio), so that the search can climb out; empty when unknown.
   */
  violations: number[];
  /** Why it failed, or ''. */
  reason: string;
}

/** A search space of one architecture. */
export interface SearchProblem {
  id: string;
  variables: readonly Variable[];
  /** How many objectives, all minimised. */
  objectiveCount: number;
  /** Geometry's word before any simulation: null when it can be built. Costs nothing. Pure. */
  check?(x: readonly number[]): { violations: number[]; reason: string } | null;
}

/** Lower is better; each stands before all that follow it. */
export const FEASIBLE = 0;
export const INFEASIBLE = 1;
export const FAILED = 2;
export const FAILED_UNGRADED = 3;
export const REFUSED = 4;

/** A design that has been judged. */
export interface Member {
  /** Identifier of the evaluation that decided it; −1, −2, … for refused geometry, which had none. */
  id: number;
  /** SearchProblem.id. */
  problem: string;
  x: number[];
  /** Objectives; empty when it failed. */
  f: number[];
  violations: number[];
  /** FEASIBLE … REFUSED. */
  tier: number;
  /** Sum of the broken constraints, each over its scale; orders members within a tier other than FEASIBLE. */
  violation: number;
  reason: string;
  /** The same design judged by its screening run; null when there was none. */
  screened: Member | null;
  /** Index of its non-dominated front; set by survival. */
  rank: number;
  /** How much its place on the front is worth; set by survival, larger is better. */
  worth: number;
}

/** Sum of what is broken, unscaled. */
export function brokenBy(violations: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < violations.length; i++) if (violations[i] > 0) sum += violations[i];
  return sum;
}

/**
 * Judges an outcome. Objectives or violations that are not finite make it a failure, whatever its status says.
 * Throws RangeError when an ok outcome has the wrong number of objectives: that is a fault of the caller.
 */
export function judge(id: number, problem: SearchProblem, x: number[], outcome: Outcome): Member {
  const { objectives } = outcome;
  const { objectiveCount } = problem;
  const ok = outcome.status === 'ok';
  if (ok && objectives?.length !== objectiveCount) {
    throw new RangeError(
      `Evaluation ${id} returned ${objectives?.length ?? 'no'} objectives; the problem has ${objectiveCount}.`,
    );
  }
  const finite = allFinite(outcome.violations) && (!ok || allFinite(objectives!));
  const graded = allFinite(outcome.violations) ? outcome.violations : [];
  const violation = brokenBy(graded);
  const sound = ok && finite;
  let tier = FAILED_UNGRADED;
  if (sound) tier = violation > 0 ? INFEASIBLE : FEASIBLE;
  else if (violation > 0) tier = FAILED;
  const reason = ok && !finite ? 'a result is not a finite number' : outcome.reason;
  const f = sound ? objectives! : [];
  return { ...blank(id, problem.id, x), f, violations: graded, tier, violation, reason };
}

/** A design that geometry forbids. */
export function refuse(
  id: number,
  problem: SearchProblem,
  x: number[],
  refusal: { violations: number[]; reason: string },
): Member {
  const { violations, reason } = refusal;
  return { ...blank(id, problem.id, x), violations, tier: REFUSED, violation: brokenBy(violations), reason };
}

function blank(id: number, problem: string, x: number[]): Member {
  return {
    id,
    problem,
    x,
    f: [],
    violations: [],
    tier: FEASIBLE,
    violation: 0,
    reason: '',
    screened: null,
    rank: 0,
    worth: 0,
  };
}

function allFinite(values: readonly number[]): boolean {
  for (let i = 0; i < values.length; i++) if (!Number.isFinite(values[i])) return false;
  return true;
}
