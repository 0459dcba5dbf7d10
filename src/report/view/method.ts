/** How the figures came about, so that anyone can repeat them. */
import type { RunFacts, StudyResults } from '../../ranking/results.ts';
import { convergenceChart } from '../charts/convergence.ts';
import { validationChart } from '../charts/validation-chart.ts';
import { elapsed } from '../format/duration.ts';
import { count, fixed, percent, significant } from '../format/number.ts';
import { ABBREVIATIONS } from './abbreviations.ts';
import { type FigureView, figureView } from './figure.ts';
import { type ValidationLine, validationLines, validationSummary } from './trust.ts';
import type { Line } from './wanted.ts';

export interface ConstantRow {
  name: string;
  value: string;
  error: string;
  meaning: string;
  source: string;
}

export interface MethodView {
  run: Line[];
  constants: ConstantRow[];
  validation: ValidationLine[];
  /** What is fitted, what only checked, and how many of each are met. */
  validationSummary: string;
  validationFigure: FigureView | null;
  convergence: FigureView | null;
  sources: { title: string; source: string }[];
  abbreviations: { term: string; meaning: string }[];
}

function runLines(results: StudyResults, facts: RunFacts): Line[] {
  const { evaluations, study } = results;
  return [
    { label: 'Study', value: study.slug },
    { label: 'Started', value: facts.startedAt },
    { label: 'Wall time', value: `${elapsed(facts.wallTimeSeconds)} with ${count(facts.workers, 'worker')}` },
    { label: 'Seed', value: study.search.seed },
    {
      label: 'Evaluations',
      value:
        `${fixed(evaluations.total, 0)} in all: ${fixed(evaluations.screen, 0)} on the coarse grid, ${fixed(evaluations.full, 0)} in full, ` +
        `${fixed(evaluations.refused, 0)} refused by geometry before they cost anything, ${fixed(evaluations.robustness, 0)} for the bands`,
    },
    ...screeningLine(results),
    { label: 'Stopped because', value: results.stoppedBecause },
    { label: 'Configuration, SHA-256', value: results.configurationDigest },
    { label: 'Performance model', value: results.modelVersion },
    { label: 'Tool', value: results.toolVersion },
    { label: 'Computed with', value: `${facts.node} on ${facts.platform}` },
  ];
}

/** What coarse runs decided and saved, told both ways: in a short study they may cost more than they save. */
function screeningLine({ screening }: StudyResults): Line[] {
  if (!screening || screening.screened === 0) return [];
  const { screened, full, spent, withoutScreening, audited, overturned } = screening;
  const change = spent / withoutScreening - 1;
  const saved = `${percent(Math.abs(change))} ${change <= 0 ? 'less' : 'more'} than running every design in full`;
  const checked =
    audited > 0
      ? `; of ${fixed(audited, 0)} coarse failures run in full as a check, ${fixed(overturned, 0)} ran after all`
      : '';
  return [
    {
      label: 'Two fidelities',
      value: `${fixed(screened, 0)} coarse and ${fixed(full, 0)} full runs cost ${saved}${checked}`,
    },
  ];
}

/** Sources of the checks, each once, in the order in which they appear. */
function checkSources(results: StudyResults): { title: string; source: string }[] {
  const seen = new Map<string, { title: string; source: string }>();
  for (const c of results.candidates)
    for (const check of c.assessment.checks)
      if (!seen.has(check.id)) seen.set(check.id, { title: check.title, source: check.source });
  return [...seen.values()];
}

export function methodView(results: StudyResults, facts: RunFacts): MethodView {
  return {
    run: runLines(results, facts),
    constants: results.constants.map((c) => ({
      name: c.name,
      value: significant(c.value),
      error: c.value === 0 ? significant(c.standardError, 2) : percent(c.standardError / Math.abs(c.value)),
      meaning: c.meaning,
      source: c.source,
    })),
    validation: validationLines(results),
    validationSummary: validationSummary(results),
    validationFigure: figureView(
      'figure-validation',
      validationChart('validation', results.validation),
      'Computed (dot) against measured (box) and the accepted band (line), as deviation from the middle of the measured range. A hollow dot lies outside its band. The table says which figures the constants were fitted to.',
    ),
    convergence: figureView(
      'figure-convergence',
      convergenceChart('convergence', results.convergence),
      'Convergence of the search. A line that has been level for long says that more evaluations would hardly help.',
    ),
    sources: checkSources(results),
    abbreviations: ABBREVIATIONS,
  };
}
