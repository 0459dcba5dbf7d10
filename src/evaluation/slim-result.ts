/** A result for a caller that keeps only its figures: a thirtieth of the bytes, the same summary. */
import type { EvaluationResult } from './evaluation.ts';

/** Leaves out curves, sentences, parts and needs. `summarise` makes the same of it as of the whole result. */
export function slimResult(result: EvaluationResult): EvaluationResult {
  const { performance, assessment } = result;
  const { running } = performance;
  return {
    ...result,
    performance: {
      ...performance,
      running: running && {
        ...running,
        traces: {
          time: [],
          headPressure: [],
          exitPressure: [],
          valveLift: [],
          intakeFlow: [],
          exitFlow: [],
          heatRelease: [],
          thrust: [],
        },
        profile: {
          position: [],
          diameter: [],
          gasTemperature: [],
          effectiveGasTemperature: [],
          filmCoefficient: [],
          wallTemperature: [],
          peakPressure: [],
          lowestPressure: [],
        },
        field: null,
      },
    },
    assessment: {
      ...assessment,
      checks: assessment.checks
        .filter(({ verdict }) => verdict === 'fail' || verdict === 'caution')
        .map((check) => ({ ...check, title: '', sentence: '', source: '' })),
      parts: [],
      needs: [],
    },
  };
}
