import { THINNEST_WELD } from '../fabrication/rollability.ts';
import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { mm, sentenceCase } from './say.ts';

export const weldability: CheckRule = {
  id: 'weldability',
  title: 'Welding the sheet',
  source: 'common practice, no source',
  binding: false,
  judge({ engine, brief, sheet, caution }) {
    const { welding } = brief.tools;
    const seams = welding.filter((process) => process !== 'spot');
    if (seams.length === 0) return notApplicable('No process that welds a tight seam is stated.');
    const value = engine.shell.thickness;
    const alloyed = sheet.id !== 'low-carbon-steel';
    // Gas carburises stainless and poisons titanium; MIG is too coarse for titanium.
    const able = seams.filter((p) => !(alloyed && p === 'gas') && !(sheet.id.startsWith('titanium') && p !== 'TIG'));
    if (able.length === 0) {
      const limit = THINNEST_WELD.TIG;
      return {
        verdict: 'fail',
        value: seams.length,
        limit: seams.length + 1,
        unit: '',
        margin: -1 / (seams.length + 1),
        sentence: `${sentenceCase(sheet.name)} cannot be welded tight with ${seams.join(' or ')}: it needs TIG (down to ${mm(limit)}), or take plain steel. It ${sheet.weldability.note}.`,
      };
    }
    const best = able.reduce((a, b) => (THINNEST_WELD[b] < THINNEST_WELD[a] ? b : a));
    const limit = THINNEST_WELD[best];
    const found = `${mm(value)} ${sheet.name}, ${best} joins ${mm(limit)} and more; it ${sheet.weldability.note}`;
    const judged = atLeast(
      { value, limit, unit: 'm', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}; practise on offcuts first.`,
        fail: `${found}: it burns through; take sheet of ${mm(limit)} or more.`,
      },
    );
    return judged.verdict === 'pass' && !sheet.weldability.good ? { ...judged, verdict: 'caution' } : judged;
  },
};
