/** A candidate sheet: full for the first three, short for the rest. */
import type { Candidate, Sensitivity, StudyResults } from '../../ranking/results.ts';
import { rankSensitivities } from '../charts/tornado.ts';
import type { DrawingSet } from '../drawing-set.ts';
import { anchor } from '../format/escape.ts';
import { chance, MISSING, percent } from '../format/number.ts';
import { partsAnchor } from './build-pack.ts';
import { type CandidateCharts, candidateCharts } from './candidate-charts.ts';
import { type DimensionRow, dimensionLine, dimensionRows } from './dimensions.ts';
import { drawing, type FigureView } from './figure.ts';
import { type FlagRow, type FlagSummary, flagRows, flagSummary, flagWords, splitFlags } from './flags.ts';
import { type KeyFigures, keyFigures } from './key-figures.ts';
import { auditSentence, performanceRows, startSentences } from './performance-rows.ts';
import { type AlternativeRow, alternativeRows } from './sheet-alternatives.ts';

interface SheetHead {
  id: string;
  anchor: string;
  rank: string;
  architecture: string;
  why: string;
  figures: KeyFigures;
  flags: FlagSummary;
  lifeLimiter: string;
  sideView: FigureView | null;
  /** Of its parts list; '' when it has none. */
  partsAnchor: string;
}

export interface ShortSheet extends SheetHead {
  dimensions: string;
  openFlags: FlagRow[];
  /** Fails with their figures and cautions by title, for print, which has the sentences only on full sheets. */
  briefFlags: string;
}

export interface FullSheet extends SheetHead {
  feasibleChance: string;
  sections: FigureView[];
  dimensions: DimensionRow[];
  performance: DimensionRow[];
  audit: string;
  verdict: string;
  starts: string[];
  charts: CandidateCharts;
  /** A compact sheet leaves out the pictures that only explain, and tells passed checks in a few words. */
  compact: boolean;
  /** Title of the table of flags. */
  flagTitle: string;
  flagRows: FlagRow[];
  passed: string[];
  /** What thicker or better sheet gains. */
  alternatives: AlternativeRow[];
  augmenterNote: string;
  /** The dimensions to hold best, strongest first. */
  tolerances: string[];
}

/** So many of the ranked steps are what a builder should watch; another material or one petal more is a choice, no tolerance. */
const MOST_TOLERANCES = 5;

function toleranceSentence(s: Sensitivity): string {
  if (s.stops) return `${s.label}: ${s.step} stops the engine`;
  const parts = [
    s.tsfc === null ? null : `TSFC by ${percent(s.tsfc, { signed: true })}`,
    s.thrust === null ? null : `thrust by ${percent(s.thrust, { signed: true })}`,
    s.valveLife === null ? null : `valve life by ${percent(s.valveLife, { signed: true })}`,
  ].filter((part) => part !== null);
  return `${s.label}: ${s.step} moves ${parts.length > 0 ? parts.join(', ') : 'nothing that could be told'}`;
}

function head(c: Candidate, results: StudyResults, drawings: DrawingSet): SheetHead {
  const view = drawings.sideViews[c.id];
  const parts = drawings.partsLists[c.id] ?? [];
  return {
    id: c.id,
    anchor: anchor(c.id),
    rank: String(c.rank),
    architecture: c.architecture.label,
    why: c.why,
    figures: keyFigures(c, results.study.brief.currency),
    flags: flagSummary(c.assessment.checks),
    lifeLimiter: c.assessment.lifeLimiter,
    sideView: view
      ? drawing(
          `figure-${anchor(c.id)}-side`,
          view.svg,
          `${c.id}: side view, scale ${view.scaleText}. Dimensions in mm and inch.`,
        )
      : null,
    partsAnchor: parts.length > 0 ? partsAnchor(c.id) : '',
  };
}

export function shortSheet(c: Candidate, results: StudyResults, drawings: DrawingSet): ShortSheet {
  const rows = flagRows(c.assessment.checks);
  const of = (verdict: string) => rows.filter((f) => f.verdict === verdict);
  const fails = of('fail').map(flagWords).join('; ');
  const cautions = of('caution')
    .map(({ title }) => flagWords({ title, value: MISSING, limit: MISSING }))
    .join('; ');
  return {
    ...head(c, results, drawings),
    dimensions: dimensionLine(c.engine),
    openFlags: rows.filter((f) => f.verdict === 'fail' || f.verdict === 'caution'),
    briefFlags: [
      ...(fails === '' ? [] : [`Fails: ${fails}.`]),
      ...(cautions === '' ? [] : [`Cautions: ${cautions}.`]),
    ].join(' '),
  };
}

export function fullSheet(c: Candidate, results: StudyResults, drawings: DrawingSet, compact: boolean): FullSheet {
  const { running } = c.performance;
  const rows = flagRows(c.assessment.checks);
  const { open, passed } = splitFlags(rows);
  return {
    ...head(c, results, drawings),
    feasibleChance: chance(c.robustness.feasibleChance, c.robustness.draws),
    sections: (drawings.sections[c.id] ?? []).map((s, i) =>
      drawing(`figure-${anchor(c.id)}-section-${i + 1}`, s.svg, `${c.id}: ${s.caption}`),
    ),
    dimensions: dimensionRows(c.engine),
    performance: running ? performanceRows(running) : [],
    audit: running ? auditSentence(running) : '',
    verdict: c.performance.verdict.message,
    starts: startSentences(c.performance),
    charts: candidateCharts(c),
    compact,
    flagTitle: compact ? 'Checks that need a look' : 'Every check that applies',
    flagRows: compact ? open : rows,
    passed: compact ? passed : [],
    alternatives: alternativeRows(c),
    augmenterNote: running?.augmenterNote ?? '',
    tolerances: rankSensitivities(c.sensitivities)
      .filter(({ step }) => step.includes('%'))
      .slice(0, MOST_TOLERANCES)
      .map(toleranceSentence),
  };
}
