/** Several studies side by side: what each asked, what each found, and their best in one picture. */
import type { Candidate, StudyResults } from '../../ranking/results.ts';
import { MARK_WORDS, mark } from '../charts/marks.ts';
import { el, type Markup } from '../charts/svg.ts';
import { type TradeMark, tradePicture } from '../charts/trade-picture.ts';
import { shortName } from '../format/architecture-name.ts';
import { anchor } from '../format/escape.ts';
import { count, fixed } from '../format/number.ts';
import { both } from '../format/quantity.ts';
import { sentenceCase } from '../format/sentence-case.ts';
import { type FigureView, figureView } from './figure.ts';
import { type FlagSummary, flagSummary } from './flags.ts';
import { type KeyFigures, keyFigures, lifeBand, tsfcBand } from './key-figures.ts';
import { orderOfMerit } from './wanted.ts';

export interface StudyColumn {
  slug: string;
  anchor: string;
  title: string;
  invented: boolean;
  question: string;
  answer: string[];
  contradictions: string[];
  thrustWanted: string;
  order: string;
  evaluations: string;
  seed: string;
  digest: string;
  model: string;
}

export interface ComparisonRow {
  study: string;
  studyAnchor: string;
  id: string;
  anchor: string;
  mark: Markup;
  architecture: string;
  figures: KeyFigures;
  flags: FlagSummary;
  why: string;
}

export interface ArchitectureLine {
  label: string;
  /** One entry a study: "C1", "never ran", … or a dash when it was not explored. */
  outcomes: string[];
}

export interface ComparisonView {
  title: string;
  invented: boolean;
  studies: StudyColumn[];
  best: ComparisonRow[];
  architectures: ArchitectureLine[];
  warnings: string[];
  figure: FigureView | null;
  markWords: string;
}

/** So many of each study stand side by side. */
const BEST_OF_EACH = 3;

/** Two studies may share a slug, so their place tells them apart. */
function studyAnchor(place: number): string {
  return `study-${place + 1}`;
}

function column(results: StudyResults, place: number): StudyColumn {
  const { study } = results;
  return {
    slug: study.slug,
    anchor: studyAnchor(place),
    title: study.report.title,
    invented: study.report.invented,
    question: study.report.question,
    answer: results.answer,
    contradictions: results.contradictions,
    thrustWanted: study.brief.wanted.thrust === null ? 'not stated' : both(study.brief.wanted.thrust, 'N'),
    order: orderOfMerit(study),
    evaluations: count(results.evaluations.total, 'evaluation'),
    seed: study.search.seed,
    digest: results.configurationDigest.slice(0, 16),
    model: results.modelVersion.slice(0, 16),
  };
}

function rowAnchor(candidate: Candidate, place: number): string {
  return `${studyAnchor(place)}-${anchor(candidate.id)}`;
}

function bestOf(results: StudyResults): Candidate[] {
  return results.candidates.slice(0, BEST_OF_EACH);
}

function row(results: StudyResults, c: Candidate, place: number): ComparisonRow {
  return {
    study: results.study.slug,
    studyAnchor: studyAnchor(place),
    id: c.id,
    anchor: rowAnchor(c, place),
    mark: el(
      'svg',
      { class: 'key-mark', viewBox: '-9 -9 18 18', width: 16, height: 16, 'aria-hidden': 'true', focusable: 'false' },
      mark(c.architecture, 6, 0, 0),
    ),
    architecture: shortName(c.architecture),
    figures: keyFigures(c, results.study.brief.currency),
    flags: flagSummary(c.assessment.checks),
    why: c.why,
  };
}

/** Every architecture that any study explored, with what became of it in each. */
function architectureLines(all: readonly StudyResults[]): ArchitectureLine[] {
  const labels = new Map<string, string>();
  for (const results of all) for (const a of results.architectures) labels.set(a.architecture.id, a.architecture.label);
  return [...labels].map(([id, label]) => ({
    label: sentenceCase(label),
    outcomes: all.map((results) => {
      const found = results.architectures.find((a) => a.architecture.id === id);
      if (!found) return 'not explored';
      if (found.bestCandidate !== null) return `${found.bestCandidate}, ${fixed(found.feasible, 0)} allowed`;
      if (found.feasible > 0) return `${fixed(found.feasible, 0)} allowed, none among the finalists`;
      return found.running > 0 ? 'ran, never allowed' : 'never ran';
    }),
  }));
}

function warnings(all: readonly StudyResults[]): string[] {
  const models = new Set(all.map((r) => r.modelVersion));
  const digests = new Set(all.map((r) => r.configurationDigest));
  return [
    ...(models.size > 1
      ? [
          'The studies were computed with different versions of the performance model: differences between them may come from that. Run them again before you compare.',
        ]
      : []),
    ...(digests.size < all.length ? ['Two of the studies have the same configuration.'] : []),
  ];
}

export function comparisonView(all: readonly StudyResults[]): ComparisonView {
  const finalists = all.flatMap((results, place) =>
    bestOf(results).flatMap((c): TradeMark[] => {
      const tsfc = tsfcBand(c);
      const life = lifeBand(c);
      if (!tsfc || !life) return [];
      const id = `${results.study.slug} ${c.id}`;
      return [
        {
          id,
          anchor: rowAnchor(c, place),
          rank: c.rank,
          architecture: c.architecture,
          tsfc,
          life,
          feasible: c.feasible,
          bestOfArchitecture: false,
        },
      ];
    }),
  );
  return {
    title: `Comparison of ${count(all.length, 'study', 'studies')}`,
    invented: all.some((r) => r.study.report.invented),
    studies: all.map(column),
    best: all.flatMap((results, place) => bestOf(results).map((c) => row(results, c, place))),
    architectures: architectureLines(all),
    warnings: warnings(all),
    figure: figureView(
      'figure-comparison',
      tradePicture({ id: 'comparison-picture', finalists, others: [], front: [] }),
      `The best ${BEST_OF_EACH} of each study: valve life against TSFC, with 5 to 95 % bands.`,
    ),
    markWords: MARK_WORDS,
  };
}
