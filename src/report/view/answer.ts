/** Page one: the question, its answer, the best three, and how far to trust it. */
import type { Candidate, StudyResults } from '../../ranking/results.ts';
import { anchor } from '../format/escape.ts';
import { count } from '../format/number.ts';
import { flagRows, flagWords } from './flags.ts';
import { type KeyFigures, keyFigures } from './key-figures.ts';
import { trustSentences } from './trust.ts';
import { type Line, wantedLines } from './wanted.ts';

export interface AnswerView {
  question: string;
  contradictions: string[];
  /** What to build, or that nothing can be. */
  lead: string;
  /** One paragraph a subject; the head is its first words, '' for none. */
  paragraphs: { head: string; text: string }[];
  moreThanOne: boolean;
  best: { id: string; anchor: string; architecture: string; figures: KeyFigures }[];
  /** What the recommended candidate fails although it is allowed; null when it fails nothing. */
  watch: { id: string; anchor: string; text: string } | null;
  /** "7 of 10 architectures gave no allowed design"; '' when each did. */
  failed: string;
  trust: string[];
  wanted: Line[];
  notes: string;
}

/** Words that a paragraph of the answer may begin with, to be set as its head. */
const HEADS = /^(Why not [^?]{1,60}\?|If life counts more,|If fuel counts more,|Explored:|How far to trust it:) /;

function paragraph(text: string): { head: string; text: string } {
  const head = HEADS.exec(text)?.[1] ?? '';
  return { head, text: text.slice(head.length).trim() };
}

function failedLine(results: StudyResults): string {
  const all = results.architectures.length;
  const failed = results.architectures.filter((a) => a.feasible === 0).length;
  return failed === 0 ? '' : `${failed} of ${count(all, 'architecture')} gave no design that is allowed`;
}

/** Fails that are unwise rather than forbidden belong beside the recommendation, not only on the sheet. */
function watch(best: Candidate | undefined): AnswerView['watch'] {
  if (!best?.feasible) return null;
  const fails = flagRows(best.assessment.checks).filter((row) => row.verdict === 'fail');
  if (fails.length === 0) return null;
  const told = fails.map(flagWords);
  return {
    id: best.id,
    anchor: anchor(best.id),
    text: `It keeps within every limit that was asked for, but fails ${count(fails.length, 'check')} of good practice: ${told.join('; ')}.`,
  };
}

export function answerView(results: StudyResults): AnswerView {
  const [lead = '', ...rest] = results.answer;
  return {
    question: results.study.report.question,
    contradictions: results.contradictions,
    lead,
    paragraphs: rest.map(paragraph),
    moreThanOne: results.candidates.length > 1,
    best: results.candidates.slice(0, 3).map((c) => ({
      id: c.id,
      anchor: anchor(c.id),
      architecture: c.architecture.label,
      figures: keyFigures(c, results.study.brief.currency),
    })),
    watch: watch(results.candidates[0]),
    failed: failedLine(results),
    trust: trustSentences(results),
    wanted: wantedLines(results.study),
    notes: results.study.report.notes,
  };
}
