import { tightestBend } from '../fabrication/rollability.ts';
import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { figure } from './say.ts';

/** Centreline radius over diameter below which the inner gores meet. Common practice, no source. */
const TIGHTEST = 1;

export const bendRadius: CheckRule = {
  id: 'bend-radius',
  title: 'Tightest bend',
  source: 'common practice, no source',
  binding: false,
  judge({ engine, caution }) {
    const value = tightestBend(engine);
    if (value === null) return notApplicable('There is no bend.');
    const found = `The bend's centreline radius is ${figure(value)} diameters`;
    return atLeast(
      { value, limit: TIGHTEST, unit: '', cautionMargin: Math.max(caution, 0.2) },
      {
        pass: `${found}.`,
        caution: `${found}: cut the gores with care, the inner seams crowd.`,
        fail: `${found}: the inner edges of the gores leave no metal to weld; bend it wider, to ${TIGHTEST} diameter at least.`,
      },
    );
  },
};
