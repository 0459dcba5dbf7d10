/** What the search asks of the evaluator, and how answers that are already stored are put in. */
import type { Outcome } from './outcome.ts';

export interface EvaluationOrder {
  /** 0, 1, 2, … in the order of asking. */
  id: number;
  /** SearchProblem.id. */
  problem: string;
  x: number[];
  fidelity: 'screen' | 'full';
}

export interface Answering {
  /** Outcomes in the order of the batch, whatever the order of completion. */
  evaluate(batch: EvaluationOrder[]): Promise<Outcome[]>;
  /** Stored outcome of an evaluation, or undefined; known ones are not sent to `evaluate`. */
  replay?(order: EvaluationOrder): Outcome | undefined;
}

/** Outcomes in the order of the orders. Throws RangeError when the evaluator returns the wrong number. */
export async function answer(by: Answering, orders: readonly EvaluationOrder[]): Promise<Outcome[]> {
  const outcomes = orders.map((order) => by.replay?.(order));
  const unknown = orders.filter((_, n) => outcomes[n] === undefined);
  if (unknown.length > 0) {
    const fresh = await by.evaluate(unknown);
    if (fresh.length !== unknown.length) {
      throw new RangeError(`${unknown.length} evaluations were ordered and ${fresh.length} outcomes came back.`);
    }
    let next = 0;
    for (let n = 0; n < outcomes.length; n++) outcomes[n] ??= fresh[next++];
  }
  return outcomes as Outcome[];
}
