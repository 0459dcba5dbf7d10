import { smallestRolled } from '../fabrication/rollability.ts';
import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { mm } from './say.ts';

export const smallestRoll: CheckRule = {
  id: 'smallest-roll',
  title: 'Smallest diameter on the rolls',
  source: 'the stated tools',
  binding: true,
  judge({ engine, brief }) {
    const limit = brief.tools.smallestRoll;
    if (limit === null) return notApplicable('The rolls are not stated.');
    const { diameter, section } = smallestRolled(engine);
    const found = `The ${section.role} is rolled to ${mm(diameter)}; the rolls form ${mm(limit)} and more`;
    return atLeast(
      { value: diameter, limit, unit: 'm', cautionMargin: 0.05 },
      {
        pass: `${found}.`,
        caution: `${found}: a tight fit, pre-bend both edges.`,
        fail: `${found}: buy tube for it, beat it round a mandrel, or make it ${mm(limit)}.`,
      },
    );
  },
};
