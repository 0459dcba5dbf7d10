/** Schema of results.json. */
import { z } from 'zod';
import { assessmentSchema, bandSchema, summarySchema } from '../../evaluation/schemas/assessment.ts';
import { engineSchema } from '../../evaluation/schemas/engine.ts';
import { performanceSchema } from '../../evaluation/schemas/performance.ts';
import type { StudyResults } from '../../ranking/results.ts';

const number = z.number();

const architecture = z.object({
  id: z.string(),
  label: z.string(),
  intake: z.enum(['reed', 'poppet', 'valveless-straight', 'valveless-u']),
  augmenter: z.boolean(),
  feed: z.object({
    fuel: z.enum(['propane', 'petrol']),
    mode: z.enum(['premixed', 'steady-injection', 'timed-injection']),
  }),
});

const robustness = z.object({
  draws: number,
  sustainChance: number,
  feasibleChance: number,
  tsfc: bandSchema.nullable(),
  thrust: bandSchema.nullable(),
  frequency: bandSchema.nullable(),
  valveLife: bandSchema.nullable(),
  fuelFlow: bandSchema.nullable(),
});

const sensitivity = z.object({
  variable: z.string(),
  label: z.string(),
  step: z.string(),
  tsfc: number.nullable(),
  thrust: number.nullable(),
  valveLife: number.nullable(),
  stops: z.boolean(),
});

const sheetChoice = z.object({
  name: z.string(),
  thickness: number.describe('m'),
  gauge: number,
  present: z.boolean(),
  yieldUse: number,
  oxidationLife: number.nullable().describe('s of running; null: without limit'),
  creepLife: number.nullable().describe('s of running; null: without limit'),
  overScalingLimit: number.describe('K; negative is clear'),
  massRatio: number,
});

const candidate = z.object({
  id: z.string(),
  rank: number,
  architecture,
  variables: z.array(z.object({ name: z.string(), label: z.string(), value: z.string() })),
  x: z.array(number),
  engine: engineSchema,
  performance: performanceSchema,
  assessment: assessmentSchema,
  robustness,
  sensitivities: z.array(sensitivity),
  feasible: z.boolean(),
  nonDominated: z.boolean(),
  score: number,
  why: z.string(),
  alternatives: z.array(sheetChoice).optional().describe('what thicker or better sheet gains, the present sheet first'),
});

const tradePoint = z.object({
  architecture: z.string(),
  tsfc: number.describe('kg/(N s)'),
  valveLife: number.describe('s'),
  thrust: number.describe('N'),
  feasible: z.boolean(),
  reason: z.string(),
});

const architectureResult = z.object({
  architecture,
  evaluations: number,
  running: number,
  feasible: number,
  bestCandidate: z.string().nullable(),
  leastViolating: z.object({ engine: engineSchema, summary: summarySchema, bindingConstraint: z.string() }).nullable(),
  reason: z.string(),
  freedBy: z.string(),
  forces: z
    .object({ offered: number, needed: number, timeOffered: number, timeNeeded: number })
    .nullable()
    .describe('N, N, s, s'),
  failures: z.array(z.object({ reason: z.string(), count: number })),
});

const validationRow = z.object({
  engine: z.string(),
  quantity: z.string(),
  unit: z.string(),
  measuredLow: number,
  measuredHigh: number,
  computed: number.nullable().describe('null: the engine does not run in the model'),
  acceptLow: number,
  acceptHigh: number,
  within: z.boolean(),
  role: z.enum(['fitted', 'checked']),
  source: z.string(),
});

export const resultsSchema = z.object({
  formatVersion: z.literal(1),
  study: z
    .custom<StudyResults['study']>((value) => typeof value === 'object' && value !== null)
    .describe('the canonical configuration, SI units'),
  configurationDigest: z.string(),
  modelVersion: z.string(),
  toolVersion: z.string(),
  answer: z.array(z.string()),
  contradictions: z.array(z.string()),
  candidates: z.array(candidate),
  tradePoints: z.array(tradePoint),
  front: z.array(z.string()),
  architectures: z.array(architectureResult),
  evaluations: z.object({ total: number, screen: number, full: number, refused: number, robustness: number }),
  screening: z
    .object({
      screened: number,
      full: number,
      spent: number,
      withoutScreening: number,
      audited: number,
      overturned: number,
    })
    .optional()
    .describe('what the coarse grid did in the search; costs in full evaluations'),
  stoppedBecause: z.string(),
  convergence: z.array(z.object({ evaluations: number, hypervolume: number })),
  constants: z.array(
    z.object({ name: z.string(), value: number, standardError: number, meaning: z.string(), source: z.string() }),
  ),
  validation: z.array(validationRow),
}) satisfies z.ZodType<StudyResults>;
