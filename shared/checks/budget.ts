import { atMost, type CheckRule, notApplicable, notComputed } from './rule.ts';
import { figure } from './say.ts';

export const budget: CheckRule = {
  id: 'budget',
  title: 'Cost against the budget',
  source: 'the user’s own prices on the parts list',
  binding: true,
  judge({ brief, cost, caution }) {
    const limit = brief.wanted.maxCost;
    if (limit === null) return notApplicable('No budget is stated.');
    const { total, unpriced } = cost();
    if (total === null) return notComputed('The sheet of the shell has no price.');
    const left =
      unpriced.length > 0
        ? `, without a price for ${unpriced.slice(0, 4).join(', ')}${unpriced.length > 4 ? ' and others' : ''}`
        : '';
    const found = `Material and work come to ${figure(total)} ${brief.currency}${left}; ${figure(limit)} ${brief.currency} is allowed`;
    const judged = atMost(
      { value: total, limit, unit: brief.currency, cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: little is left.`,
        fail: `${found}: cheaper sheet or fewer parts bring it down.`,
      },
    );
    return judged.verdict === 'pass' && unpriced.length > 0 ? { ...judged, verdict: 'caution' } : judged;
  },
};
