/**
 * `npm run bench:search`: what the search reaches on published problems, beside the bands that well-known libraries set,
 * and what it costs beyond the evaluations. Run it from the root of the project: it reads the reference fronts there.
 */
import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { hypervolume } from '../search/hypervolume.ts';
import { optimise } from '../search/optimise.ts';
import { FEASIBLE, type Member, type Outcome } from '../search/outcome.ts';
import { createRandom } from '../search/random.ts';
import type { BenchmarkProblem } from './search-problems.ts';
import * as problems from './search-problems.ts';

const SEEDS = 11;
const SETTINGS = { population: 100, evaluations: 25_000 };

/** Hypervolumes to reach: band, the best of four libraries, and the exact ceiling. */
const FRONTS: [BenchmarkProblem, number, number, number][] = [
  [problems.zdt1, 0.8694, 0.87069, 0.87667],
  [problems.zdt2, 0.536, 0.53763, 0.54333],
  [problems.zdt3, 0.7245, 0.72547, 0.72745],
  [problems.zdt4, 0.8577, 0.8663, 0.87667],
  [problems.zdt6, 0.5951, 0.59996, 0.6159],
  [problems.dtlz2, 0.7, 0.744, 0.8074],
  [problems.bnh, 1.0193, 1.0197, 1.0251],
  [problems.srn, 0.7059, 0.7061, 0.7095],
  [problems.tnk, 0.5142, 0.5149, 0.5187],
  [problems.osy, 0.9406, 0.94788, 0.9686],
];

/** Best-known values. */
const SINGLES: [BenchmarkProblem, number][] = [
  [problems.weldedBeam, 1.7248523081],
  [problems.pressureVessel, 6059.7143350484],
  [problems.tensionSpring, 0.0126652328],
  [problems.threeBarTruss, 263.8958432],
];

export interface BenchmarkRun {
  /** Feasible members of the final population. */
  feasible: Member[];
  /** CPU time of the whole run, s. */
  cpu: number;
}

export async function runBenchmark(
  problem: BenchmarkProblem,
  seed: string,
  settings = SETTINGS,
): Promise<BenchmarkRun> {
  function evaluate(designs: number[][]): Outcome[] {
    return designs.map((x) => {
      const { f, g } = problem.evaluate(x);
      return { status: 'ok', objectives: f, violations: g, reason: '' };
    });
  }
  const start = process.cpuUsage();
  const { population } = await optimise(problem, evaluate, createRandom(seed), settings);
  const { user, system } = process.cpuUsage(start);
  return { feasible: population.filter((member) => member.tier === FEASIBLE), cpu: (user + system) / 1e6 };
}

/** Points of a reference front: a table with a heading line. */
export function readFront(id: string, folder = 'tests/search/fronts'): number[][] {
  const lines = readFileSync(`${folder}/${id.toLowerCase()}.csv`, 'utf8').trim().split('\n');
  return lines.slice(1).map((line) => line.split(',').map(Number));
}

/** Hypervolume with objectives put on the reference front's ideal and nadir, reference 1.1 in each. */
export function normalisedHypervolume(members: readonly Member[], front: readonly number[][]): number {
  const ideal = front[0].map((_, k) => Math.min(...front.map((point) => point[k])));
  const nadir = front[0].map((_, k) => Math.max(...front.map((point) => point[k])));
  const points = members.map((member) => member.f.map((value, k) => (value - ideal[k]) / (nadir[k] - ideal[k])));
  return hypervolume(
    points,
    ideal.map(() => 1.1),
  );
}

export async function main(): Promise<void> {
  const date = new Date().toISOString().slice(0, 10);
  console.log(`${date}, ${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.versions.node}.`);
  console.log(`Population ${SETTINGS.population}, ${SETTINGS.evaluations} evaluations, ${SEEDS} seeds.\n`);
  console.log('| problem | median | worst | best run | band | best library | ceiling | CPU s | |');
  console.log('|---|---|---|---|---|---|---|---|---|');
  for (const [problem, band, best, ceiling] of FRONTS) {
    const front = readFront(problem.id);
    const { values, cpu } = await measureSeeds(problem, ({ feasible }) => normalisedHypervolume(feasible, front));
    const median = values[SEEDS >> 1];
    const verdict = median >= best ? 'above best' : median >= band ? 'in band' : 'BELOW BAND';
    const figures = [median, values[0], values[SEEDS - 1], band, best, ceiling].map((value) => value.toFixed(5));
    console.log(`| ${problem.id} | ${figures.join(' | ')} | ${cpu.toFixed(2)} | ${verdict} |`);
  }
  console.log('\n| problem | median | worst | best run | best known | CPU s |');
  console.log('|---|---|---|---|---|---|');
  for (const [problem, known] of SINGLES) {
    const { values, cpu } = await measureSeeds(problem, lowest);
    const figures = [values[SEEDS >> 1], values[SEEDS - 1], values[0], known].map((value) => value.toPrecision(11));
    console.log(`| ${problem.id} | ${figures.join(' | ')} | ${cpu.toFixed(2)} |`);
  }
  console.log('\nCPU is the median of whole runs, the problem itself included; the bar for ZDT1 is 0.5 s.');
}

function lowest({ feasible }: BenchmarkRun): number {
  return feasible.reduce((low, member) => Math.min(low, member.f[0]), Infinity);
}

/** Values in rising order and the median CPU time. */
async function measureSeeds(problem: BenchmarkProblem, value: (run: BenchmarkRun) => number) {
  const values: number[] = [];
  const times: number[] = [];
  for (let seed = 1; seed <= SEEDS; seed++) {
    const run = await runBenchmark(problem, `bench ${seed}`);
    values.push(value(run));
    times.push(run.cpu);
  }
  values.sort((a, b) => a - b);
  times.sort((a, b) => a - b);
  return { values, cpu: times[SEEDS >> 1] };
}
