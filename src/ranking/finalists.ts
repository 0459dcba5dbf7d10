/** Which designs are looked at closely: the best of every architecture that works, then the best of the rest, no two alike. */
import type { RankingWishes, Study } from '../config/study.ts';
import type { EvaluationSummary } from '../evaluation/evaluation.ts';
import type { ArchitectureSpace } from '../space/architecture.ts';

export interface JudgedDesign {
  /** Architecture.id. */
  architecture: string;
  x: number[];
  summary: EvaluationSummary;
}

/** Designs of one architecture nearer than this (root mean square of coordinate differences over their ranges) count as alike. */
const ALIKE = 0.06;

/**
 * At most study.search.finalists designs out of those that ran. Feasible ones come first; when none is, the least-violating of
 * each architecture are taken, so that the report can say what stopped them.
 */
export function chooseFinalists(
  study: Study,
  spaces: readonly ArchitectureSpace[],
  designs: readonly JudgedDesign[],
): JudgedDesign[] {
  const { finalists } = study.search;
  const running = designs.filter(
    ({ summary }) => summary.status === 'ok' && summary.tsfc !== null && summary.valveLife !== null,
  );
  const feasible = running.filter(({ summary }) => summary.violations.length === 0);
  const pool = feasible.length > 0 ? byScore(feasible, study.ranking) : byViolation(running);
  const chosen: JudgedDesign[] = [];
  const take = (design: JudgedDesign): void => {
    if (chosen.length < finalists && !chosen.some((other) => alike(spaces, design, other))) chosen.push(design);
  };
  const champions = new Map<string, JudgedDesign>();
  for (const design of pool) if (!champions.has(design.architecture)) champions.set(design.architecture, design);
  // Half of the places at least are held for the best overall; one champion each for the others as far as places go.
  const held = pool.length > champions.size ? Math.floor(finalists / 2) : 0;
  for (const design of [...champions.values()].slice(0, Math.max(1, finalists - held))) take(design);
  for (const design of spread(pool)) take(design);
  for (const design of pool) take(design);
  return chosen;
}

/** Nominal score as in the ranking, over the spans of the pool; ties by order. */
function byScore(pool: readonly JudgedDesign[], wishes: RankingWishes): JudgedDesign[] {
  const fuel = pool.map(({ summary }) => summary.tsfc!);
  const life = pool.map(({ summary }) => Math.log(Math.max(1e-3, summary.valveLife!)));
  const [leastFuel, mostFuel] = endsOf(fuel);
  const [shortest, longest] = endsOf(life);
  const score = (i: number): number => {
    const f = (fuel[i] - leastFuel) / (mostFuel - leastFuel || 1);
    const l = (longest - life[i]) / (longest - shortest || 1);
    if (wishes.method === 'life-at-bounded-tsfc') return l + (fuel[i] > (wishes.tsfcBound ?? Infinity) ? 1 : 0);
    const [a, b] = wishes.method === 'weighted' ? [wishes.tsfcWeight, wishes.lifeWeight] : [1, 1];
    return a * f + b * l;
  };
  return sortedBy(
    pool,
    pool.map((_, i) => score(i)),
  );
}

function endsOf(values: readonly number[]): [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return [low, high];
}

function byViolation(pool: readonly JudgedDesign[]): JudgedDesign[] {
  return sortedBy(
    pool,
    pool.map(({ summary }) => summary.violations.reduce((sum, { violation }) => sum + violation, 0)),
  );
}

function sortedBy(pool: readonly JudgedDesign[], keys: readonly number[]): JudgedDesign[] {
  return pool
    .map((_, i) => i)
    .sort((i, j) => keys[i] - keys[j] || i - j)
    .map((i) => pool[i]);
}

/** The ends of the trade first (least fuel, longest life), then the pool's order. */
function spread(pool: readonly JudgedDesign[]): JudgedDesign[] {
  if (pool.length === 0) return [];
  const least = pool.reduce((a, b) => (b.summary.tsfc! < a.summary.tsfc! ? b : a));
  const longest = pool.reduce((a, b) => (b.summary.valveLife! > a.summary.valveLife! ? b : a));
  return [least, longest];
}

function alike(spaces: readonly ArchitectureSpace[], a: JudgedDesign, b: JudgedDesign): boolean {
  if (a.architecture !== b.architecture) return false;
  const space = spaces.find(({ architecture }) => architecture.id === a.architecture);
  if (!space) throw new RangeError(`the architecture "${a.architecture}" is not in the study`);
  let sum = 0;
  space.variables.forEach((variable, i) => {
    const range = variable.kind === 'choice' ? 1 : variable.high - variable.low;
    const apart = variable.kind === 'choice' ? Number(a.x[i] !== b.x[i]) : (a.x[i] - b.x[i]) / (range || 1);
    sum += apart ** 2;
  });
  return Math.sqrt(sum / Math.max(1, space.variables.length)) < ALIKE;
}
