/** Requests for tests, and an evaluator that answers at once with figures that tell the design. */

import { fileURLToPath } from 'node:url';
import { loadEngine } from '../../src/config/files.ts';
import type { EvaluationRequest, EvaluationResult, Evaluator } from '../../src/evaluation/evaluation.ts';
import { assessment, result, runs } from '../support/fixtures.ts';

const reading = await loadEngine(fileURLToPath(new URL('../../configs/engines/class-50-cm.yaml', import.meta.url)));
if (!reading.ok) throw new Error('the engine of the tests cannot be read');

/** Engines that differ in their mixture. */
export function requests(count: number): EvaluationRequest[] {
  if (!reading.ok) return [];
  const { engine, brief } = reading;
  return Array.from({ length: count }, (_, i) => ({
    engine: { ...engine, name: `n${i}`, feed: { ...engine.feed, equivalenceRatio: 0.8 + i / 1000 } },
    brief,
    fidelity: 'full',
    constantsDraw: null,
  }));
}

/** What the stand-in finds for a request: a thrust that follows from the mixture alone. */
export function answerTo({ engine }: EvaluationRequest): EvaluationResult {
  return result(runs({ thrust: 100 * engine.feed.equivalenceRatio }), assessment());
}

export class StandIn implements Evaluator {
  asked = 0;

  async evaluate(batch: readonly EvaluationRequest[]): Promise<EvaluationResult[]> {
    this.asked += batch.length;
    return batch.map(answerTo);
  }

  async close(): Promise<void> {}
}
