/**
 * The order of the finalists, by robust values: what three draws in four keep, never the lucky nominal figure.
 * Each feasible finalist gets a score, lower is better; those that are not feasible follow by how much they break.
 */

import type { RankingWishes } from '../config/study.ts';
import type { EvaluationSummary } from '../evaluation/evaluation.ts';
import { dominates } from '../search/domination.ts';
import { lowerQuartileLog, upperQuartile } from './quantiles.ts';
import type { Robustness } from './results.ts';

/** What a certain miss of some wish costs, in spans of the scored figures: half a span. Our own choice, no source. */
const RISK_WEIGHT = 0.5;

export interface RankInput {
  summary: EvaluationSummary;
  robustness: Robustness;
}

export interface Ranked {
  /** Index into the inputs. */
  index: number;
  feasible: boolean;
  nonDominated: boolean;
  score: number;
  /** Robust values; null when it does not run often enough. */
  tsfc: number | null;
  life: number | null;
}

/** Inputs in rank order. */
export function rankFinalists(inputs: readonly RankInput[], wishes: RankingWishes, minSustainChance: number): Ranked[] {
  const ranked = inputs.map((input, index): Ranked => {
    const { tsfc, valveLife } = input.robustness;
    return {
      index,
      feasible:
        input.summary.status === 'ok' &&
        input.summary.violations.length === 0 &&
        input.robustness.sustainChance >= minSustainChance &&
        tsfc !== null &&
        valveLife !== null,
      nonDominated: false,
      score: 0,
      tsfc: tsfc === null ? null : upperQuartile(tsfc),
      life: valveLife === null ? null : lowerQuartileLog(valveLife),
    };
  });
  const feasible = ranked.filter((entry) => entry.feasible);
  const scored = feasible.length > 0 ? feasible : ranked.filter((entry) => entry.tsfc !== null && entry.life !== null);
  markNonDominated(scored);
  const scale = spansOf(scored);
  for (const entry of ranked) {
    entry.score = entry.feasible
      ? scoreOf(entry, inputs[entry.index], wishes, scale)
      : 10 + brokenBy(inputs[entry.index], minSustainChance);
  }
  return ranked.sort((a, b) => Number(b.feasible) - Number(a.feasible) || a.score - b.score || a.index - b.index);
}

interface Spans {
  tsfc: [number, number];
  life: [number, number];
}

function spansOf(entries: readonly Ranked[]): Spans {
  const ends = (values: number[]): [number, number] => [Math.min(...values), Math.max(...values)];
  return { tsfc: ends(entries.map((e) => e.tsfc!)), life: ends(entries.map((e) => Math.log(e.life!))) };
}

/** 0 at the best end of the span, 1 at the worst; 0 when all are alike. */
function place(value: number, best: number, worst: number): number {
  return best === worst ? 0 : (value - best) / (worst - best);
}

function scoreOf(entry: Ranked, { robustness }: RankInput, wishes: RankingWishes, scale: Spans): number {
  const fuel = place(entry.tsfc!, scale.tsfc[0], scale.tsfc[1]);
  const life = place(Math.log(entry.life!), scale.life[1], scale.life[0]);
  const risk = RISK_WEIGHT * (1 - robustness.feasibleChance);
  switch (wishes.method) {
    case 'weighted': {
      const sum = wishes.tsfcWeight + wishes.lifeWeight;
      return (wishes.tsfcWeight * fuel + wishes.lifeWeight * life) / (sum > 0 ? sum : 1) + risk;
    }
    case 'knee':
      // Distance from the line that joins the two ends of the span; the knee bulges farthest towards the better corner.
      return (fuel + life - 1) / Math.SQRT2 + (entry.nonDominated ? 0 : 0.1) + risk;
    case 'life-at-bounded-tsfc': {
      const bound = wishes.tsfcBound ?? Infinity;
      const beyond = entry.tsfc! > bound ? 1 + (entry.tsfc! / bound - 1) : 0;
      return life + beyond + risk;
    }
  }
}

function brokenBy({ summary, robustness }: RankInput, minSustainChance: number): number {
  const broken = summary.violations.reduce((sum, { violation }) => sum + violation, 0);
  return (summary.status === 'ok' ? 0 : 100) + broken + Math.max(0, minSustainChance - robustness.sustainChance);
}

function markNonDominated(entries: readonly Ranked[]): void {
  const points = entries.map((entry) => [entry.tsfc!, -entry.life!]);
  entries.forEach((entry, i) => {
    entry.nonDominated = !points.some((point, j) => j !== i && dominates(point, points[i]));
  });
}
