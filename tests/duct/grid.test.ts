import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeGrid } from '../../shared/duct/grid.ts';
import type { Section } from '../../shared/engine/engine.ts';

const section = (length: number, startDiameter: number, endDiameter: number): Section => ({
  role: 'chamber',
  length,
  startDiameter,
  endDiameter,
});

const volumeOf = ({ length, startDiameter: a, endDiameter: b }: Section) =>
  (Math.PI * length * (a * a + a * b + b * b)) / 12;
const wallOf = ({ length, startDiameter: a, endDiameter: b }: Section) =>
  (Math.PI * (a + b) * Math.hypot(length, (b - a) / 2)) / 2;

describe('grid of a bore', () => {
  const bore = [section(0.15, 0.065, 0.065), section(0.07, 0.065, 0.032), section(0.35, 0.032, 0.032)];

  it('has the volume and wall of the bore, and its end areas', () => {
    for (const cells of [37, 80, 160]) {
      const grid = makeGrid(bore, cells, false, false);
      const volume = grid.volume.reduce((a, b) => a + b, 0);
      const wall = grid.wallArea.reduce((a, b) => a + b, 0);
      expect(volume / bore.reduce((sum, s) => sum + volumeOf(s), 0)).toBeCloseTo(1, 10);
      expect(wall / bore.reduce((sum, s) => sum + wallOf(s), 0)).toBeCloseTo(1, 10);
      expect(grid.faceArea[0]).toBeCloseTo((Math.PI / 4) * 0.065 ** 2, 12);
      expect(grid.faceArea[cells]).toBeCloseTo((Math.PI / 4) * 0.032 ** 2, 12);
    }
  });

  it('goes on 0.6133 radii beyond an open end, without wall', () => {
    // Levine and Schwinger, Phys. Rev. 73 (1948) 383.
    const grid = makeGrid(bore, 100, true, true);
    expect(grid.face[0]).toBeCloseTo(-0.6133 * 0.0325, 12);
    expect(grid.dx * 100).toBeCloseTo(0.57 + 0.6133 * (0.0325 + 0.016), 12);
    expect(grid.wallArea.reduce((a, b) => a + b, 0) / bore.reduce((sum, s) => sum + wallOf(s), 0)).toBeCloseTo(1, 10);
  });

  it('never leaves a cell much smaller than its faces let in, whatever steps the bore has', () => {
    const size = fc.double({ min: 0.02, max: 0.2, noNaN: true });
    const piece = fc.tuple(fc.double({ min: 0.01, max: 0.6, noNaN: true }), size, size);
    fc.assert(
      fc.property(
        fc.array(piece, { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 20, max: 160 }),
        fc.option(fc.double({ min: 1, max: 8, noNaN: true })),
        (pieces, cells, ratio) => {
          const finer = ratio === null ? null : { to: pieces[0][0] / 2, ratio, over: 0.1 };
          const grid = makeGrid(
            pieces.map(([length, a, b]) => section(length, a, b)),
            cells,
            false,
            true,
            finer,
          );
          for (let i = 0; i < cells; i++) {
            expect(grid.volume[i] / (grid.width[i] * 0.5 * (grid.faceArea[i] + grid.faceArea[i + 1]))).toBeGreaterThan(
              0.99,
            );
          }
        },
      ),
      { seed: 2, endOnFailure: true },
    );
  });
});
