/**
 * The two messages that travel: a question (a batch of designs) and its answer. Text in JSON, checked on arrival at both
 * ends: nothing but numbers, names and words, within limits.
 */
import { createHash } from 'node:crypto';
import { z } from 'zod';
import { MODEL_CONSTANT_NAMES } from '../../../shared/engine/constants.ts';
import type { EvaluationRequest, EvaluationResult } from '../evaluation.ts';
import { requestKey } from '../request-key.ts';
import { assessmentSchema } from '../schemas/assessment.ts';
import { briefSchema } from '../schemas/brief.ts';
import { engineSchema } from '../schemas/engine.ts';
import { performanceSchema } from '../schemas/performance.ts';

/** Characters of a question and of an answer. A usual design takes 1 k, its full result 60 k. */
export const LONGEST_QUESTION = 2_000_000;
export const LONGEST_ANSWER = 64_000_000;
/** Designs of one question. */
export const MOST_DESIGNS = 64;
/** Beyond these an engine is no engine: parts that the model loops over, and any measure in SI units. */
const MOST_SECTIONS = 64;
const MOST_VALVES = 1000;
const GREATEST = 1e12;
const LONGEST_WORDS = 500;

const version = z.string().regex(/^[0-9a-f]{64}$/);
const key = z.string().regex(/^[0-9a-f]{64}$/);

const boundedEngine = engineSchema.refine(
  ({ sections, intake }) =>
    sections.length >= 1 &&
    sections.length <= MOST_SECTIONS &&
    (intake.kind === 'valveless' || (intake.kind === 'reed' ? intake.petals : intake.valves) <= MOST_VALVES),
  `at most ${MOST_SECTIONS} sections and ${MOST_VALVES} valves are expected`,
);

const questionSchema = z.object({
  formatVersion: z.literal(1),
  modelVersion: version,
  figuresOnly: z.boolean(),
  brief: briefSchema,
  designs: z
    .array(
      z.object({
        key,
        engine: boundedEngine,
        fidelity: z.enum(['screen', 'full', 'detailed']),
        constantsDraw: z.array(z.number()).length(MODEL_CONSTANT_NAMES.length).nullable(),
      }),
    )
    .min(1)
    .max(MOST_DESIGNS),
});

const resultSchema = z.object({
  performance: performanceSchema,
  assessment: assessmentSchema,
  fault: z.enum(['timed out', 'crashed']).optional(),
});

const words = z.string().max(LONGEST_WORDS);

const answerSchema = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('results'),
    formatVersion: z.literal(1),
    modelVersion: version,
    worker: words,
    /** Spent on the batch, all threads together; s. Only for the size of later batches. */
    seconds: z.number().min(0),
    results: z.array(z.object({ key, result: resultSchema })).max(MOST_DESIGNS),
  }),
  z.object({ kind: z.literal('refused'), formatVersion: z.literal(1), worker: words, reason: words }),
]);

export type Question = z.infer<typeof questionSchema>;

/** Designs that share a brief and are asked together, with the keys that name them. */
export interface Batch {
  requests: EvaluationRequest[];
  keys: string[];
  figuresOnly: boolean;
}

/** Names the batch by its content: the same batch has the same name in every run. */
export function batchId({ keys, figuresOnly }: Batch): string {
  return `b${createHash('sha256')
    .update(`${figuresOnly}\n${keys.join('\n')}`)
    .digest('hex')}`;
}

export const BATCH_ID = /^b[0-9a-f]{64}$/;

export function writeQuestion({ requests, keys, figuresOnly }: Batch, modelVersion: string): string {
  const designs = requests.map(({ engine, fidelity, constantsDraw }, i) => ({
    key: keys[i],
    engine,
    fidelity,
    constantsDraw,
  }));
  return JSON.stringify({ formatVersion: 1, modelVersion, figuresOnly, brief: requests[0].brief, designs });
}

export type QuestionReading = { ok: true; batch: Batch } | { ok: false; reason: string };

