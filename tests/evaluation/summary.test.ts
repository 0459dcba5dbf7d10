import { describe, expect, test } from 'vitest';
import type { Check } from '../../shared/checks/check.ts';
import type { ValveMotion, Verdict } from '../../shared/engine/performance.ts';
import type { EvaluationRequest, EvaluationResult } from '../../src/evaluation/evaluation.ts';
import { failedResult } from '../../src/evaluation/failed-result.ts';
import { pathOfNotFinite } from '../../src/evaluation/not-finite.ts';
import { requestKey } from '../../src/evaluation/request-key.ts';
import { summarise } from '../../src/evaluation/summary.ts';

const check = (id: string, more: Partial<Check>): Check => ({
  id,
  title: id,
  verdict: 'pass',
  value: 1,
  limit: 1,
  unit: '',
  margin: 0,
  sentence: '',
  source: '',
  binding: true,
  ...more,
});

function result(
  verdict: Verdict,
  more: { running?: object; valve?: object; checks?: Check[]; life?: number | null } = {},
): EvaluationResult {
  const failed = failedResult('x');
  const life = more.life === undefined ? 60 : more.life;
  return {
    performance: {
      ...failed.performance,
      verdict,
      running: (more.running ?? null) as never,
      failedValve: (more.valve ?? null) as ValveMotion | null,
    },
    assessment: {
      ...failed.assessment,
      checks: more.checks ?? [],
      valveLife: life === null ? null : { low: life / 2, median: life, high: 2 * life },
    },
  };
}

const runs: Verdict = { kind: 'self-sustaining', start: { airPressure: 1, duration: 1 }, message: '' };
const dies = (diedAtCycle: number): Verdict => ({ kind: 'dies', cause: 'blow-out', diedAtCycle, message: '' });
const running = { tsfc: 1e-4, thrust: 100, frequency: 50, fuelFlow: 0.01, valve: null };

describe('the short answer', () => {
  test('of a running engine: figures, broken binding checks by how much, and flags', () => {
    const checks = [
      check('a', { verdict: 'fail', margin: -0.25 }),
      check('b', { verdict: 'fail', margin: null }),
      check('c', { verdict: 'fail', margin: -2, binding: false }),
      check('d', { verdict: 'caution', margin: 0.05 }),
      check('e', {}),
    ];
    const summary = summarise(result(runs, { running, checks }));
    expect(summary).toMatchObject({ status: 'ok', tsfc: 1e-4, thrust: 100, valveLife: 60, reason: '' });
    expect(summary.violations).toEqual([
      { id: 'a', violation: 0.25 },
      { id: 'b', violation: 1 },
    ]);
    expect(summary.flags).toEqual(['c', 'd']);
  });

  test('of a dying engine: the longer it lives, the nearer it is to running', () => {
    const violation = (cycles: number) => summarise(result(dies(cycles))).violations[0].violation;
    expect([violation(0), violation(5), violation(40)]).toEqual(
      [violation(0), violation(5), violation(40)].toSorted((a, b) => b - a),
    );
    expect(violation(40)).toBeGreaterThan(0);
    expect(summarise(result(dies(3)))).toMatchObject({ status: 'dies', reason: 'blow-out', tsfc: null });
  });

  test('of a failure: a status with its reason and no figures', () => {
    expect(summarise(failedResult('an odd corner'))).toMatchObject({
      status: 'model failure',
      reason: 'an odd corner',
      mass: null,
      violations: [],
    });
    expect(summarise(failedResult('too long', 'timed out'))).toMatchObject({ status: 'timed out', reason: 'too long' });
    expect(summarise(result(runs, { running, life: null })).status).toBe('model failure');
  });
});

test('a number that is not finite is found wherever it hides', () => {
  expect(pathOfNotFinite({ a: 1, b: { c: [0, { d: Number.NaN }] } })).toBe('b.c[1].d');
  expect(pathOfNotFinite({ a: [1, 2, Infinity] })).toBe('a[2]');
  expect(pathOfNotFinite({ a: [1, null, 'x'], b: undefined })).toBeNull();
});

test('equal questions have equal keys; every part that matters changes the key, the name does not', () => {
  const request = {
    engine: { name: 'a', shell: { thickness: 1 } },
    brief: { currency: 'EUR' },
    fidelity: 'full',
    constantsDraw: null,
  } as unknown as EvaluationRequest;
  const key = requestKey(request, 'm');
  const changed = (more: object) => requestKey({ ...request, ...more } as EvaluationRequest, 'm');
  expect(key).toMatch(/^[0-9a-f]{64}$/);
  expect(changed({ engine: { shell: { thickness: 1 }, name: 'b' } })).toBe(key);
  const others = [
    changed({ engine: { name: 'a', shell: { thickness: 1.0000000000000002 } } }),
    changed({ brief: { currency: 'USD' } }),
    changed({ fidelity: 'screen' }),
    changed({ constantsDraw: [0] }),
    requestKey(request, 'n'),
  ];
  expect(new Set([key, ...others]).size).toBe(6);
});
