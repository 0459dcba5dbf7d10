import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellFaces } from '../../shared/duct/cell-spacing.ts';

const widths = (face: Float64Array) => Array.from(face.subarray(1), (x, i) => x - face[i]);

describe('faces of the grid', () => {
  it('are equally far apart unless some cells are to be finer', () => {
    for (const width of widths(cellFaces(50, -0.02, 0.98, null))) expect(width).toBeCloseTo(0.02, 14);
  });

  it('rise from end to end, with one exactly where the fine cells end, whatever is asked for', () => {
    const share = fc.double({ min: 0.02, max: 0.98, noNaN: true });
    const ratio = fc.double({ min: 0.2, max: 8, noNaN: true });
    const over = fc.double({ min: 0.001, max: 3, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 8, max: 400 }), share, ratio, over, (cells, to, wider, length) => {
        const face = cellFaces(cells, -0.1, 1, { to, ratio: wider, over: length });
        expect([face[0], face[cells]]).toEqual([-0.1, 1]);
        expect(face).toContain(to);
        expect(Math.min(...widths(face))).toBeGreaterThan(0);
      }),
      { seed: 1, endOnFailure: true },
    );
  });

  it.each([4, 1, 0.25])('change in proportion to the way behind the even ones, to %d times their width', (ratio) => {
    // Many cells, so that rounding to whole ones before the place is below half a per cent.
    const cells = 4000;
    const finer = { to: 0.25, ratio, over: 0.3 };
    const face = cellFaces(cells, 0, 1, finer);
    const width = widths(face);
    for (let i = 0; i < cells; i++) {
      const behind = Math.min(1, Math.max(0, (face[i] + width[i] / 2 - finer.to) / finer.over));
      expect(Math.abs(width[i] / width[0] / (1 + (ratio - 1) * behind) - 1)).toBeLessThan(0.01);
    }
    expect(Math.abs(width[cells - 1] / width[0] / ratio - 1)).toBeLessThan(0.01);
  });

  it('halve every width when the cells are doubled', () => {
    const finer = { to: 0.25, ratio: 4, over: 0.3 };
    const coarse = cellFaces(200, 0, 1, finer);
    const fine = cellFaces(400, 0, 1, finer);
    // Whole cells up to the place, so to one cell.
    for (let i = 0; i <= 200; i++) expect(Math.abs(fine[2 * i] - coarse[i])).toBeLessThan(0.02);
  });

  it('refuse fine cells that end outside the duct', () => {
    for (const to of [-0.1, 0, 1, 2]) {
      expect(() => cellFaces(40, 0, 1, { to, ratio: 3, over: 0.1 })).toThrow(RangeError);
    }
  });
});
