/**
 * Refits the model constants from the measured-values file: `npm run calibrate`. Repeatable: one seed, one answer.
 *
 * Minimises Σ ((computed − measured)/σ)² over the fitted rows, with more for a figure outside its accepted range or at its edge, plus
 * Σ (ln x/x₀ /σ₀)² towards each constant's prior, by an evolution strategy that is begun again twice from the best, ever closer to
 * it: engines near a doubling of their period make the cost jagged. The joint covariance comes from the Jacobian at the optimum
 * (Gauss–Newton): C = (JᵀJ + P⁻¹)⁻¹.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  CONSTANT_NOTES,
  type ConstantName,
  MODEL_CONSTANT_NAMES,
  type ModelConstants,
} from '../../shared/engine/constants.ts';
import { packageFolder } from '../report/package-folder.ts';
import { createRandom } from '../search/random.ts';
import { choleskyFactor, invert } from './dense-matrix.ts';
import { evolutionStrategy } from './evolution-strategy.ts';
import { type MeasuredValue, referenceFigures } from './reference-figures.ts';

/** Miss charged for each row of an engine that does not run, in standard deviations. */
const DEAD = 4;
/** Standard deviations charged beside its own for each by which a figure lies outside what is accepted. */
const OUTSIDE = 15;
/** What counts as the edge of what is accepted: this share of its middle, at most a quarter of its width. */
const EDGE = 0.02;
/** First standard deviations of each stage of the fit, shares of the priors'. */
const STAGES = [0.4, 0.15, 0.06];
/** Relative standard deviation of a fitted value whose source gives no range. */
const DEFAULT_SPREAD = 0.05;
const SEED = 'calibration-1';

function option(args: string[], name: string): string | undefined {
  const at = args.indexOf(name);
  return at < 0 ? undefined : args[at + 1];
}

type Target = { row: MeasuredValue; middle: number; sigma: number };

function target(row: MeasuredValue): Target {
  const middle = 0.5 * (row.low + row.high);
  const sigma = row.unit === '1 = yes' ? 0.25 : Math.max((row.high - row.low) / 4, DEFAULT_SPREAD * Math.abs(middle));
  return { row, middle, sigma };
}

/** Misses in standard deviations: fitted rows, what they lie outside, then the priors. */
function misses(x: readonly number[], targets: Target[], priors: { centre: number; sd: number }[]): number[] {
  const constants = Object.fromEntries(
    MODEL_CONSTANT_NAMES.map((n, i) => [n, Math.exp(x[i])]),
  ) as unknown as ModelConstants;
  const figures = referenceFigures(
    targets.map((t) => t.row),
    constants,
    'full',
  );
  return [
    ...targets.map((t, i) =>
      figures[i] === null ? DEAD : Math.max(-DEAD, Math.min(DEAD, ((figures[i] as number) - t.middle) / t.sigma)),
    ),
    ...targets.map((t, i) => {
      const figure = figures[i];
      if (figure === null || t.row.unit === '1 = yes') return 0;
      const { acceptLow, acceptHigh } = t.row;
      const edge = Math.min(EDGE * 0.5 * Math.abs(acceptLow + acceptHigh), 0.25 * (acceptHigh - acceptLow));
      const outside = Math.max(0, acceptLow + edge - figure, figure - (acceptHigh - edge));
      return Math.min(DEAD, (OUTSIDE * outside) / t.sigma);
    }),
    ...priors.map((p, i) => (x[i] - p.centre) / p.sd),
  ];
}

const squares = (r: readonly number[]) => r.reduce((s, v) => s + v * v, 0);

async function main(args: string[]): Promise<number> {
  const evaluations = Number(option(args, '--evaluations') ?? 900);
  const seed = option(args, '--seed') ?? SEED;
  const folder = join(packageFolder(), 'shared', 'calibration');
  const rows = (JSON.parse(readFileSync(join(folder, 'measured.json'), 'utf8')) as MeasuredValue[]).filter(
    (r) => r.role === 'fitted' && r.quantity !== 'augmentation',
  );
  const targets = rows.map(target);
  const priors = MODEL_CONSTANT_NAMES.map((n) => ({
    centre: Math.log(CONSTANT_NOTES[n].prior),
    sd: CONSTANT_NOTES[n].priorLogError,
  }));
  let best = Number.POSITIVE_INFINITY;
  let spent = 0;
  let optimum = priors.map((p) => p.centre);
  const cost = (x: readonly number[]): number => {
    const c = squares(misses(x, targets, priors));
    spent++;
    if (c < best) {
      best = c;
      optimum = [...x];
      process.stderr.write(
        `${spent} evaluations, cost ${c.toFixed(2)}: ${x.map((v) => Math.exp(v).toPrecision(3)).join(' ')}\n`,
      );
    }
    return c;
  };
  const random = createRandom(seed);
  for (const stage of STAGES) {
    evolutionStrategy(
      cost,
      optimum,
      priors.map((p) => stage * p.sd),
      Math.round(evaluations / STAGES.length),
      random,
    );
  }
  const covariance = jointCovariance(optimum, targets, priors);
  const factor = choleskyFactor(covariance);
  const out: Record<string, unknown> = {};
  MODEL_CONSTANT_NAMES.forEach((name: ConstantName, i) => {
    out[name] = {
      value: Number(Math.exp(optimum[i]).toPrecision(5)),
      logFactor: factor[i].slice(0, i + 1).map((v) => Number(v.toPrecision(4))),
    };
  });
  writeFileSync(join(folder, 'constants.json'), `${JSON.stringify(out, null, 2)}\n`);
  process.stdout.write(
    `Cost ${squares(misses(optimum, targets, priors)).toFixed(2)} after ${spent} evaluations; constants written.\n`,
  );
  return 0;
}

/** C = (JᵀJ + P⁻¹)⁻¹ in the logarithms of the constants; the priors' rows of J are P^{−1/2}, so JᵀJ alone holds both. */
function jointCovariance(
  x: readonly number[],
  targets: Target[],
  priors: { centre: number; sd: number }[],
): number[][] {
  const step = 0.04;
  const columns = x.map((_, i) => {
    const moved = (by: number) =>
      misses(
        x.map((v, j) => (j === i ? v + by : v)),
        targets,
        priors,
      );
    const up = moved(step);
    const down = moved(-step);
    // A start or stop of an engine inside the step is a cliff, not a slope.
    return up.map((v, k) => (Math.abs(v - down[k]) > 3 ? 0 : (v - down[k]) / (2 * step)));
  });
  return invert(columns.map((a) => columns.map((b) => a.reduce((s, v, k) => s + v * b[k], 0))));
}

process.exitCode = await main(process.argv.slice(2));
