import { sameStock } from '../fabrication/nesting.ts';
import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { figure, mm, percent } from './say.ts';

/** Sheets of the shell's kind that the nested blanks cut into, against the sheets at hand; the largest blank must fit one. */
export const stockSheet: CheckRule = {
  id: 'stock-sheet',
  title: 'Sheet at hand',
  source: 'the stated stock; blanks nested as rectangles (Jylänki, maximal rectangles, 2010)',
  binding: false,
  judge({ engine, brief, parts, sheetUses }) {
    if (brief.sheets.length === 0) return notApplicable('No sheet stock is stated.');
    const { material, thickness } = engine.shell;
    const use = sheetUses().find((u) => sameStock(engine.shell, u.stock));
    if (use === undefined) {
      const blanks = parts().filter((p) => p.kind === 'rolled sheet' && sameStock(p, { material, thickness }));
      const area = blanks.reduce((sum, p) => sum + p.blankLength * p.blankWidth * p.count, 0);
      return {
        verdict: 'fail',
        value: area,
        limit: 0,
        unit: 'm²',
        margin: -1,
        sentence: `Blanks of ${figure(area)} m² of ${mm(thickness)} ${material} are needed and none is in stock: buy it, or choose a sheet that is there.`,
      };
    }
    const { stock, sheets, taken, net, tooLarge } = use;
    const each = `${sheets} of ${mm(stock.length)} × ${mm(stock.width)}`;
    const found = `Nested, the parts of ${mm(stock.thickness)} ${material} cut into ${each} and take ${figure(taken)} m², ${percent(1 - net / taken)} of it waste`;
    const judged = atMost(
      { value: sheets, limit: stock.sheets ?? sheets, unit: '', cautionMargin: 0 },
      {
        pass: stock.sheets === null ? `${found}.` : `${found}; ${stock.sheets} at hand.`,
        caution: `${found}.`,
        fail: `${found}; only ${stock.sheets} at hand: buy ${sheets - (stock.sheets ?? 0)} more, or make small parts of offcuts.`,
      },
    );
    const [large] = tooLarge;
    if (large !== undefined && judged.verdict !== 'fail') {
      return {
        ...judged,
        verdict: 'caution',
        sentence: `${large.name} has a blank of ${mm(large.blankLength)} × ${mm(large.blankWidth)}, larger than one sheet of ${mm(stock.length)} × ${mm(stock.width)}: make it in two pieces with one more seam.`,
      };
    }
    return judged;
  },
};
