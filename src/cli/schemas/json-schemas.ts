/** JSON Schema of what the tool writes. */
import { z } from 'zod';
import { assessmentSchema, summarySchema } from '../../evaluation/schemas/assessment.ts';
import { engineSchema } from '../../evaluation/schemas/engine.ts';
import { performanceSchema } from '../../evaluation/schemas/performance.ts';
import { resultsSchema } from './results.ts';

/** What `evaluate --json` prints. */
export const evaluationSchema = z.object({
  formatVersion: z.literal(1),
  toolVersion: z.string(),
  modelVersion: z.string(),
  engine: engineSchema,
  brief: z
    .custom<object>((value) => typeof value === 'object' && value !== null)
    .describe('the builder’s circumstances, SI units; null: not stated'),
  summary: summarySchema,
  performance: performanceSchema,
  assessment: assessmentSchema,
});

function jsonSchema(schema: z.ZodType, title: string): object {
  return { ...z.toJSONSchema(schema, { unrepresentable: 'any' }), title };
}

export function evaluationJsonSchema(): object {
  return jsonSchema(evaluationSchema, 'One evaluated engine');
}

export function resultsJsonSchema(): object {
  return jsonSchema(resultsSchema, 'Results of a pulsejet study');
}
