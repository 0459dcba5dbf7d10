import { describe, expect, it } from 'vitest';
import { assess } from '../../shared/checks/assess.ts';
import { sheetAlternatives } from '../../shared/durability/sheet-alternatives.ts';
import { costEstimate } from '../../shared/fabrication/cost.ts';
import { nestParts } from '../../shared/fabrication/nesting.ts';
import { type Part, partsList } from '../../shared/fabrication/parts.ts';
import { halfAngle, longestCourse, smallestRolled, tightestBend } from '../../shared/fabrication/rollability.ts';
import { sheetUses } from '../../shared/fabrication/sheet-use.ts';
import { NO_DRAWINGS, type PartRow } from '../../src/report/drawing-set.ts';
import { buildPackView } from '../../src/report/view/build-pack.ts';
import { results } from '../report/fixtures.ts';
import { bentEngine, briefOf, inputOf, reedEngine, runningOf } from './fixtures.ts';

const part = (over: Partial<Part>): Part => ({
  id: 'tailpipe-shell',
  name: 'Tailpipe',
  kind: 'rolled sheet',
  material: '304',
  count: 1,
  thickness: 1.2e-3,
  blankLength: 0.8,
  blankWidth: 0.32,
  area: 0.25,
  mass: 2.4,
  ...over,
});

describe('cost', () => {
  it('a blank 0.8 × 0.32 m takes a strip of 0.806 m off the sheet or 0.326 m along it, whichever is less (arithmetic)', () => {
    const [{ stock, taken, net, sheets }] = sheetUses([part({})], briefOf().sheets);
    expect([stock.length, stock.width, sheets]).toEqual([2, 1, 1]);
    const edge = 0.003;
    const strips = [(0.32 + edge) * 2, (0.8 + edge) * 2, (0.8 + edge) * 1, (0.32 + edge) * 1];
    expect(strips.some((strip) => Math.abs(strip - taken) < 1e-9)).toBe(true);
    expect(taken).toBeLessThanOrEqual(0.803 + 1e-9);
    expect(net).toBe(0.25);
    // 60 for 2 m²: 30 a square metre, and the waste is paid for.
    expect(costEstimate([part({})], briefOf()).total).toBeCloseTo(taken * 30, 9);
  });
  it('blanks as large as the sheet cost whole sheets, and more sheets than one are counted', () => {
    const large = part({ blankLength: 1.99, blankWidth: 0.99, area: 1.99 * 0.99, count: 3 });
    const [use] = sheetUses([large], briefOf().sheets);
    expect(use.sheets).toBe(3);
    expect(costEstimate([large], briefOf()).total! / 60).toBeCloseTo(3, 1);
  });
  it('the sheet of a whole engine is that of the nesting drawn in the report, less what goes back to the rack', () => {
    const engine = reedEngine();
    const parts = partsList(engine);
    const drawn = nestParts(parts, briefOf().sheets).sheets.filter((s) => s.stock.material === '304');
    const [use] = sheetUses(parts, briefOf().sheets).filter((u) => u.stock.material === '304');
    const whole = drawn.reduce((sum, s) => sum + s.stock.length * s.stock.width, 0);
    const net = drawn.reduce((sum, s) => sum + (1 - s.waste) * s.stock.length * s.stock.width, 0);
    expect(use.sheets).toBe(drawn.length);
    expect(use.net).toBeCloseTo(net, 9);
    expect(use.taken).toBeGreaterThan(net);
    expect(use.taken).toBeLessThanOrEqual(whole);
  });
  it('strip is priced by the metre, bars by the user’s hardware list, hours when an hour has a price', () => {
    const brief = briefOf();
    brief.prices = { perHourLabour: 20, hardware: { 'spark-boss': 4, 'spark plug': 6 } };
    const parts = [
      part({}),
      part({
        id: 'petal',
        kind: 'strip',
        material: 'AISI-1095',
        thickness: 0.25e-3,
        blankLength: 0.05,
        count: 10,
        area: 1e-3,
      }),
      part({ id: 'spark-boss', kind: 'bar', count: 1, area: 0 }),
    ];
    const { items, total, unpriced } = costEstimate(parts, brief);
    const [sheet, ...rest] = items.map((i) => i.cost);
    expect(sheet).toBeCloseTo(30 * sheetUses(parts, brief.sheets)[0].taken, 9);
    expect(rest).toEqual([7.5, 4, 6, 20 * (1.5 + 3 + 0.6)]);
    expect(total).toBeCloseTo(sheet! + 119.5, 9);
    expect(unpriced).toEqual([]);
  });
  it('names what has no price, and gives no total when the shell’s sheet has none', () => {
    const brief = briefOf();
    expect(costEstimate([part({}), part({ id: 'x', name: 'Stem guide', kind: 'bar' })], brief).unpriced).toEqual([
      'Stem guide',
    ]);
    brief.sheets = [];
    expect(costEstimate([part({})], brief).total).toBeNull();
  });
  it('the parts of an assessment add up to its mass', () => {
    const a = assess(inputOf(reedEngine()));
    expect(a.parts.reduce((sum, p) => sum + p.mass, 0)).toBeCloseTo(a.mass, 9);
  });
  it('the items of an assessment, bought and worked ones too, add up to its cost', () => {
    const a = assess(
      inputOf(reedEngine(), ({ brief }) => {
        brief.prices = { perHourLabour: 20, hardware: { 'spark plug': 6, regulator: 38 } };
      }),
    );
    expect(a.parts.filter((p) => p.material === 'bought').map((p) => [p.part, p.cost])).toEqual([
      ['spark plug', 6],
      ['regulator', 38],
    ]);
    expect(a.parts.at(-1)).toMatchObject({ part: 'labour', material: 'labour', mass: 0 });
    expect(a.parts.reduce((sum, p) => sum + (p.cost ?? 0), 0)).toBeCloseTo(a.cost!, 9);
  });
  it('the parts list of the report ends with what is bought, and its total counts it', () => {
    const answered = results();
    const [first] = answered.candidates;
    first.assessment.parts = [{ part: 'spark plug', mass: 0, area: 0, material: 'bought', cost: 6 }];
    const row: PartRow = {
      ...{ mark: '1', name: 'chamber shell', count: 1, material: '304', stock: 'sheet', thickness: 1e-3 },
      ...{ cutLength: 0.6, cutWidth: 0.3, area: 0.18, mass: 1.4, cost: 10, note: '' },
    };
    const [list] = buildPackView(answered, { ...NO_DRAWINGS, partsLists: { [first.id]: [row] } }).lists;
    expect(list.lines.map((line) => line.name)).toEqual(['chamber shell', 'spark plug']);
    expect(list.totalCost).toMatch(/\b16\b/);
  });
});

