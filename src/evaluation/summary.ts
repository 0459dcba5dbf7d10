/** What the search and the log keep of an evaluation. */
import type { Check } from '../../shared/checks/check.ts';
import type { EvaluationResult, EvaluationSummary } from './evaluation.ts';

/** Cycles lived after starting air and spark are gone that halve the violation "does not sustain itself". */
const CYCLES_OF_GRACE = 10;
/** A broken check without a margin counts as broken by its whole limit; no check counts for more than this many limits. */
const UNGRADED = 1;
const GREATEST = 100;

function violationOf(check: Check): number {
  if (check.margin === null || !Number.isFinite(check.margin)) return UNGRADED;
  return Math.min(GREATEST, Math.max(1e-9, -check.margin));
}

/** How far a dying engine is from running, so that the search can climb towards engines that do. */
function violationsOfDying(performance: EvaluationResult['performance']): EvaluationSummary['violations'] {
  const { verdict, failedValve } = performance;
  if (verdict.kind !== 'dies' && verdict.kind !== 'runs only with starting air') return [];
  const violations = [
    { id: 'self-sustaining', violation: CYCLES_OF_GRACE / (CYCLES_OF_GRACE + Math.max(0, verdict.diedAtCycle)) },
  ];
  if (failedValve && failedValve.followRatio < 1)
    violations.push({ id: 'valve-follows', violation: 1 - failedValve.followRatio });
  return violations;
}

function reasonOf(result: EvaluationResult): string {
  const { verdict } = result.performance;
  if (verdict.kind === 'dies' || verdict.kind === 'runs only with starting air') return verdict.cause;
  return verdict.kind === 'model failure' ? verdict.message : '';
}

function statusOf(result: EvaluationResult): EvaluationSummary['status'] {
  const { verdict, running } = result.performance;
  if (result.fault === 'timed out') return 'timed out';
  if (verdict.kind === 'model failure') return 'model failure';
  return running === null ? 'dies' : 'ok';
}

/** Summarises a result. A running engine without a life or with a figure that is not finite is a model failure. */
export function summarise(result: EvaluationResult): EvaluationSummary {
  const { performance, assessment } = result;
  const { running, failedValve } = performance;
  const valve = running?.valve ?? failedValve;
  const failing = assessment.checks.filter((check) => check.binding && check.verdict === 'fail');
  const flagged = assessment.checks.filter(
    (check) => check.verdict === 'caution' || (check.verdict === 'fail' && !check.binding),
  );
  const summary: EvaluationSummary = {
    status: statusOf(result),
    reason: reasonOf(result),
    tsfc: running?.tsfc ?? null,
    valveLife: assessment.valveLife?.median ?? null,
    thrust: running?.thrust ?? null,
    frequency: running?.frequency ?? null,
    fuelFlow: running?.fuelFlow ?? null,
    mass: result.fault || performance.verdict.kind === 'model failure' ? null : assessment.mass,
    followRatio: valve?.followRatio ?? null,
    forceOffered: valve?.forceOffered ?? null,
    forceNeeded: valve?.forceNeeded ?? null,
    violations: running
      ? failing.map((check) => ({ id: check.id, violation: violationOf(check) }))
      : violationsOfDying(performance),
    flags: flagged.map((check) => check.id),
  };
  if (summary.status === 'ok' && !(summary.tsfc !== null && summary.tsfc > 0 && summary.valveLife !== null)) {
    return {
      ...summary,
      status: 'model failure',
      reason: 'it runs, but its fuel use or its life could not be computed',
      violations: [],
    };
  }
  return summary;
}
