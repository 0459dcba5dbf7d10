/** The result of an evaluation that gave no figures: a status with its reason. */
import type { EvaluationResult } from './evaluation.ts';

/**
 * @param message what happened, for people
 * @param fault   when the machinery gave up rather than the model
 */
export function failedResult(message: string, fault?: EvaluationResult['fault']): EvaluationResult {
  return {
    performance: {
      verdict: { kind: 'model failure', message },
      starts: [],
      running: null,
      failedValve: null,
      edge: null,
      cellUpdates: 0,
    },
    assessment: {
      checks: [],
      valveLife: null,
      valveLifeCycles: null,
      lifeLimiter: '',
      overallLength: 0,
      overallDiameter: 0,
      mass: 0,
      cost: null,
      parts: [],
      noise: null,
      needs: [],
    },
    ...(fault ? { fault } : {}),
  };
}
