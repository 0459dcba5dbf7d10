import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess } from '../../shared/checks/assess.ts';
import { bentEngine, inputOf, poppetEngine, reedEngine } from './fixtures.ts';

const ODD = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, -1, 1e300, 1e-300, -1e9];

/** Paths of every number in a tree. */
function numbers(value: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (typeof value === 'number') return [path];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => numbers(inner, [...path, key]));
}

function put(root: unknown, path: (string | number)[], value: number): void {
  let at = root as Record<string | number, unknown>;
  for (const key of path.slice(0, -1)) at = at[key] as Record<string | number, unknown>;
  at[path.at(-1)!] = value;
}

describe('assess', () => {
  it('never throws and never answers with NaN or infinity, whatever number of the performance is spoilt', () => {
    const engines = [reedEngine, poppetEngine, bentEngine];
    fc.assert(
      fc.property(
        fc.nat(2),
        fc.array(fc.tuple(fc.nat(), fc.constantFrom(...ODD)), { minLength: 1, maxLength: 4 }),
        (which, spoils) => {
          const input = inputOf(engines[which]());
          const paths = numbers(input.performance);
          for (const [pick, odd] of spoils) put(input.performance, paths[pick % paths.length], odd);
          const answer = assess(input);
          const spoilt = numbers(answer).filter(
            (path) => !Number.isFinite(path.reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], answer)),
          );
          expect(spoilt).toEqual([]);
          for (const check of answer.checks) expect(check.sentence).not.toMatch(/NaN|undefined/);
        },
      ),
      { numRuns: 120, seed: 4 },
    );
  });

  it('survives odd engines', () => {
    fc.assert(
      fc.property(fc.nat(2), fc.nat(), fc.constantFrom(...ODD), (which, pick, odd) => {
        const input = inputOf([reedEngine, poppetEngine, bentEngine][which]());
        const paths = numbers(input.engine);
        put(input.engine, paths[pick % paths.length], odd);
        const answer = assess(input);
        expect(Number.isFinite(answer.mass)).toBe(true);
        expect(Number.isFinite(answer.overallLength)).toBe(true);
        for (const check of answer.checks) expect(check.value === null || Number.isFinite(check.value)).toBe(true);
      }),
      { numRuns: 100, seed: 5 },
    );
  });

  it('is pure: the same input twice gives the same bytes and is not changed', () => {
    const input = inputOf(reedEngine());
    const before = JSON.stringify(input);
    expect(JSON.stringify(assess(input))).toBe(JSON.stringify(assess(input)));
    expect(JSON.stringify(input)).toBe(before);
  });
});