describe('rollability (plane geometry)', () => {
  it('finds the smallest diameter, courses, angle and bend', () => {
    expect(smallestRolled(bentEngine()).diameter).toBe(0.07);
    expect(longestCourse(reedEngine(), 0.3)).toEqual({ length: 0.8, courses: 3 });
    expect(halfAngle({ role: 'chamber-cone', length: 0.1, startDiameter: 0.3, endDiameter: 0.1 })).toBeCloseTo(
      Math.PI / 4,
      12,
    );
    expect(tightestBend(bentEngine())).toBe(2);
    expect(tightestBend(reedEngine())).toBeNull();
  });
});

describe('what another sheet gains', () => {
  it('thicker sheet carries the stress in proportion; 310 outlasts plain steel; titanium is lighter', () => {
    const engine = reedEngine();
    engine.shell.material = 'low-carbon-steel';
    const [present, thicker, ...others] = sheetAlternatives(engine, runningOf(engine));
    expect(present.present).toBe(true);
    expect(thicker.yieldUse / present.yieldUse).toBeCloseTo(present.thickness / thicker.thickness, 9);
    const by = Object.fromEntries(others.map((o) => [o.material, o]));
    expect(by['310'].oxidationLife).toBeGreaterThan(present.oxidationLife);
    expect(by['310'].overScalingLimit).toBeLessThan(present.overScalingLimit);
    expect(by['titanium-grade-2'].massRatio).toBeLessThan(0.6);
  });
});
