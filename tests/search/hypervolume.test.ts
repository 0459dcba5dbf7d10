/** Hypervolume against closed forms, inclusion–exclusion and Monte Carlo; subset choice against exhaustion. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hypervolume, hypervolume2d } from '../../src/search/hypervolume.ts';
import { referenceBeyond, truncateFront } from '../../src/search/hypervolume-contribution.ts';
import { nonDominated } from '../../src/search/non-dominated-sorting.ts';
import { createRandom } from '../../src/search/random.ts';
import { selectSubset } from '../../src/search/subset-selection.ts';

/** Union of boxes from each point to the reference, by inclusion and exclusion. */
function byInclusionExclusion(points: number[][], reference: number[]): number {
  let volume = 0;
  for (let mask = 1; mask < 1 << points.length; mask++) {
    const chosen = points.filter((_, i) => mask & (1 << i));
    const box = reference.reduce((v, r, k) => v * Math.max(0, r - Math.max(...chosen.map((p) => p[k]))), 1);
    volume += chosen.length % 2 === 1 ? box : -box;
  }
  return volume;
}

const coordinate = fc.integer({ min: 0, max: 12 });

describe('hypervolume', () => {
  it('of known sets', () => {
    expect(hypervolume([[1, 1]], [2, 3])).toBe(2);
    expect(hypervolume([[0, 0, 0]], [1, 2, 3])).toBe(6);
    expect(hypervolume([], [1, 1])).toBe(0);
    expect(hypervolume([[3, 0]], [2, 2])).toBe(0);
    expect(hypervolume([[1], [0.25]], [2])).toBe(1.75);
    // Three unit steps: 3 + 2 + 1 squares under the stair.
    expect(hypervolume([[0, 2], [1, 1], [2, 0]], [3, 3])).toBe(6); // biome-ignore format: one set
  });

  it('of the fronts of ZDT1 and of the sphere in the limit', () => {
    // ∫ (1.1 − (1 − √x)) dx over [0, 1] plus the strip to 1.1: 0.1 + 2/3 + 0.11 = 0.87667 (the curve's own integral).
    const dense = Array.from({ length: 20001 }, (_, i) => [i / 20000, 1 - Math.sqrt(i / 20000)]);
    expect(hypervolume2d(dense, [1.1, 1.1])).toBeCloseTo(0.1 + 2 / 3 + 0.11, 4);
    // An octant of the unit sphere leaves 1.1³ − π/6 = 0.8074.
    const sphere: number[][] = [];
    for (let i = 0; i <= 120; i++) {
      for (let j = 0; j <= 120; j++) {
        const [a, b] = [(i * Math.PI) / 240, (j * Math.PI) / 240];
        sphere.push([Math.cos(a) * Math.cos(b), Math.cos(a) * Math.sin(b), Math.sin(a)]);
      }
    }
    const volume = hypervolume(sphere, [1.1, 1.1, 1.1]);
    expect(volume).toBeLessThan(1.1 ** 3 - Math.PI / 6);
    expect(volume).toBeGreaterThan(1.1 ** 3 - Math.PI / 6 - 0.02);
  });

  it.each([2, 3])('equals inclusion–exclusion with %i objectives, ties and repeats included', (objectives) => {
    const set = fc.array(fc.array(coordinate, { minLength: objectives, maxLength: objectives }), { maxLength: 8 });
    fc.assert(
      fc.property(set, (points) => {
        const reference = [10, 11, 9].slice(0, objectives);
        expect(hypervolume(points, reference)).toBeCloseTo(byInclusionExclusion(points, reference), 9);
      }),
      { numRuns: 300 },
    );
  });

  it('agrees with Monte Carlo in space', () => {
    const random = createRandom('monte carlo');
    const points = Array.from({ length: 60 }, () => [random.uniform(), random.uniform(), random.uniform()]);
    let hits = 0;
    const draws = 200_000;
    for (let n = 0; n < draws; n++) {
      const q = [random.uniform(), random.uniform(), random.uniform()];
      if (points.some((p) => p[0] <= q[0] && p[1] <= q[1] && p[2] <= q[2])) hits++;
    }
    // Four standard errors of a proportion.
    expect(Math.abs(hypervolume(points, [1, 1, 1]) - hits / draws)).toBeLessThan(4 * Math.sqrt(0.25 / draws));
  });

  it('refuses more than three objectives', () => {
    expect(() => hypervolume([[0, 0, 0, 0]], [1, 1, 1, 1])).toThrow(RangeError);
  });
});

function randomFront(objectives: number, seed: number): number[][] {
  const random = createRandom(`front ${seed}`);
  const all = Array.from({ length: 40 }, () => Array.from({ length: objectives }, () => random.uniform()));
  return nonDominated(all).map((index) => all[index]);
}

describe('choosing from a front', () => {
  it.each([2, 3])('drops the least contributor, one after another, with %i objectives', (objectives) => {
    for (let seed = 0; seed < 30; seed++) {
      const front = randomFront(objectives, seed);
      if (front.length < 4) continue;
      const reference = referenceBeyond(front);
      let left = front.map((_, i) => i);
      // In the plane the two ends always stay.
      const ends = objectives === 2 ? [0, front.length - 1] : [];
      while (left.length > 3) {
        const without = (i: number) => left.filter((j) => j !== i).map((j) => front[j]);
        const loss = (i: number) => -hypervolume(without(i), reference);
        const removable = left.filter((i) => !ends.includes(i));
        const least = removable.reduce((a, b) => (loss(b) < loss(a) ? b : a));
        left = left.filter((i) => i !== least);
        expect(truncateFront(front, left.length).sort((a, b) => a - b)).toEqual(left);
      }
    }
  });

  it('finds the best subset in the plane', () => {
    for (let seed = 0; seed < 40; seed++) {
      const front = randomFront(2, seed);
      if (front.length < 5) continue;
      const reference = referenceBeyond(front);
      let best = 0;
      for (let a = 0; a < front.length; a++) {
        for (let b = a + 1; b < front.length; b++) {
          for (let c = b + 1; c < front.length; c++) {
            best = Math.max(best, hypervolume([front[a], front[b], front[c]], reference));
          }
        }
      }
      const chosen = selectSubset(front, 3).map((index) => front[index]);
      expect(chosen).toHaveLength(3);
      expect(hypervolume(chosen, reference)).toBeCloseTo(best, 12);
    }
  });

  it('comes within 1 − 1/e of the best subset in space', () => {
    for (let seed = 0; seed < 10; seed++) {
      const front = randomFront(3, seed);
      const reference = referenceBeyond(front);
      let best = 0;
      for (let a = 0; a < front.length; a++) {
        for (let b = a + 1; b < front.length; b++) best = Math.max(best, hypervolume([front[a], front[b]], reference));
      }
      const chosen = selectSubset(front, 2).map((index) => front[index]);
      expect(hypervolume(chosen, reference)).toBeGreaterThanOrEqual((1 - 1 / Math.E) * best);
    }
  });
});
