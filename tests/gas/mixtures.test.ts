import { describe, expect, it } from 'vitest';
import { FUELS } from '../../shared/gas/fuels.ts';
import {
  DRY_AIR,
  heatCapacity,
  mixture,
  propaneLowerHeatingValue,
  stoichiometricAirFuelRatio,
  stoichiometricProducts,
} from '../../shared/gas/mixtures.ts';
import {
  molarEnthalpy,
  molarEntropy,
  molarHeatCapacity,
  SPECIES,
  type SpeciesName,
} from '../../shared/gas/nasa-polynomials.ts';

const NAMES = Object.keys(SPECIES) as SpeciesName[];

describe('NASA polynomials', () => {
  it.each(NAMES)('%s: both ranges meet at 1000 K', (name) => {
    expect(molarHeatCapacity(name, 1000) / molarHeatCapacity(name, 1000 - 1e-9)).toBeCloseTo(1, 5);
    expect(Math.abs(molarEnthalpy(name, 1000) - molarEnthalpy(name, 1000 - 1e-9))).toBeLessThan(3);
    expect(molarEntropy(name, 1000) / molarEntropy(name, 1000 - 1e-9)).toBeCloseTo(1, 5);
  });

  it.each(NAMES)('%s: dh/dT is cp and T ds/dT is cp, inside and beyond the fit', (name) => {
    for (const t of [150, 300, 700, 1500, 3500, 6500]) {
      const cp = molarHeatCapacity(name, t);
      expect((molarEnthalpy(name, t + 0.5) - molarEnthalpy(name, t - 0.5)) / cp).toBeCloseTo(1, 5);
      expect((t * (molarEntropy(name, t + 0.5) - molarEntropy(name, t - 0.5))) / cp).toBeCloseTo(1, 5);
    }
  });

  // Heats of formation at 298.15 K, kJ/mol: CODATA key values (CO2, H2O, CO, OH and atoms) and common tables.
  it.each([
    ['N2', 0, 0.01],
    ['O2', 0, 0.01],
    ['H2', 0, 0.01],
    ['Ar', 0, 0.01],
    ['CO2', -393.51, 0.1],
    ['H2O', -241.826, 0.1],
    ['CO', -110.53, 0.1],
    ['H', 217.998, 0.1],
    ['O', 249.18, 0.1],
    ['NO', 91.0, 0.8],
    ['C3H8', -104.68, 1.0],
    ['C7H8', 50.2, 0.5],
    ['iC8H18', -224.0, 1.0],
  ] as const)('%s has heat of formation %d kJ/mol', (name, expected, tolerance) => {
    expect(Math.abs(molarEnthalpy(name, 298.15) / 1000 - expected)).toBeLessThan(tolerance);
  });
});

describe('mixtures', () => {
  // cp of air and of propane products: NASA TM-4513 coefficients evaluated by an independent open thermodynamics library.
  it.each([
    [300, 1004.8, 1079.3],
    [1000, 1140.7, 1281.3],
    [2000, 1251.9, 1447.2],
  ])('cp at %d K of air is %d and of propane products %d J/(kg K)', (t, air, products) => {
    expect(Math.abs(heatCapacity(DRY_AIR, t) / air - 1)).toBeLessThan(0.001);
    expect(Math.abs(heatCapacity(stoichiometricProducts('propane'), t) / products - 1)).toBeLessThan(0.001);
  });

  it('has the usual gas constants', () => {
    // 287.05 J/(kg K): U.S. Standard Atmosphere 1976.
    expect(Math.abs(DRY_AIR.gasConstant / 287.053 - 1)).toBeLessThan(2e-4);
    expect(Math.abs(stoichiometricProducts('propane').gasConstant / 292.45 - 1)).toBeLessThan(0.0005);
  });

  it('burns propane at the fuel table’s heating value and air-fuel ratio', () => {
    expect(Math.abs(propaneLowerHeatingValue() / 46.33e6 - 1)).toBeLessThan(0.001);
    expect(Math.abs(propaneLowerHeatingValue() / FUELS.propane.lowerHeatingValue - 1)).toBeLessThan(0.001);
    expect(Math.abs(stoichiometricAirFuelRatio('propane') / FUELS.propane.stoichiometricAirFuelRatio - 1)).toBeLessThan(
      0.002,
    );
    // Petrol is no pure substance: C8H15 needs 14.6, fuel tables say 14.7.
    expect(Math.abs(stoichiometricAirFuelRatio('petrol') / FUELS.petrol.stoichiometricAirFuelRatio - 1)).toBeLessThan(
      0.012,
    );
  });

  it('keeps mass in burning: air plus fuel weighs what the products weigh', () => {
    for (const fuel of ['propane', 'petrol'] as const) {
      const products = stoichiometricProducts(fuel);
      const nitrogen = Object.fromEntries(products.moles).N2 * SPECIES.N2.molarMass;
      const air = Object.fromEntries(DRY_AIR.moles).N2 * SPECIES.N2.molarMass;
      const afr = stoichiometricAirFuelRatio(fuel);
      const nitrogenByMass = ((air / DRY_AIR.molarMass) * afr) / (1 + afr);
      expect(nitrogen / products.molarMass).toBeCloseTo(nitrogenByMass, 6);
    }
  });

  it('refuses an empty or negative mixture', () => {
    expect(() => mixture({})).toThrow(RangeError);
    expect(() => mixture({ N2: 2, O2: -1 })).toThrow(RangeError);
  });
});
