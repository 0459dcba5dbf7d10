/**
 * An evaluator that invents its answers from the engine's figures, in microseconds: the same engine, the same answer. It
 * stands in for the model where a million evaluations are to pass through search and store, and nowhere else.
 */
import type { Check } from '../../../shared/checks/check.ts';
import type { Engine } from '../../../shared/engine/engine.ts';
import type { EvaluationResult, Evaluator } from '../../evaluation/evaluation.ts';
import { Interrupted } from '../../evaluation/evaluation.ts';
import { failedResult } from '../../evaluation/failed-result.ts';

const CAUTIONS = [
  'stop-impact',
  'shell-oxidation',
  'thermal-growth',
  'noise-exposure',
  'noise-stand-off',
  'hot-surface',
];

const check = (id: string, verdict: Check['verdict'], margin: number | null): Check =>
  ({ id, verdict, margin, binding: verdict === 'fail' }) as Check;

/** Between 0 and 1, without rhyme but repeatable. */
function scattered(value: number): number {
  const turned = Math.sin(value * 12.9898) * 43758.5453;
  return turned - Math.floor(turned);
}

function inventedResult({ sections }: Engine, screen: boolean): EvaluationResult {
  const length = sections.reduce((sum, section) => sum + section.length, 0);
  const diameter = sections.reduce((sum, section) => sum + section.startDiameter, 0) / sections.length;
  const chance = scattered(length + 7 * diameter);
  const result = failedResult('');
  if (chance < 0.3) {
    const message = 'It dies: the mixture that is drawn in does not catch.';
    result.performance.verdict = { kind: 'dies', diedAtCycle: Math.floor(30 * chance), cause: 'no ignition', message };
    return result;
  }
  const tsfc = 5e-5 * (1.2 + 0.4 * Math.cos(9 * length) + 0.1 * chance + (screen ? 0.05 : 0));
  const thrust = 100 * (0.5 + scattered(diameter));
  const life = 10 ** (4 + 1.5 * Math.sin(9 * length + 0.7) + 0.2 * scattered(chance));
  result.performance.verdict = { kind: 'self-sustaining', message: 'It runs.' } as typeof result.performance.verdict;
  result.performance.running = {
    tsfc,
    thrust,
    frequency: 340 / (4 * length),
    fuelFlow: tsfc * thrust,
    valve: { followRatio: 0.8 + chance, forceOffered: 4.7 * chance, forceNeeded: 5.3 * chance },
  } as NonNullable<EvaluationResult['performance']['running']>;
  result.assessment.mass = 6 * diameter + length;
  result.assessment.valveLife = { median: life } as EvaluationResult['assessment']['valveLife'];
  result.assessment.checks = CAUTIONS.map((id) => check(id, 'caution', 0.01));
  if (thrust < 90) result.assessment.checks.push(check('thrust', 'fail', thrust / 90 - 1));
  return result;
}

export const INVENTED: Evaluator = {
  async evaluate(requests, { onResult, signal } = {}) {
    if (signal?.aborted) throw new Interrupted();
    const results = requests.map(({ engine, fidelity }) => inventedResult(engine, fidelity === 'screen'));
    await Promise.all(results.map((result, index) => onResult?.(index, result)));
    return results;
  },
  async close() {},
};