/** Reads what a job holds. Never throws: anything but a sound question for this model is answered with a reason. */
export function readQuestion(data: unknown, modelVersion: string): QuestionReading {
  const text = (data as { question?: unknown } | null)?.question;
  if (typeof text !== 'string') return refused('the job holds no question');
  if (text.length > LONGEST_QUESTION) return refused(`the question is longer than ${LONGEST_QUESTION} characters`);
  const parsed = parsedBy(questionSchema, text);
  if (!parsed.ok) return refused(`the question is not sound: ${parsed.reason}`);
  const { modelVersion: asked, figuresOnly, brief, designs } = parsed.value;
  if (asked !== modelVersion)
    return refused(`it asks performance model ${asked.slice(0, 12)}, and this worker has ${modelVersion.slice(0, 12)}`);
  const requests = designs.map(({ engine, fidelity, constantsDraw }) => ({ engine, brief, fidelity, constantsDraw }));
  const keys = designs.map((design) => design.key);
  const odd = requests.findIndex((request, i) => requestKey(request, modelVersion) !== keys[i]);
  if (odd >= 0) return refused(`design ${odd + 1} is not the one that its key names`);
  return { ok: true, batch: { requests, keys, figuresOnly } };
}

function refused(reason: string): { ok: false; reason: string } {
  return { ok: false, reason: reason.slice(0, LONGEST_WORDS) };
}

export interface AnswerToWrite {
  keys: readonly string[];
  results: readonly EvaluationResult[];
  modelVersion: string;
  worker: string;
  seconds: number;
}

export function writeAnswer({ keys, results, modelVersion, worker, seconds }: AnswerToWrite): string {
  const answered = results.map((result, i) => ({ key: keys[i], result }));
  return JSON.stringify({ kind: 'results', formatVersion: 1, modelVersion, worker, seconds, results: answered });
}

export function writeRefusal(worker: string, reason: string): string {
  return JSON.stringify({ kind: 'refused', formatVersion: 1, worker, reason: reason.slice(0, LONGEST_WORDS) });
}

export type AnswerReading =
  | { ok: true; results: EvaluationResult[]; worker: string; seconds: number }
  | { ok: false; reason: string };

/** Reads a worker's answer to a batch. Never throws; an answer that does not fit the batch is none. */
export function readAnswer(text: string, batch: Batch, modelVersion: string): AnswerReading {
  if (text.length > LONGEST_ANSWER) return refused(`the answer is longer than ${LONGEST_ANSWER} characters`);
  const parsed = parsedBy(answerSchema, text);
  if (!parsed.ok) return refused(`an answer is not sound: ${parsed.reason}`);
  const answer = parsed.value;
  if (answer.kind === 'refused') return refused(`worker ${answer.worker} refuses the batch: ${answer.reason}`);
  if (answer.modelVersion !== modelVersion)
    return refused(
      `worker ${answer.worker} answers with performance model ${answer.modelVersion.slice(0, 12)} instead of ${modelVersion.slice(0, 12)}`,
    );
  if (answer.results.length !== batch.keys.length || answer.results.some((item, i) => item.key !== batch.keys[i]))
    return refused(`worker ${answer.worker} answers another question`);
  // What was read, not what the schema made of it: a field that the schema does not know must not be lost on the way.
  const { results } = parsed.raw as { results: { result: EvaluationResult }[] };
  return { ok: true, results: results.map(({ result }) => result), worker: answer.worker, seconds: answer.seconds };
}

type Parsed<T> = { ok: true; value: T; raw: unknown } | { ok: false; reason: string };

function parsedBy<T>(schema: z.ZodType<T>, text: string): Parsed<T> {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return { ok: false, reason: 'it is no JSON' };
  }
  if (!withinBounds(data, 0)) return { ok: false, reason: `a number beyond ±${GREATEST} or too deep a nesting` };
  const parsed = schema.safeParse(data);
  if (parsed.success) return { ok: true, value: parsed.data, raw: data };
  const [issue] = parsed.error.issues;
  return { ok: false, reason: `${issue.path.join('.') || 'the whole'}: ${issue.message}` };
}

function withinBounds(value: unknown, depth: number): boolean {
  if (typeof value === 'number') return Math.abs(value) <= GREATEST;
  if (value === null || typeof value !== 'object') return true;
  return depth < 12 && Object.values(value).every((inner) => withinBounds(inner, depth + 1));
}
