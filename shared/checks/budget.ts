import { atMost, type CheckRule, notApplicable, notComputed } from './rule.ts';
import { figure } from './say.ts';

/** How the items are summed for the sentence. */
const KINDS = [
  { kind: 'sheet', words: 'sheet with its nesting waste' },
  { kind: 'strip', words: 'strip' },
  { kind: 'bought', words: 'bought parts' },
  { kind: 'labour', words: 'work' },
] as const;

export const budget: CheckRule = {
  id: 'budget',
  title: 'Cost against the budget',
  source: 'the user’s own prices on the parts list; sheet as nested (Jylänki, maximal rectangles, 2010)',
  binding: true,
  judge({ brief, cost, caution }) {
    const limit = brief.wanted.maxCost;
    if (limit === null) return notApplicable('No budget is stated.');
    const { total, unpriced, items } = cost();
    if (total === null) return notComputed('The sheet of the shell has no price.');
    const left =
      unpriced.length > 0
        ? `, without a price for ${unpriced.slice(0, 4).join(', ')}${unpriced.length > 4 ? ' and others' : ''}`
        : '';
    const sums = KINDS.map(({ kind, words }) => {
      const sum = items.reduce((all, item) => all + (item.kind === kind ? (item.cost ?? 0) : 0), 0);
      return { words, sum };
    }).filter(({ sum }) => sum > 0);
    const [largest] = [...sums].sort((a, b) => b.sum - a.sum);
    const split = sums.map(({ words, sum }) => `${words} ${figure(sum)}`).join(', ');
    const found = `It costs ${figure(total)} ${brief.currency} (${split})${left}; ${figure(limit)} ${brief.currency} is allowed`;
    const judged = atMost(
      { value: total, limit, unit: brief.currency, cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: little is left; save first on ${largest?.words ?? 'material'}.`,
        fail: `${found}: save ${figure(total - limit)} ${brief.currency}, first on ${largest?.words ?? 'material'}.`,
      },
    );
    return judged.verdict === 'pass' && unpriced.length > 0
      ? { ...judged, verdict: 'caution', sentence: `${found}: price those to be sure.` }
      : judged;
  },
};
