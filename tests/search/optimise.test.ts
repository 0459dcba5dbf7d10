/** Small runs on published problems reach stated levels; the whole table is made by the benchmark command. */
import { describe, expect, it } from 'vitest';
import { normalisedHypervolume, readFront, runBenchmark } from '../../src/bench/search.ts';
import * as problems from '../../src/bench/search-problems.ts';
import { Archive } from '../../src/search/archive.ts';
import { dominates } from '../../src/search/domination.ts';
import { optimise } from '../../src/search/optimise.ts';
import { judge, type Outcome } from '../../src/search/outcome.ts';
import { createRandom } from '../../src/search/random.ts';
import { evaluationBudget, firstReason, hypervolumeStall, timeLimit } from '../../src/search/termination.ts';

const ok = (objectives: number[], violations: number[] = []): Outcome => {
  return { status: 'ok', objectives, violations, reason: '' };
};

describe('optimise', () => {
  // Levels: what well-known libraries reach with 25,000 evaluations, here with the same.
  it.each([
    [problems.zdt1, 0.8694],
    [problems.zdt4, 0.8577],
    [problems.srn, 0.7059],
    [problems.osy, 0.9406],
  ])('reaches the band on $id', async (problem, band) => {
    const { feasible } = await runBenchmark(problem, 'test');
    expect(normalisedHypervolume(feasible, readFront(problem.id))).toBeGreaterThanOrEqual(band);
  });

  it('meets the best-known pressure vessel with whole sixteenths', async () => {
    const { feasible } = await runBenchmark(problems.pressureVessel, 'test');
    // 6059.7143350484: 13/16 and 7/16 inch (published optimum).
    expect(feasible[0].f[0]).toBeCloseTo(6059.7143350484, 4);
    expect(feasible[0].x.slice(0, 2)).toEqual([13, 7]);
  });

  it('gives the same bytes for the same seed, and others for another', async () => {
    const run = async (seed: string) =>
      JSON.stringify(
        await runBenchmark(problems.osy, seed, { population: 40, evaluations: 2000 }).then((r) => r.feasible),
      );
    const first = await run('a');
    expect(await run('a')).toBe(first);
    expect(await run('b')).not.toBe(first);
  });

  it('never asks twice for one design and stops when none is left', async () => {
    const asked = new Set<string>();
    const problem = {
      id: 'tiny',
      objectiveCount: 2,
      variables: [
        { kind: 'integer' as const, name: 'i', label: '', low: 0, high: 4, unit: '' },
        { kind: 'choice' as const, name: 'c', label: '', options: ['a', 'b', 'c'] },
      ],
    };
    const result = await optimise(
      problem,
      (designs) =>
        designs.map((x) => {
          expect(asked.has(x.join())).toBe(false);
          asked.add(x.join());
          return ok([x[0] + x[1], 4 - x[0] + x[1]]);
        }),
      createRandom('tiny'),
      { population: 6, evaluations: 1000 },
    );
    expect(result.evaluations).toBe(asked.size);
    expect(asked.size).toBeGreaterThanOrEqual(14);
    expect(result.population.slice(0, 5).map(({ x }) => x[1])).toEqual([0, 0, 0, 0, 0]);
  });

  it('climbs out of graded failures and out of forbidden geometry', async () => {
    const problem = { ...problems.zdt1, id: 'climb', check: (x: readonly number[]) => refusal(x) };
    const refusal = (x: readonly number[]) =>
      x[1] < 0.9 ? { violations: [0.9 - x[1]], reason: 'does not close' } : null;
    const result = await optimise(
      problem,
      (designs) =>
        designs.map((x) => {
          expect(x[1]).toBeGreaterThanOrEqual(0.9);
          const grade = 0.97 - x[2];
          if (grade > 0) return { status: 'failed', objectives: null, violations: [grade], reason: 'does not follow' };
          return ok(problem.evaluate(x).f);
        }),
      createRandom('climb'),
      { population: 20, evaluations: 600 },
    );
    expect(result.refused).toBeGreaterThan(0);
    expect(result.population.filter(({ tier }) => tier === 0).length).toBeGreaterThanOrEqual(15);
  });

  it('refuses an evaluator that breaks its contract', async () => {
    const settings = { population: 10, evaluations: 20 };
    const random = createRandom('bad');
    await expect(optimise(problems.zdt1, () => [], random, settings)).rejects.toThrow(/10 designs .* 0 outcomes/);
    const short = (designs: number[][]) => designs.map(() => ok([1]));
    await expect(optimise(problems.zdt1, short, random, settings)).rejects.toThrow(/returned 1 objectives/);
  });
});

describe('archive', () => {
  it.each([2, 3])('holds what no other dominates, with %i objectives', (objectives) => {
    const random = createRandom('archive');
    const archive = new Archive(1000);
    const problem = { id: 'p', variables: [], objectiveCount: objectives };
    const all: number[][] = [];
    for (let id = 0; id < 800; id++) {
      const f = Array.from({ length: objectives }, () => Math.floor(random.uniform() * 30));
      all.push(f);
      archive.add(judge(id, problem, [id], ok(f)));
    }
    const expected = new Set(all.filter((f) => !all.some((other) => dominates(other, f))).map(String));
    expect(archive.members.map(({ f }) => String(f)).sort()).toEqual([...expected].sort());
  });

  it('stays bounded and keeps the ends', () => {
    const archive = new Archive(10);
    const problem = { id: 'p', variables: [], objectiveCount: 2 };
    for (let id = 0; id <= 200; id++) archive.add(judge(id, problem, [id], ok([id, 200 - id])));
    expect(archive.members.length).toBeLessThanOrEqual(20);
    expect(archive.members[0].f).toEqual([0, 200]);
    expect(archive.members[archive.members.length - 1].f).toEqual([200, 0]);
  });
});

describe('stopping rules', () => {
  const at = (evaluations: number, hypervolume: number) => ({ evaluations, generation: 1, hypervolume });

  it('name what ended the search', () => {
    let now = 100;
    const rules = [evaluationBudget(50), timeLimit(10, () => now), hypervolumeStall(2, 0.01)];
    expect(firstReason(rules, at(10, 1))).toBeNull();
    expect(firstReason(rules, at(20, 1.5))).toBeNull();
    expect(firstReason(rules, at(30, 1.505))).toBeNull();
    expect(firstReason(rules, at(40, 1.51))).toMatch(/hypervolume gained less than 1 %/);
    now = 111;
    expect(firstReason(rules, at(45, 2))).toMatch(/time limit of 10 s/);
    expect(firstReason(rules, at(51, 3))).toMatch(/budget of 50/);
  });

  it('do not call nothing a stall', () => {
    const rule = hypervolumeStall(1);
    for (let n = 0; n < 10; n++) expect(rule.check(at(n, 0))).toBeNull();
  });
});
