/** How a check is written: a rule judges the facts of one design; helpers turn value and limit into a verdict. */
import type { Check } from './check.ts';
import type { Facts } from './facts.ts';

export type Judgement = Pick<Check, 'verdict' | 'value' | 'limit' | 'unit' | 'margin' | 'sentence'>;

export interface CheckRule {
  /** Stable kebab-case identifier. */
  id: string;
  title: string;
  source: string;
  /** True when a fail makes the design infeasible. */
  binding: boolean;
  judge(facts: Facts): Judgement;
}

/** Something that a check needs and that is not there; `assess` turns it into "not computed". */
export class MissingFigure extends Error {}

/** One sentence for each verdict; a function that is called for the verdict that falls. */
export interface Words {
  pass: string;
  caution: string;
  fail: string;
}

export interface Measured {
  value: number;
  limit: number;
  unit: string;
  /** Clearance below which a pass becomes a caution. */
  cautionMargin: number;
}

/** The value should not exceed the limit. */
export function atMost(m: Measured, words: Words): Judgement {
  return graded(m, (m.limit - m.value) / scaleOf(m.limit), words);
}

/** The value should reach the limit. */
export function atLeast(m: Measured, words: Words): Judgement {
  return graded(m, (m.value - m.limit) / scaleOf(m.limit), words);
}

function scaleOf(limit: number): number {
  return Math.max(Math.abs(limit), 1e-12);
}

function graded(m: Measured, margin: number, words: Words): Judgement {
  if (!Number.isFinite(m.value) || !Number.isFinite(m.limit)) {
    throw new MissingFigure('the model gave no finite figure for it');
  }
  const verdict = margin < 0 ? 'fail' : margin < m.cautionMargin ? 'caution' : 'pass';
  return { verdict, value: m.value, limit: m.limit, unit: m.unit, margin, sentence: words[verdict] };
}

/** Softens a fail to a caution: for figures that warn but forbid nothing. */
export function noWorseThanCaution(judgement: Judgement): Judgement {
  return judgement.verdict === 'fail' ? { ...judgement, verdict: 'caution' } : judgement;
}

export function notApplicable(why: string): Judgement {
  return { verdict: 'not applicable', value: null, limit: null, unit: '', margin: null, sentence: why };
}

export function notComputed(why: string): Judgement {
  return { verdict: 'not computed', value: null, limit: null, unit: '', margin: null, sentence: why };
}
