import { describe, expect, it } from 'vitest';
import {
  AIR,
  energyAt,
  FUEL,
  heatCapacityAt,
  makeGasTable,
  makePerfectGasTable,
  PRODUCTS,
} from '../../shared/gas/gas-table.ts';
import {
  DRY_AIR,
  FUEL_VAPOUR,
  heatCapacity,
  sensibleEnthalpy,
  stoichiometricProducts,
} from '../../shared/gas/mixtures.ts';

describe.each(['propane', 'petrol'] as const)('gas table for %s', (fuel) => {
  const table = makeGasTable(fuel);
  const gases = [DRY_AIR, FUEL_VAPOUR[fuel], stoichiometricProducts(fuel)];

  it('spans 150 to 4000 K', () => {
    expect(table.temperatureMin).toBe(150);
    expect(table.temperatureMin + (table.knots - 1) * table.temperatureStep).toBe(4000);
    expect(table.energy).toHaveLength(3 * table.knots);
  });

  it('has zero sensible enthalpy at 298.15 K', () => {
    for (const s of [AIR, FUEL, PRODUCTS]) {
      expect(energyAt(table, s, 298.15) + table.gasConstant[s] * 298.15).toBeCloseTo(0, 6);
    }
  });

  it('follows the NASA polynomials to 0.06 % in cv and 0.015 % in energy', () => {
    let worstHeatCapacity = 0;
    let worstEnergy = 0;
    for (const s of [AIR, FUEL, PRODUCTS]) {
      const r = table.gasConstant[s];
      for (let t = 200; t <= 4000; t += 1.5) {
        const cv = heatCapacity(gases[s], t) - r;
        worstHeatCapacity = Math.max(worstHeatCapacity, Math.abs(heatCapacityAt(table, s, t) / cv - 1));
        const e = sensibleEnthalpy(gases[s], t) - r * (t - 298.15);
        if (t > 400) worstEnergy = Math.max(worstEnergy, Math.abs((energyAt(table, s, t) + r * 298.15) / e - 1));
      }
    }
    expect(worstHeatCapacity).toBeLessThan(6e-4);
    expect(worstEnergy).toBeLessThan(1.5e-4);
  });

  it('has energy that is the exact integral of its own cv', () => {
    for (const s of [AIR, FUEL, PRODUCTS]) {
      for (const [from, to] of [
        [157, 163],
        [301, 324],
        [1990, 1999],
      ]) {
        // Simpson's rule is exact for the linear cv inside one interval.
        const integral =
          ((to - from) / 6) *
          (heatCapacityAt(table, s, from) +
            4 * heatCapacityAt(table, s, (from + to) / 2) +
            heatCapacityAt(table, s, to));
        expect(energyAt(table, s, to) - energyAt(table, s, from)).toBeCloseTo(integral, 7);
      }
      expect(energyAt(table, s, 500 + 1e-9)).toBeCloseTo(energyAt(table, s, 500 - 1e-9), 4);
    }
  });
});

describe('perfect-gas table', () => {
  it('has constant cv at any temperature', () => {
    const table = makePerfectGasTable(1.4, 287.05);
    for (const t of [1e-3, 300, 90_000]) {
      expect(heatCapacityAt(table, AIR, t)).toBeCloseTo(287.05 / 0.4, 9);
      expect(energyAt(table, PRODUCTS, t) - energyAt(table, PRODUCTS, 0)).toBeCloseTo((287.05 / 0.4) * t, 5);
    }
  });

  it('refuses γ of 1 or less', () => {
    expect(() => makePerfectGasTable(1, 287)).toThrow(RangeError);
    expect(() => makePerfectGasTable(1.4, 0)).toThrow(RangeError);
  });
});
