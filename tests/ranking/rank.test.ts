import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RankingWishes } from '../../src/config/study.ts';
import { type RankInput, rankFinalists } from '../../src/ranking/rank.ts';
import { summary } from '../support/fixtures.ts';

const WEIGHTED: RankingWishes = { tsfcWeight: 0.5, lifeWeight: 0.5, method: 'weighted', tsfcBound: null };

function finalist(tsfc: number, life: number, over: Partial<RankInput['robustness']> = {}, broken = 0): RankInput {
  return {
    summary: summary({ tsfc, valveLife: life, violations: broken > 0 ? [{ id: 'thrust', violation: broken }] : [] }),
    robustness: {
      draws: 64,
      sustainChance: 1,
      feasibleChance: 1,
      tsfc: { low: tsfc * 0.9, median: tsfc, high: tsfc * 1.1 },
      thrust: { low: 120, median: 140, high: 160 },
      frequency: null,
      valveLife: { low: life / 3, median: life, high: life * 3 },
      fuelFlow: null,
      ...over,
    },
  };
}

function order(inputs: RankInput[], wishes: RankingWishes = WEIGHTED): number[] {
  return rankFinalists(inputs, wishes, 0.8).map(({ index }) => index);
}

describe('ranking by robust values', () => {
  it('the lucky nominal figure does not rank: a wide band or a thin chance costs', () => {
    const steady = finalist(7.5e-5, 2400);
    const lucky = finalist(7.5e-5, 2400, { tsfc: { low: 6e-5, median: 8.5e-5, high: 12e-5 } });
    lucky.summary.tsfc = 6e-5;
    expect(order([lucky, steady])).toEqual([1, 0]);
    const risky = finalist(7.4e-5, 2500, { feasibleChance: 0.3 });
    const other = finalist(9e-5, 1000);
    expect(order([risky, steady, other])[0]).toBe(1);
  });

  it('weights decide between fuel and life', () => {
    const thrifty = finalist(6e-5, 600);
    const lasting = finalist(9e-5, 6000);
    expect(order([thrifty, lasting], { ...WEIGHTED, tsfcWeight: 0.9, lifeWeight: 0.1 })).toEqual([0, 1]);
    expect(order([thrifty, lasting], { ...WEIGHTED, tsfcWeight: 0.1, lifeWeight: 0.9 })).toEqual([1, 0]);
  });

  it('the knee is the point that bulges farthest from the line between the ends', () => {
    const inputs = [finalist(6e-5, 600), finalist(6.3e-5, 4500), finalist(9e-5, 6000)];
    expect(order(inputs, { ...WEIGHTED, method: 'knee' })[0]).toBe(1);
  });

  it('best life within the bound on TSFC', () => {
    const inputs = [finalist(6e-5, 600), finalist(7e-5, 3000), finalist(9e-5, 6000)];
    const ranked = order(inputs, { ...WEIGHTED, method: 'life-at-bounded-tsfc', tsfcBound: 8e-5 });
    expect(ranked).toEqual([1, 0, 2]);
  });

  it('what breaks a wish or seldom runs stands below all that is feasible, least broken first', () => {
    const inputs = [
      finalist(5e-5, 9000, {}, 0.5),
      finalist(5e-5, 9000, {}, 0.1),
      finalist(9e-5, 600),
      finalist(5e-5, 9000, { sustainChance: 0.6 }),
    ];
    const ranked = rankFinalists(inputs, WEIGHTED, 0.8);
    expect(ranked[0].index).toBe(2);
    expect(ranked.map(({ feasible }) => feasible)).toEqual([true, false, false, false]);
    expect(ranked.slice(1).map(({ index }) => index)).toEqual([1, 3, 0]);
  });

  it('a design that is better in both never ranks below the one it beats, by any method', () => {
    const one = fc.record({
      tsfc: fc.double({ min: 5e-5, max: 2e-4, noNaN: true }),
      life: fc.double({ min: 60, max: 1e5, noNaN: true }),
    });
    const method = fc.constantFrom<RankingWishes['method']>('weighted', 'knee', 'life-at-bounded-tsfc');
    fc.assert(
      fc.property(fc.array(one, { minLength: 2, maxLength: 8 }), method, (points, chosen) => {
        const inputs = points.map(({ tsfc, life }) => finalist(tsfc, life));
        const ranked = rankFinalists(inputs, { ...WEIGHTED, method: chosen, tsfcBound: 1e-4 }, 0.8);
        ranked.forEach((first, place) => {
          for (const later of ranked.slice(place + 1)) {
            const beaten = later.tsfc! < first.tsfc! * (1 - 1e-9) && later.life! > first.life! * (1 + 1e-9);
            if (!beaten) continue;
            expect(first.nonDominated).toBe(false);
            expect(later.score).toBe(first.score);
          }
        });
        expect(ranked.some(({ nonDominated }) => nonDominated)).toBe(true);
      }),
      { numRuns: 300, seed: 5 },
    );
  });
});
