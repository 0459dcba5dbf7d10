/** Domination, sorting and crowding against their definitions. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crowdingDistance } from '../../src/search/crowding.ts';
import { dominates, dominatesConstrained, ViolationScale } from '../../src/search/domination.ts';
import { nonDominatedSort } from '../../src/search/non-dominated-sorting.ts';
import { FAILED, FAILED_UNGRADED, FEASIBLE, INFEASIBLE, judge, type Outcome } from '../../src/search/outcome.ts';

const problem = { id: 'p', variables: [], objectiveCount: 2 };

function member(id: number, outcome: Partial<Outcome>) {
  return judge(id, problem, [id], { status: 'ok', objectives: [0, 0], violations: [], reason: '', ...outcome });
}

/** Few distinct values, so that ties and repeats are common. */
const points = (objectives: number) =>
  fc.array(fc.array(fc.integer({ min: 0, max: 6 }), { minLength: objectives, maxLength: objectives }), {
    maxLength: 60,
  });

/** By the definition: a front is what nothing left over dominates. */
function sortByDefinition(all: number[][]): number[][] {
  let left = all.map((_, i) => i);
  const fronts: number[][] = [];
  while (left.length > 0) {
    const front = left.filter((i) => !left.some((j) => dominates(all[j], all[i])));
    fronts.push(front);
    left = left.filter((i) => !front.includes(i));
  }
  return fronts;
}

describe('non-dominated sorting', () => {
  it.each([1, 2, 3, 4])('equals the definition with %i objectives', (objectives) => {
    fc.assert(
      fc.property(points(objectives), (all) => {
        const fronts = nonDominatedSort(all).map((front) => [...front].sort((a, b) => a - b));
        expect(fronts).toEqual(sortByDefinition(all));
      }),
    );
  });
});

describe('domination', () => {
  it('is irreflexive, asymmetric and transitive, constraints included', () => {
    const outcome = fc.record({
      status: fc.constantFrom<'ok' | 'failed'>('ok', 'failed'),
      objectives: fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 3 })).map((f) => [...f]),
      violations: fc.array(fc.integer({ min: -1, max: 2 }), { maxLength: 2 }),
    });
    fc.assert(
      fc.property(outcome, outcome, outcome, (x, y, z) => {
        const [a, b, c] = [member(1, x), member(2, y), member(3, z)];
        expect(dominatesConstrained(a, a)).toBe(false);
        if (dominatesConstrained(a, b)) expect(dominatesConstrained(b, a)).toBe(false);
        if (dominatesConstrained(a, b) && dominatesConstrained(b, c)) expect(dominatesConstrained(a, c)).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  it('puts what runs before what fails, and graded failures before ungraded', () => {
    const order = [
      member(0, { objectives: [9, 9] }),
      member(1, { violations: [-1, 7] }),
      member(2, { status: 'failed', objectives: null, violations: [0.1] }),
      member(3, { status: 'failed', objectives: null, violations: [0.4] }),
      member(4, { status: 'failed', objectives: null }),
    ];
    expect(order.map(({ tier }) => tier)).toEqual([FEASIBLE, INFEASIBLE, FAILED, FAILED, FAILED_UNGRADED]);
    for (let i = 0; i + 1 < order.length; i++) expect(dominatesConstrained(order[i], order[i + 1])).toBe(true);
  });

  it('turns results that are not finite into failures', () => {
    expect(member(1, { objectives: [Number.NaN, 1] }).tier).toBe(FAILED_UNGRADED);
    expect(member(2, { objectives: [Infinity, 1] }).f).toEqual([]);
    expect(member(3, { violations: [Number.NaN] }).tier).toBe(FAILED_UNGRADED);
  });

  it('measures each constraint against the largest violation seen', () => {
    const both = [member(1, { violations: [1000, 0.5] }), member(2, { violations: [0, 1] })];
    const scale = new ViolationScale();
    scale.observe(both);
    scale.apply(both);
    expect(both.map(({ violation }) => violation)).toEqual([1.5, 1]);
  });
});

describe('crowding distance', () => {
  it('is the sum of neighbour gaps over the extent', () => {
    const distance = crowdingDistance([
      [0, 10],
      [4, 2],
      [1, 6],
      [10, 0],
    ]);
    expect([...distance]).toEqual([Infinity, 9 / 10 + 6 / 10, 4 / 10 + 8 / 10, Infinity]);
  });
});
