import { SHEET_UTILISATION } from '../fabrication/cost.ts';
import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { figure, mm, percent } from './say.ts';

const SAME_THICKNESS = 0.03;

/** Area of the shell's blanks with nesting waste against the sheets at hand; the largest blank must fit one sheet. */
export const stockSheet: CheckRule = {
  id: 'stock-sheet',
  title: 'Sheet at hand',
  source: 'the stated stock; 75 % of a sheet used when nested by hand: common practice, no source',
  binding: false,
  judge({ engine, brief, parts, caution }) {
    if (brief.sheets.length === 0) return notApplicable('No sheet stock is stated.');
    const { material, thickness } = engine.shell;
    const stock = brief.sheets.find(
      (s) => s.material === material && Math.abs(s.thickness / thickness - 1) < SAME_THICKNESS,
    );
    const blanks = parts().filter((p) => p.kind === 'rolled sheet');
    const area = blanks.reduce((sum, p) => sum + p.area * p.count, 0) / SHEET_UTILISATION;
    if (stock === undefined) {
      return {
        verdict: 'fail',
        value: area,
        limit: 0,
        unit: 'm²',
        margin: -1,
        sentence: `${figure(area)} m² of ${mm(thickness)} ${material} are needed and none is in stock: buy it, or choose a sheet that is there.`,
      };
    }
    const tooLarge = blanks.find(
      (p) => p.blankLength > Math.max(stock.length, stock.width) || p.blankWidth > Math.min(stock.length, stock.width),
    );
    const sheets = stock.sheets ?? Math.ceil(area / (stock.width * stock.length));
    const has = sheets * stock.width * stock.length;
    const found = `Blanks and ${percent(1 - SHEET_UTILISATION)} waste take ${figure(area)} m² of ${figure(has)} m² at hand`;
    const judged = atMost(
      { value: area, limit: has, unit: 'm²', cautionMargin: stock.sheets === null ? 0 : caution },
      {
        pass: `${found}.`,
        caution: `${found}: nest before you cut.`,
        fail: `${found}: ${Math.ceil(area / (stock.width * stock.length))} sheets are needed.`,
      },
    );
    if (tooLarge && judged.verdict !== 'fail') {
      return {
        ...judged,
        verdict: 'caution',
        sentence: `${tooLarge.name} has a blank of ${mm(tooLarge.blankLength)} × ${mm(tooLarge.blankWidth)}, larger than one sheet: make it in two pieces with one more seam.`,
      };
    }
    return judged;
  },
};
