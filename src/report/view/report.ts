/** The whole report as one view: only text and finished pictures, ready to be set. */
import type { RunFacts, StudyResults } from '../../ranking/results.ts';
import type { DrawingSet } from '../drawing-set.ts';
import { type AnswerView, answerView } from './answer.ts';
import { type ArchitecturesView, architecturesView } from './architectures.ts';
import { type BuildPackView, buildPackView } from './build-pack.ts';
import { type FullSheet, fullSheet, type ShortSheet, shortSheet } from './candidate.ts';
import { type MethodView, methodView } from './method.ts';
import { type RankingView, rankingView } from './ranking.ts';
import { type RunningView, runningView } from './running.ts';
import { type SafetyView, safetyView } from './safety.ts';
import { type TradeView, tradeView } from './trade.ts';

export interface ReportView {
  title: string;
  invented: boolean;
  date: string;
  answer: AnswerView;
  ranking: RankingView;
  trade: TradeView;
  architectures: ArchitecturesView;
  fullSheets: FullSheet[];
  shortSheets: ShortSheet[];
  buildPack: BuildPackView;
  running: RunningView;
  safety: SafetyView;
  method: MethodView;
}

/** So many candidates get a sheet of their own, all but the first a compact one. */
export const FULL_SHEETS = 3;

export function reportView(results: StudyResults, facts: RunFacts, drawings: DrawingSet): ReportView {
  return {
    title: results.study.report.title,
    invented: results.study.report.invented,
    date: facts.startedAt.slice(0, 10),
    answer: answerView(results),
    ranking: rankingView(results),
    trade: tradeView(results),
    architectures: architecturesView(results),
    fullSheets: results.candidates.slice(0, FULL_SHEETS).map((c, i) => fullSheet(c, results, drawings, i > 0)),
    shortSheets: results.candidates.slice(FULL_SHEETS).map((c) => shortSheet(c, results, drawings)),
    buildPack: buildPackView(results, drawings),
    running: runningView(results),
    safety: safetyView(results),
    method: methodView(results, facts),
  };
}
