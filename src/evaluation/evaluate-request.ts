/** One evaluation: the performance model, then every check. Pure, and never throws: what goes wrong is a result. */
import { assess, drawConstants, simulate } from '../../shared/index.ts';
import type { EvaluationRequest, EvaluationResult } from './evaluation.ts';
import { failedResult } from './failed-result.ts';
import { pathOfNotFinite } from './not-finite.ts';
import { outOfScale } from './out-of-scale.ts';

export function evaluateRequest(request: EvaluationRequest): EvaluationResult {
  const { engine, brief, fidelity, constantsDraw } = request;
  // A length without end would be stepped through for ever.
  const meaningless = pathOfNotFinite(engine);
  if (meaningless !== null) return failedResult(`${meaningless} of the engine is not a finite number`);
  const beyond = outOfScale(engine);
  if (beyond !== null) return failedResult(beyond);
  try {
    const constants = constantsDraw ? drawConstants(constantsDraw) : undefined;
    const performance = simulate(engine, { fidelity, constants, probeEdge: request.probeEdge });
    const assessment = assess({ engine, performance, brief });
    const result: EvaluationResult = { performance, assessment };
    const path = pathOfNotFinite(result);
    return path === null ? result : failedResult(`${path} is not a finite number`);
  } catch (error) {
    return failedResult(error instanceof Error ? error.message : String(error));
  }
}
