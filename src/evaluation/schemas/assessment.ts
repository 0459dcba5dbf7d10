/** Schema of what is judged about a design, and of the short answer that the log keeps. */
import { z } from 'zod';
import type { Assessment } from '../../../shared/checks/check.ts';
import type { EvaluationSummary } from '../evaluation.ts';

const number = z.number();

export const bandSchema = z.object({ low: number, median: number, high: number }).describe('5, 50 and 95 %');

const check = z.object({
  id: z.string(),
  title: z.string(),
  verdict: z.enum(['pass', 'caution', 'fail', 'not applicable', 'not computed']),
  value: number.nullable(),
  limit: number.nullable(),
  unit: z.string().describe('SI unit of value and limit; empty for a ratio'),
  margin: number.nullable().describe('clearance from the limit over the limit; positive is good'),
  sentence: z.string(),
  source: z.string(),
  binding: z.boolean().describe('a fail makes the design infeasible'),
});

export const assessmentSchema = z.object({
  checks: z.array(check),
  valveLife: bandSchema.nullable().describe('of the valve, or of the shell for valveless, s'),
  valveLifeCycles: bandSchema.nullable(),
  lifeLimiter: z.string(),
  overallLength: number.describe('m'),
  overallDiameter: number.describe('m'),
  mass: number.describe('kg'),
  cost: number.nullable().describe('in the user’s currency'),
  parts: z.array(
    z.object({
      part: z.string(),
      mass: number.describe('kg'),
      area: number.describe('m²'),
      material: z.string(),
      cost: number.nullable(),
    }),
  ),
  noise: z
    .object({
      level: number.describe('dB(A)'),
      uncertainty: number.describe('± dB'),
      distance: number.describe('m'),
      exposureMinutes: number,
    })
    .nullable(),
  needs: z.array(z.object({ id: z.string(), label: z.string(), value: number, unit: z.string(), note: z.string() })),
}) satisfies z.ZodType<Assessment>;

export const summarySchema = z.object({
  status: z.enum(['ok', 'dies', 'refused', 'model failure', 'timed out']),
  reason: z.string(),
  tsfc: number.nullable().describe('kg/(N s)'),
  valveLife: number.nullable().describe('median, s'),
  thrust: number.nullable().describe('N'),
  frequency: number.nullable().describe('Hz'),
  fuelFlow: number.nullable().describe('kg/s'),
  mass: number.nullable().describe('kg'),
  followRatio: number.nullable(),
  forceOffered: number.nullable().describe('N'),
  forceNeeded: number.nullable().describe('N'),
  violations: z.array(z.object({ id: z.string(), violation: number })),
  flags: z.array(z.string()),
}) satisfies z.ZodType<EvaluationSummary>;
