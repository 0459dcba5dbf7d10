import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SheetStock } from '../../shared/engine/brief.ts';
import { CUT_GAP, nestParts } from '../../shared/fabrication/nesting.ts';
import { type Part, partsList } from '../../shared/fabrication/parts.ts';
import { bigReedEngine, reedEngine } from './engines.ts';

const stock = (over: Partial<SheetStock> = {}): SheetStock => ({
  material: '304',
  thickness: 0.0008,
  width: 0.5,
  length: 1,
  sheets: null,
  price: null,
  ...over,
});
const blank = (id: string, length: number, width: number, count = 1): Part => ({
  id,
  name: id,
  kind: 'rolled sheet',
  material: '304',
  count,
  thickness: 0.0008,
  blankLength: Math.max(length, width),
  blankWidth: Math.min(length, width),
  area: length * width,
  mass: 1,
});

describe('nesting', () => {
  it('places every copy on the sheet, clear of the others, and accounts for all the metal', () => {
    const side = fc.integer({ min: 20, max: 480 }).map((mm) => mm / 1e3);
    const parts = fc
      .array(fc.tuple(side, side, fc.integer({ min: 1, max: 4 })), { minLength: 1, maxLength: 12 })
      .map((sizes) => sizes.map(([a, b, count], i) => blank(`p${i}`, a, b, count)));
    fc.assert(
      fc.property(parts, (list) => {
        const { sheets, unplaced } = nestParts(list, [stock()]);
        expect(unplaced).toEqual([]);
        expect(sheets.flatMap((s) => s.placements).length).toBe(list.reduce((sum, p) => sum + p.count, 0));
        for (const { placements } of sheets) {
          placements.forEach((a, i) => {
            expect(a.x).toBeGreaterThanOrEqual(0);
            expect(a.x + a.width).toBeLessThanOrEqual(1);
            expect(a.y + a.height).toBeLessThanOrEqual(0.5);
            for (const b of placements.slice(i + 1)) {
              const apart =
                Math.max(b.x - a.x - a.width, a.x - b.x - b.width, b.y - a.y - a.height, a.y - b.y - b.height) + 1e-9;
              expect(apart).toBeGreaterThanOrEqual(CUT_GAP);
            }
          });
        }
        const waste = sheets.reduce((sum, s) => sum + s.waste * 0.5, 0);
        const net = list.reduce((sum, p) => sum + p.area * p.count, 0);
        expect(waste + net).toBeCloseTo(0.5 * sheets.length, 9);
      }),
      { numRuns: 60, seed: 7 },
    );
  });

  it('says why a part finds no place: other material, too large, too few sheets', () => {
    const titanium = nestParts([{ ...blank('a', 0.1, 0.1), material: 'titanium-grade-2' }], [stock()]);
    expect(titanium.unplaced[0].reason).toMatch(/no sheet of titanium-grade-2/);
    const large = nestParts([blank('a', 1.2, 0.1)], [stock()]);
    expect(large.unplaced[0].reason).toMatch(/larger than the sheet/);
    const few = nestParts([blank('a', 0.9, 0.45, 3)], [stock({ sheets: 2 })]);
    expect(few.sheets.length).toBe(2);
    expect(few.unplaced[0].reason).toMatch(/3 sheets .* 2 stated/);
  });

  it('prefers the size of sheet that wastes the least', () => {
    const { sheets } = nestParts([blank('a', 0.25, 0.2)], [stock(), stock({ length: 0.3, width: 0.25 })]);
    expect(sheets[0].stock.length).toBe(0.3);
  });

  it('lays the shells of whole engines', () => {
    for (const engine of [reedEngine(), bigReedEngine()]) {
      const shells = partsList(engine).filter((p) => p.kind === 'rolled sheet');
      const { sheets, unplaced } = nestParts(shells, [stock({ length: 2, width: 1 })]);
      expect(unplaced).toEqual([]);
      for (const sheet of sheets) expect(sheet.waste).toBeGreaterThan(0);
    }
  });
});
