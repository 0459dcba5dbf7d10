/** A search of one problem with one population. */
import { Evolution } from './evolution.ts';
import { judge, type Member, type Outcome, type SearchProblem } from './outcome.ts';
import type { Generator } from './random.ts';
import type { VariationSettings } from './variation.ts';

export interface OptimiseSettings {
  population: number;
  /** Evaluations in all; the last generation is cut to fit. */
  evaluations: number;
  variation?: VariationSettings;
}

export interface OptimiseResult {
  /** The final population: feasible designs that stand best for everything found, then the least-violating. */
  population: Member[];
  evaluations: number;
  refused: number;
}

/** Outcomes in the order of the designs. */
export type EvaluateBatch = (designs: number[][]) => Outcome[] | Promise<Outcome[]>;

/** Same problem, outcomes and generator: same result. Throws RangeError when the evaluator returns the wrong number of outcomes or objectives. */
export async function optimise(
  problem: SearchProblem,
  evaluateBatch: EvaluateBatch,
  random: Generator,
  settings: OptimiseSettings,
): Promise<OptimiseResult> {
  const evolution = new Evolution(problem, { ...settings, horizon: settings.evaluations }, random);
  let evaluations = 0;
  while (evaluations < settings.evaluations) {
    const designs = evolution.ask(Math.min(settings.population, settings.evaluations - evaluations));
    if (designs.length === 0) break;
    const outcomes = await evaluateBatch(designs);
    if (outcomes.length !== designs.length) {
      throw new RangeError(`${designs.length} designs were sent and ${outcomes.length} outcomes came back.`);
    }
    const first = evaluations;
    evolution.tell(designs.map((x, k) => judge(first + k, problem, x, outcomes[k])));
    evaluations += designs.length;
  }
  return { population: evolution.best(settings.population), evaluations, refused: evolution.refused };
}
