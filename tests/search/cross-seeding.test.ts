/** Designs carried between architectures that share variables: by name, inside the receiver's bounds, never from strangers. */
import { describe, expect, it } from 'vitest';
import { graft, guest, kinship } from '../../src/search/cross-seeding.ts';
import { createDomain } from '../../src/search/domain.ts';
import { Evolution } from '../../src/search/evolution.ts';
import { judge, type SearchProblem } from '../../src/search/outcome.ts';
import { createRandom } from '../../src/search/random.ts';

const real = (name: string, low: number, high: number) => ({
  kind: 'real' as const,
  name,
  label: name,
  unit: '',
  low,
  high,
});
const plain: SearchProblem = { id: 'plain', objectiveCount: 2, variables: [real('bore', 0, 1), real('length', 0, 9)] };
const longer: SearchProblem = {
  id: 'longer',
  objectiveCount: 2,
  variables: [real('shroud', 0, 1), real('length', 0, 5), real('bore', 0, 1)],
};
const stranger: SearchProblem = { id: 'stranger', objectiveCount: 2, variables: [real('petals', 0, 1)] };

function started(problem: SearchProblem, feasible: boolean): Evolution {
  const evolution = new Evolution(problem, { population: 8 }, createRandom(problem.id));
  const designs = evolution.ask(8);
  const violations = feasible ? [] : [1];
  evolution.tell(
    designs.map((x, n) => judge(n, problem, x, { status: 'ok', objectives: [n, 8 - n], violations, reason: '' })),
  );
  return evolution;
}

describe('cross-seeding', () => {
  it('finds variables by name, and kin only where half are shared', () => {
    expect(kinship(plain, longer)).toEqual([-1, 1, 0]);
    expect(kinship(stranger, plain)).toBeNull();
    const choice = (options: string[]) => ({ kind: 'choice' as const, name: 'steel', label: 'steel', options });
    const of = (options: string[]) => ({ ...plain, variables: [choice(options)] });
    expect(kinship(of(['a', 'b']), of(['a', 'b']))).toEqual([0]);
    expect(kinship(of(['a', 'b']), of(['b', 'a']))).toBeNull();
  });

  it("keeps the receiver's own value where the donor has none or one out of bounds", () => {
    expect(graft(createDomain(longer.variables), [0.3, 2, 0.1], [0.8, 4], [-1, 1, 0])).toEqual([0.3, 4, 0.8]);
    expect(graft(createDomain(longer.variables), [0.3, 2, 0.1], [0.8, 7], [-1, 1, 0])).toEqual([0.3, 2, 0.8]);
  });

  it('offers feasible designs to all, broken ones only to kin that has nothing feasible', () => {
    const places = kinship(plain, longer) as number[];
    const offer = (receiverFeasible: boolean, donorFeasible: boolean) => {
      const donor = started(plain, donorFeasible);
      const design = guest(started(longer, receiverFeasible), [{ evolution: donor, places }], createRandom('guest'));
      return design && donor.population.some(({ x }) => x[0] === design[2]);
    };
    expect(offer(true, true)).toBe(true);
    expect(offer(false, true)).toBe(true);
    expect(offer(false, false)).toBe(true);
    expect(offer(true, false)).toBeNull();
  });
});
