import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openEnd, wall } from '../../shared/duct/boundary.ts';
import { makeGasClosure } from '../../shared/duct/flow.ts';
import { makeGrid, makeGridFromArea } from '../../shared/duct/grid.ts';
import { COURANT } from '../../shared/duct/step.ts';
import type { Section } from '../../shared/engine/engine.ts';
import { makeGasTable } from '../../shared/gas/gas-table.ts';
import { contents, march, outside, perfectGas, startFlow } from './support.ts';

const section = (length: number, startDiameter: number, endDiameter: number): Section => ({
  role: 'chamber',
  length,
  startDiameter,
  endDiameter,
});

const propane = makeGasClosure(makeGasTable('propane'));

describe('gas at rest', () => {
  it('stays at rest in any bore, closed or open, cold or hot (to 1e-13 of the sound speed)', () => {
    const diameter = fc.double({ min: 0.02, max: 0.2, noNaN: true });
    const piece = fc.tuple(fc.double({ min: 0.02, max: 0.6, noNaN: true }), diameter, diameter);
    const bore = fc.array(piece, { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(
        bore,
        fc.boolean(),
        fc.boolean(),
        fc.double({ min: 250, max: 2000, noNaN: true }),
        fc.option(fc.double({ min: 1, max: 8, noNaN: true })),
        (pieces, openLeft, openRight, temperature, ratio) => {
          const sections = pieces.map(([length, a, b]) => section(length, a, b));
          const { length } = sections[0];
          const finer = ratio === null ? null : { to: length / 2, ratio, over: length };
          const grid = makeGrid(sections, 60, openLeft, openRight, finer);
          const flow = startFlow(grid, perfectGas(), () => ({ pressure: 101_325, temperature }));
          const air = outside(101_325, temperature);
          const end = (open: boolean) => (open ? openEnd(air, 0.5) : wall());
          let steps = 0;
          march(flow, (200 * COURANT) / flow.soundRate, {
            left: end(openLeft),
            right: end(openRight),
            each: () => steps++,
          });
          for (let i = 0; i < grid.cells; i++) {
            expect(Math.abs(flow.velocity[i] / flow.soundSpeed[i])).toBeLessThan(1e-13);
            expect(Math.abs(flow.pressure[i] / 101_325 - 1)).toBeLessThan(1e-12);
          }
          expect(steps).toBeGreaterThanOrEqual(200);
        },
      ),
      { numRuns: 25, seed: 1, endOnFailure: true },
    );
  });

  it('stays at rest with layers of air, fuel and hot products side by side', () => {
    const grid = makeGrid(
      [section(0.2, 0.1, 0.1), section(0.1, 0.1, 0.04), section(0.4, 0.04, 0.04)],
      70,
      false,
      false,
    );
    const flow = startFlow(grid, propane, (x) => {
      if (x < 0.2) return { pressure: 101_325, temperature: 1900, product: 1 };
      return x < 0.35 ? { pressure: 101_325, temperature: 320, fuel: 0.06 } : { pressure: 101_325, temperature: 290 };
    });
    march(flow, 0.003);
    for (let i = 0; i < grid.cells; i++) expect(Math.abs(flow.velocity[i] / flow.soundSpeed[i])).toBeLessThan(1e-6);
  });
});

describe('a closed duct', () => {
  const grid = makeGrid(
    [section(0.2, 0.12, 0.12), section(0.15, 0.12, 0.05), section(0.5, 0.05, 0.05)],
    120,
    false,
    false,
  );
  const violent = () =>
    startFlow(grid, propane, (x) =>
      x < 0.15
        ? { pressure: 4e5, temperature: 2200, product: 0.9, fuel: 0.01 }
        : { pressure: 101_325, temperature: 300, velocity: 20, fuel: x > 0.6 ? 0.06 : 0 },
    );

  it('keeps its mass, energy, fuel and products to round-off', () => {
    const flow = violent();
    const before = contents(flow);
    march(flow, 0.01);
    const after = contents(flow);
    expect(Math.abs(after.mass / before.mass - 1)).toBeLessThan(1e-12);
    expect(Math.abs(after.fuel / before.fuel - 1)).toBeLessThan(1e-12);
    expect(Math.abs(after.product / before.product - 1)).toBeLessThan(1e-12);
    // Energy counts from 298.15 K and passes through zero, so it is measured against p V.
    expect(Math.abs(after.energy - before.energy)).toBeLessThan(
      1e-12 * 4e5 * grid.volume.reduce((a, b) => a + b, 0) * 100,
    );
    expect(Math.max(...flow.velocity.map(Math.abs))).toBeGreaterThan(20);
  });

  it('changes its momentum by what its ends and walls push, and by nothing else', () => {
    const flow = violent();
    const momentum = () => flow.momentum.reduce((sum, m, i) => sum + m * grid.volume[i], 0);
    const before = momentum();
    let pushed = 0;
    let scale = 0;
    march(flow, 0.002, {
      each: (_dt, book) => {
        pushed += book.leftMomentum - book.rightMomentum + book.wallPush;
        scale += Math.abs(book.leftMomentum);
        expect(book.leftMass).toBe(0);
        expect(book.rightEnergy).toBe(0);
      },
    });
    expect(Math.abs(momentum() - before - pushed)).toBeLessThan(1e-11 * scale);
  });

  it('mixes no more than it holds: mass fractions stay between 0 and their largest start', () => {
    const flow = violent();
    march(flow, 0.01);
    for (let i = 0; i < grid.cells; i++) {
      expect(flow.fuel[i]).toBeGreaterThan(-1e-9);
      expect(flow.fuel[i]).toBeLessThan(0.06 + 1e-9);
      expect(flow.product[i]).toBeGreaterThan(-1e-9);
      expect(flow.product[i]).toBeLessThan(0.9 + 1e-9);
    }
  });
});

describe('an open duct', () => {
  it('books through its ends exactly what its contents lose', () => {
    const grid = makeGrid([section(0.3, 0.1, 0.1), section(0.4, 0.1, 0.05)], 80, true, true);
    const flow = startFlow(grid, perfectGas(), (x) => ({
      pressure: x < 0.2 ? 3e5 : 1e5,
      temperature: x < 0.2 ? 1500 : 300,
    }));
    const before = contents(flow);
    const out = { mass: 0, energy: 0 };
    const air = outside(1e5, 300);
    march(flow, 0.006, {
      left: openEnd(air, 0.5),
      right: openEnd(air, 0.1),
      each: (_dt, book) => {
        out.mass += book.rightMass - book.leftMass;
        out.energy += book.rightEnergy - book.leftEnergy;
      },
    });
    const after = contents(flow);
    expect(Math.abs(before.mass - out.mass - after.mass) / before.mass).toBeLessThan(1e-12);
    expect(Math.abs(before.energy - out.energy - after.energy) / Math.abs(before.energy)).toBeLessThan(1e-11);
    expect(Math.abs(out.mass)).toBeGreaterThan(0.01 * before.mass);
  });
});

describe('a blast through a sudden step of the bore', () => {
  it.each([
    [0.2, 0.03],
    [0.03, 0.2],
    [0.1, 0.05],
    [0.05, 0.1],
  ])('from %d to %d m stays physical and keeps its books', (before, after) => {
    const grid = makeGrid([section(0.31, before, before), section(0.4, after, after)], 80, false, false);
    const flow = startFlow(grid, perfectGas(), (x) => ({
      pressure: x < 0.25 ? 1e6 : 1e5,
      temperature: x < 0.25 ? 2500 : 300,
    }));
    const start = contents(flow);
    march(flow, 0.01);
    expect(Math.min(...flow.pressure)).toBeGreaterThan(0);
    expect(Math.min(...flow.temperature)).toBeGreaterThan(0);
    expect(Math.abs(contents(flow).mass / start.mass - 1)).toBeLessThan(1e-12);
    expect(Math.abs(contents(flow).energy / start.energy - 1)).toBeLessThan(1e-10);
  });
});

describe('mirror symmetry', () => {
  it('gives the mirrored flow in the mirrored duct', () => {
    const length = 0.8;
    const area = (x: number) => 0.004 * (1 + 0.8 * Math.sin(5 * x));
    const start = (x: number) => ({
      pressure: 1e5 * (1 + 2 * Math.exp(-((x - 0.2) ** 2) / 0.002)),
      temperature: 300 + 600 * x,
      velocity: 30 * Math.sin(4 * x),
    });
    const gas = perfectGas();
    const one = startFlow(makeGridFromArea(area, length, 90), gas, start);
    const two = startFlow(
      makeGridFromArea((x) => area(length - x), length, 90),
      gas,
      (x) => {
        const there = start(length - x);
        return { ...there, velocity: -there.velocity };
      },
    );
    const air = outside(1e5, 300);
    march(one, 0.002, { right: openEnd(air, 0.5) });
    march(two, 0.002, { left: openEnd(air, 0.5) });
    for (let i = 0; i < 90; i++) {
      expect(Math.abs(one.pressure[i] / two.pressure[89 - i] - 1)).toBeLessThan(1e-9);
      expect(Math.abs(one.velocity[i] + two.velocity[89 - i])).toBeLessThan(1e-6);
      expect(Math.abs(one.temperature[i] / two.temperature[89 - i] - 1)).toBeLessThan(1e-9);
    }
  });
});
