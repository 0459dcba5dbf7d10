import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { mm } from './say.ts';

export const thickestCut: CheckRule = {
  id: 'thickest-cut',
  title: 'Sheet against shears and rolls',
  source: 'the stated tools',
  binding: true,
  judge({ engine, brief }) {
    const limit = brief.tools.thickestCut;
    if (limit === null) return notApplicable('The shears are not stated.');
    const value = engine.shell.thickness;
    const found = `The shell is ${mm(value)}; the tools cut and roll up to ${mm(limit)}`;
    return atMost(
      { value, limit, unit: 'm', cautionMargin: 0 },
      {
        pass: `${found}.`,
        caution: `${found}.`,
        fail: `${found}: have it cut, or take sheet of ${mm(limit)} and more stiffening rings.`,
      },
    );
  },
};
