/** The ranking table: every finalist in one line. */
import type { StudyResults } from '../../ranking/results.ts';
import { shortName } from '../format/architecture-name.ts';
import { anchor } from '../format/escape.ts';
import { type FlagSummary, flagSummary } from './flags.ts';
import { frequencyBand, type KeyFigures, keyFigures, pointFigure } from './key-figures.ts';
import { orderOfMerit } from './wanted.ts';

export interface RankingRow {
  id: string;
  anchor: string;
  rank: string;
  architecture: string;
  figures: KeyFigures;
  /** Hz without its narrow band, to save width. */
  middleFrequency: string;
  flags: FlagSummary;
  nonDominated: boolean;
  infeasible: boolean;
}

export interface RankingView {
  rows: RankingRow[];
  order: string;
}

export function rankingView(results: StudyResults): RankingView {
  return {
    order: orderOfMerit(results.study),
    rows: results.candidates.map((c) => ({
      id: c.id,
      anchor: anchor(c.id),
      rank: String(c.rank),
      architecture: shortName(c.architecture),
      figures: keyFigures(c, results.study.brief.currency),
      middleFrequency: pointFigure(frequencyBand(c)?.median ?? null, 'Hz').bare,
      flags: flagSummary(c.assessment.checks),
      nonDominated: c.nonDominated,
      infeasible: !c.feasible,
    })),
  };
}
