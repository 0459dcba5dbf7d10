/** Fair shares, moving budget, two fidelities, and the same bytes after any cut. */
import { deserialize, serialize } from 'node:v8';
import { describe, expect, it } from 'vitest';
import { zdt1 } from '../../src/bench/search-problems.ts';
import { Allocation } from '../../src/search/allocation.ts';
import {
  ARCHITECTURE_SEARCH,
  type ArchitectureSearch,
  searchArchitectures,
} from '../../src/search/architecture-search.ts';
import { dominates } from '../../src/search/domination.ts';
import type { EvaluationOrder } from '../../src/search/evaluation-order.ts';
import type { Outcome } from '../../src/search/outcome.ts';
import { passesThrough, type SearchState } from '../../src/search/search-state.ts';

const problems = [
  { ...zdt1, id: 'good' },
  { ...zdt1, id: 'worse' },
  { ...zdt1, id: 'dead' },
  {
    ...zdt1,
    id: 'tight',
    check: (x: readonly number[]) => (x[0] < 0.7 ? { violations: [0.7 - x[0]], reason: 'does not fit' } : null),
  },
];

/** A screen that is off by a tenth; one architecture is dominated, one never runs. */
function outcome({ problem, x, fidelity }: EvaluationOrder): Outcome {
  if (problem === 'dead') {
    return { status: 'failed', objectives: null, violations: [0.5 + x[1]], reason: 'valve does not follow' };
  }
  const bias = fidelity === 'screen' ? 1.1 : 1;
  const shift = problem === 'worse' ? 2 : 0;
  return { status: 'ok', objectives: zdt1.evaluate(x).f.map((v) => v * bias + shift), violations: [], reason: '' };
}

function search(overrides: Partial<ArchitectureSearch> = {}, settings = {}): ArchitectureSearch {
  return {
    problems,
    seed: 'test',
    settings: { ...ARCHITECTURE_SEARCH, evaluations: 1500, population: 32, ...settings },
    evaluate: async (batch) => batch.map(outcome),
    ...overrides,
  };
}

