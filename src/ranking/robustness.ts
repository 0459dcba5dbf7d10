/**
 * How a finalist fares when the model's constants and the workshop's work are not what was assumed: a plan of requests, then a
 * reduction of their answers. Pure; whoever evaluates stands between the two.
 */
import type { Band } from '../../shared/checks/check.ts';
import type { Brief } from '../../shared/engine/brief.ts';
import { MODEL_CONSTANT_NAMES } from '../../shared/engine/constants.ts';
import type { Engine } from '../../shared/engine/engine.ts';
import type { EvaluationRequest, EvaluationSummary } from '../evaluation/evaluation.ts';
import { childRandom, normal, shuffle } from '../search/random.ts';
import { asBuilt } from './build-tolerances.ts';
import { bandOf, logDeviation } from './quantiles.ts';
import type { Robustness } from './results.ts';

export interface RobustnessQuestion {
  /** Seed of the study. */
  seed: string;
  /** Names the finalist apart from its rank, e.g. architecture and coordinates. */
  key: string;
  engine: Engine;
  brief: Brief;
  draws: number;
}

/** One request a draw: constants moved within their joint errors and the engine as built. Same (seed, key), same requests. */
export function robustnessPlan(question: RobustnessQuestion): EvaluationRequest[] {
  const { seed, key, engine, brief, draws } = question;
  const scores = constantScores(seed, key, draws);
  return Array.from({ length: draws }, (_, draw) => ({
    engine: asBuilt(engine, childRandom(seed, `build ${key} ${draw}`)),
    brief,
    fidelity: 'full' as const,
    constantsDraw: scores[draw],
  }));
}

/**
 * Standard-normal scores by Latin hypercube: each constant visits every one of the `draws` equal slices of its distribution once
 * (McKay, Beckman and Conover 1979), so that few draws cover the tails evenly.
 */
function constantScores(seed: string, key: string, draws: number): number[][] {
  const random = childRandom(seed, `constants ${key}`);
  const columns = MODEL_CONSTANT_NAMES.map(() => {
    const column = Array.from({ length: draws }, (_, slice) => normalScore((slice + random.uniform()) / draws));
    shuffle(random, column);
    return column;
  });
  return Array.from({ length: draws }, (_, draw) => columns.map((column) => column[draw]));
}

/**
 * Reduces the draws. Draws that fail in any way count as not running. Valve life mixes the draws' medians with the scatter of the
 * material, which the nominal life band states.
 */
export function robustnessFrom(
  question: Pick<RobustnessQuestion, 'seed' | 'key'>,
  draws: readonly EvaluationSummary[],
  nominalLife: Band | null,
): Robustness {
  const running = draws.filter((draw) => draw.status === 'ok');
  const feasible = running.filter((draw) => draw.violations.length === 0);
  const share = (count: number): number => (draws.length === 0 ? 0 : count / draws.length);
  const scatter = nominalLife === null ? 0 : logDeviation(nominalLife);
  const random = childRandom(question.seed, `life ${question.key}`);
  const lives = draws.map((draw) => {
    const score = normal(random);
    return draw.status === 'ok' && draw.valveLife !== null ? draw.valveLife * Math.exp(scatter * score) : null;
  });
  return {
    draws: draws.length,
    sustainChance: share(running.length),
    feasibleChance: share(feasible.length),
    tsfc: bandOf(running.map((draw) => draw.tsfc)),
    thrust: bandOf(running.map((draw) => draw.thrust)),
    frequency: bandOf(running.map((draw) => draw.frequency)),
    valveLife: bandOf(lives),
    fuelFlow: bandOf(running.map((draw) => draw.fuelFlow)),
  };
}

/**
 * Inverse of the standard-normal distribution. Source: Acklam's rational approximation, relative error below 1.15e-9.
 * @throws RangeError outside 0 < p < 1.
 */
export function normalScore(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`a probability between 0 and 1 was expected, found ${p}`);
  if (p > 0.5) return -normalScore(1 - p);
  if (p < 0.02425) {
    const q = Math.sqrt(-2 * Math.log(p));
    return polynomial(TAIL_NUMERATOR, q) / (polynomial(TAIL_DENOMINATOR, q) * q + 1);
  }
  const q = p - 0.5;
  const r = q * q;
  return (polynomial(NUMERATOR, r) * q) / (polynomial(DENOMINATOR, r) * r + 1);
}

const NUMERATOR = [
  -3.969683028665376e1, 2.209460984245205e2, -2.759285104469687e2, 1.38357751867269e2, -3.066479806614716e1,
  2.506628277459239,
];
const DENOMINATOR = [
  -5.447609879822406e1, 1.615858368580409e2, -1.556989798598866e2, 6.680131188771972e1, -1.328068155288572e1,
];
const TAIL_NUMERATOR = [
  -7.784894002430293e-3, -3.223964580411365e-1, -2.400758277161838, -2.549732539343734, 4.374664141464968,
  2.938163982698783,
];
const TAIL_DENOMINATOR = [7.784695709041462e-3, 3.224671290700398e-1, 2.445134137142996, 3.754408661907416];

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduce((sum, coefficient) => sum * x + coefficient, 0);
}
