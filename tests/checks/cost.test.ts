import { describe, expect, it } from 'vitest';
import { assess } from '../../shared/checks/assess.ts';
import { sheetAlternatives } from '../../shared/durability/sheet-alternatives.ts';
import { costEstimate, SHEET_UTILISATION } from '../../shared/fabrication/cost.ts';
import type { Part } from '../../shared/fabrication/parts.ts';
import { halfAngle, longestCourse, smallestRolled, tightestBend } from '../../shared/fabrication/rollability.ts';
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
  it('a quarter square metre of a 2 m² sheet at 60 costs 7.5 and the waste (arithmetic)', () => {
    expect(costEstimate([part({})], briefOf()).total).toBeCloseTo((0.25 / SHEET_UTILISATION) * 30, 9);
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
    expect(items.map((i) => i.cost)).toEqual([10, 7.5, 4, 6, 20 * (1.5 + 3 + 0.6)]);
    expect(total).toBeCloseTo(129.5, 9);
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
