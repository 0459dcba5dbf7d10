import { expect, it } from 'vitest';
import { normalChance } from '../../shared/checks/chance.ts';
import { checkOf } from './handbook/entry.ts';
import { reed } from './scenario-kit.ts';

it.each([
  [0, 0.5],
  [1, 0.841345],
  [-1, 0.158655],
  [1.645, 0.950015],
  [3, 0.99865],
])('standard normal distribution at %s is %s (tables)', (z, chance) => {
  expect(normalChance(z)).toBeCloseTo(chance, 6);
});

it('a thrust 15 % above what is wanted is 84 % sure against an error of 15 %', () => {
  const input = reed((i, r) => {
    r.thrust = 115;
    i.brief.wanted.thrust = 100;
  })();
  const { margin, sentence } = checkOf(input, 'thrust');
  expect(margin).toBeCloseTo(0.15, 9);
  expect(sentence).toContain('84 % sure');
});