describe('search over architectures', () => {
  it('starves nobody, moves the budget to where it pays and keeps the least-violating', async () => {
    const result = await searchArchitectures(search());
    const [good, worse, dead, tight] = result.problems;
    const designs = result.problems.reduce((sum, { designs }) => sum + designs, 0);
    // A floor of 0.15 of an even deal.
    for (const { designs: own } of result.problems)
      expect(own).toBeGreaterThanOrEqual(Math.floor((0.15 * designs) / 4) - 1);
    expect(good.designs).toBeGreaterThan(1.5 * dead.designs);
    expect(good.designs).toBeGreaterThan(worse.designs);
    expect(good.leastViolating).toBeNull();
    expect(dead.running).toBe(0);
    expect(dead.leastViolating?.violation).toBeLessThan(0.6);
    expect(dead.failures[0].reason).toBe('valve does not follow');
    expect(dead.failures[0].count).toBe(dead.designs);
    expect(tight.refused).toBeGreaterThan(0);
    expect(tight.failures).toContainEqual({ reason: 'does not fit', count: tight.refused });
    for (const { x } of tight.population) expect(x[0]).toBeGreaterThanOrEqual(0.7);
    expect(result.front.map(({ problem }) => problem)).not.toContain('worse');
    for (const a of result.front) for (const b of result.front) expect(dominates(a.f, b.f)).toBe(false);
    expect(result.stoppedBecause).toMatch(/budget of 1500/);
  });

  it('decides on full runs only and says what screening saved', async () => {
    const full = new Map<number, Outcome>();
    const {
      front,
      screening,
      problems: found,
    } = await searchArchitectures(
      search({
        evaluate: async (batch) =>
          batch.map((order) => {
            const answer = outcome(order);
            if (order.fidelity === 'full') full.set(order.id, answer);
            return answer;
          }),
      }),
    );
    for (const { id, f } of front) expect(f).toEqual(full.get(id)?.objectives);
    expect(screening.full).toBe(full.size);
    expect(screening.spent).toBeCloseTo(0.25 * screening.screened + screening.full, 9);
    expect(screening.spent).toBeLessThanOrEqual(1500);
    expect(screening.withoutScreening).toBe(found.reduce((sum, { designs }) => sum + designs, 0));
    expect(screening.spent).toBeLessThan(screening.withoutScreening);
    // Dead designs are paid for at the screening rate but for the audits.
    const dead = found[2];
    expect(dead.full).toBeLessThan(0.5 * dead.designs);
    expect(screening.overturned).toBe(0);
    expect(screening.audited).toBe(dead.full);
  });

  it('stops believing a screen that fails what really runs', async () => {
    const { problems: found, screening } = await searchArchitectures(
      search({
        evaluate: async (batch) =>
          batch.map((order) =>
            order.fidelity === 'screen'
              ? { status: 'failed', objectives: null, violations: [1], reason: 'screen says no' }
              : outcome({ ...order, problem: 'good' }),
          ),
      }),
    );
    expect(screening.overturned).toBeGreaterThan(0);
    for (const { feasible } of found) expect(feasible).toBeGreaterThan(20);
  });

  it('runs without screening', async () => {
    const orders: EvaluationOrder[] = [];
    await searchArchitectures(
      search(
        {
          evaluate: async (batch) => {
            orders.push(...batch);
            return batch.map(outcome);
          },
        },
        { screenCost: null, evaluations: 400 },
      ),
    );
    expect(orders).toHaveLength(400);
    expect(orders.every(({ fidelity }, n) => fidelity === 'full' && orders[n].id === n)).toBe(true);
  });

  it('gives the same bytes after a cut anywhere, and pays for nothing twice', async () => {
    const whole = new Map<number, Outcome>();
    const uncut = JSON.stringify(
      await searchArchitectures(
        search({
          evaluate: async (batch) =>
            batch.map((order) => {
              whole.set(order.id, outcome(order));
              return outcome(order);
            }),
        }),
      ),
    );
    for (const cut of [1, 57, 333, 700, 1100, whole.size - 1]) {
      const stored = new Map<number, Outcome>();
      const limited = async (batch: EvaluationOrder[]) =>
        batch.map((order) => {
          if (stored.size === cut) throw new Error('power cut');
          stored.set(order.id, outcome(order));
          return outcome(order);
        });
      await expect(searchArchitectures(search({ evaluate: limited }))).rejects.toThrow('power cut');
      let paid = 0;
      const resumed = await searchArchitectures(
        search({
          replay: ({ id }) => stored.get(id),
          evaluate: async (batch) => {
            paid += batch.length;
            return batch.map(outcome);
          },
        }),
      );
      expect(paid).toBe(whole.size - cut);
      expect(JSON.stringify(resumed)).toBe(uncut);
    }
  });

  it('goes on from any noted state to the same bytes, asking for nothing before it', async () => {
    const settings = { stallGenerations: 40, timeLimit: 1e6 };
    let now = 5;
    const clock = () => now++;
    const states: Buffer[] = [];
    const whole: number[] = [];
    const uncut = JSON.stringify(
      await searchArchitectures(
        search(
          {
            clock,
            evaluate: async (batch) => {
              whole.push(...batch.map(({ id }) => id));
              return batch.map(outcome);
            },
            onState: (state) => void states.push(serialize(state())),
          },
          settings,
        ),
      ),
    );
    expect(states.length).toBeGreaterThan(8);
    for (const noted of [0, 1, 9, states.length - 1].map((n) => states[n])) {
      const from = deserialize(noted) as SearchState;
      const { nextId } = from;
      const asked: number[] = [];
      const resumed = await searchArchitectures(
        search(
          {
            clock,
            from,
            evaluate: async (batch) => {
              asked.push(...batch.map(({ id }) => id));
              return batch.map(outcome);
            },
          },
          settings,
        ),
      );
      expect(JSON.stringify(resumed) === uncut).toBe(true);
      expect(asked).toEqual(whole.filter((id) => id >= nextId));
    }
  });

  it('knows under which budgets and time limits a state would have been passed', async () => {
    const states: Buffer[] = [];
    const note = (state: () => SearchState) => void states.push(serialize(state()));
    await searchArchitectures(search({ onState: note, clock: () => 60 }));
    const all = states.map((state) => deserialize(state) as SearchState);
    const early = all[3];
    const late = all.at(-1) as SearchState;
    expect(passesThrough(early, { evaluations: 3000, timeLimit: null })).toBe(true);
    expect(passesThrough(early, { evaluations: early.spent, timeLimit: null })).toBe(false);
    // The last generations were cut to the budget: only that very budget leads there.
    expect(passesThrough(late, { evaluations: 1500, timeLimit: null })).toBe(true);
    expect(passesThrough(late, { evaluations: 1501, timeLimit: null })).toBe(false);
    expect(passesThrough({ ...early, began: 10 }, { evaluations: 1500, timeLimit: 50 })).toBe(false);
    expect(passesThrough({ ...early, began: 10 }, { evaluations: 1500, timeLimit: 51 })).toBe(true);
    const larger = { evaluations: 2500 };
    const uncut = await searchArchitectures(search({ clock: () => 60 }, larger));
    const resumed = await searchArchitectures(search({ clock: () => 60, from: early }, larger));
    expect(JSON.stringify(resumed) === JSON.stringify(uncut)).toBe(true);
  });

  it('stops when hypervolume stalls, when told to, and when the clock says so', async () => {
    const flat: ArchitectureSearch['evaluate'] = async (batch) =>
      batch.map(({ id }) => ({ status: 'ok', objectives: id % 2 ? [0, 1] : [1, 0], violations: [], reason: '' }));
    const stalled = await searchArchitectures(search({ evaluate: flat }, { stallGenerations: 3 }));
    expect(stalled.stoppedBecause).toMatch(/hypervolume gained less/);
    const controller = new AbortController();
    controller.abort();
    const told = await searchArchitectures(search({ signal: controller.signal }));
    expect(told.stoppedBecause).toBe('interrupted');
    let now = 0;
    const timed = await searchArchitectures(search({ clock: () => now++ }, { timeLimit: 3 }));
    expect(timed.stoppedBecause).toMatch(/time limit of 3 s/);
  });

  it('refuses searches that cannot work', async () => {
    await expect(searchArchitectures(search({ problems: [] }))).rejects.toThrow(/no architecture/);
    await expect(searchArchitectures(search({ problems: [problems[0], problems[0]] }))).rejects.toThrow(/identifier/);
    await expect(searchArchitectures(search({}, { evaluations: 2 }))).rejects.toThrow(/budget/);
    await expect(searchArchitectures(search({}, { timeLimit: 5 }))).rejects.toThrow(/clock/);
  });
});

describe('allocation', () => {
  it('deals whole counts that keep the floor in the long run', () => {
    const allocation = new Allocation(3, 0.3);
    const dealt = [0, 0, 0];
    for (let n = 0; n < 100; n++) {
      allocation.learn(0, 5, 10);
      allocation.learn(1, 0, 1);
      const counts = allocation.deal(7);
      expect(counts.reduce((sum, count) => sum + count, 0)).toBe(7);
      counts.forEach((count, party) => {
        expect(Number.isInteger(count) && count >= 0).toBe(true);
        dealt[party] += count;
      });
    }
    expect(dealt[0]).toBeGreaterThan(500);
    expect(dealt[1]).toBeGreaterThanOrEqual(69);
    expect(dealt[2]).toBeGreaterThanOrEqual(69);
  });
});
