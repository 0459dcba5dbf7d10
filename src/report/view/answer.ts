/** Page one: the question, its answer, the best three, what failed and how far to trust it. */
import type { StudyResults } from '../../ranking/results.ts';
import { anchor } from '../format/escape.ts';
import { sentenceCase } from '../format/sentence-case.ts';
import { type KeyFigures, keyFigures } from './key-figures.ts';
import { trustSentences } from './trust.ts';
import { type Line, wantedLines } from './wanted.ts';

export interface AnswerView {
  question: string;
  contradictions: string[];
  sentences: string[];
  moreThanOne: boolean;
  best: { id: string; anchor: string; architecture: string; why: string; figures: KeyFigures }[];
  failed: { architecture: string; anchor: string; reason: string; freedBy: string }[];
  /** How many more failed than are listed; 0 hides the line. */
  moreFailed: number;
  trust: string[];
  wanted: Line[];
  notes: string;
}

/** Page one has room for so many failures; the rest stand under "Architectures". */
const MOST_FAILURES = 4;

export function answerView(results: StudyResults): AnswerView {
  const failed = results.architectures.filter((a) => a.feasible === 0);
  return {
    question: results.study.report.question,
    contradictions: results.contradictions,
    sentences: results.answer,
    moreThanOne: results.candidates.length > 1,
    best: results.candidates.slice(0, 3).map((c) => ({
      id: c.id,
      anchor: anchor(c.id),
      architecture: c.architecture.label,
      why: c.why,
      figures: keyFigures(c, results.study.brief.currency),
    })),
    failed: failed.slice(0, MOST_FAILURES).map((a) => ({
      architecture: sentenceCase(a.architecture.label),
      anchor: `architecture-${anchor(a.architecture.id)}`,
      reason: a.reason,
      freedBy: a.freedBy,
    })),
    moreFailed: Math.max(0, failed.length - MOST_FAILURES),
    trust: trustSentences(results),
    wanted: wantedLines(results.study),
    notes: results.study.report.notes,
  };
}
