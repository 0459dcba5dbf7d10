import { judgeWish } from './envelope.ts';
import type { CheckRule } from './rule.ts';
import { kilograms } from './say.ts';

export const mass: CheckRule = {
  id: 'mass',
  title: 'Mass',
  source: 'the brief, against the parts list',
  binding: true,
  judge: ({ brief, mass: weigh }) =>
    judgeWish(
      brief.wanted.maxMass,
      () => weigh(),
      'kg',
      kilograms,
      'mass',
      (over) => `save ${kilograms(over)}: thinner sheet or a smaller engine`,
    ),
};
