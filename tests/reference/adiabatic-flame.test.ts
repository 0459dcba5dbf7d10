import { describe, expect, it } from 'vitest';
import { makeGasTable } from '../../shared/gas/gas-table.ts';
import { molarEnthalpy, molarEntropy } from '../../shared/gas/nasa-polynomials.ts';
import { adiabaticFlameTemperature, type Flame } from '../../shared/reference/adiabatic-flame.ts';
import { equilibrium } from '../../shared/reference/chemical-equilibrium.ts';

const cold: Omit<Flame, 'held' | 'dissociation'> = {
  fuel: 'propane',
  equivalenceRatio: 1,
  temperature: 298.15,
  pressure: 101_325,
};

// Propane figures, and the rich, lean and petrol ones with dissociation: an independent open thermodynamics library
// (equilibrium at given H, p and at given U, V) on the same NASA TM-4513 data.
describe('adiabatic flame', () => {
  it.each([
    ['pressure', false, 2393],
    ['volume', false, 2905],
    ['pressure', true, 2266],
    ['volume', true, 2630.5],
  ] as const)('propane, φ 1, at constant %s, dissociation %s: %d K', (held, dissociation, expected) => {
    expect(Math.abs(adiabaticFlameTemperature({ ...cold, held, dissociation }) - expected)).toBeLessThan(1);
  });

  it.each([
    ['propane', 0.7, 1879.6, 2262.3],
    ['propane', 1.3, 2123.3, 2564.5],
    ['petrol', 0.7, 1902.4, 2288.0],
    ['petrol', 1, 2288.5, 2652.9],
    ['petrol', 1.3, 2161.2, 2607.5],
  ] as const)(
    '%s, φ %d, with dissociation: %d K at constant pressure, %d K at constant volume',
    (fuel, equivalenceRatio, p, v) => {
      const flame = { ...cold, fuel, equivalenceRatio, dissociation: true };
      expect(Math.abs(adiabaticFlameTemperature({ ...flame, held: 'pressure' }) - p)).toBeLessThan(1);
      expect(Math.abs(adiabaticFlameTemperature({ ...flame, held: 'volume' }) - v)).toBeLessThan(1);
    },
  );

  it('agrees without dissociation with the gas table and heating value that the solver burns by', () => {
    const table = makeGasTable('propane');
    const [airFuel, heatingValue] = [15.678, 46.33e6];
    const knot = (t: number) => Math.round((t - table.temperatureMin) / table.temperatureStep);
    // Enthalpy of products per kg at the two knots around the flame temperature brackets the heat released.
    const h = (t: number) => table.energy[knot(t) * 3 + 2] + table.gasConstant[2] * t;
    const released = heatingValue / (1 + airFuel);
    const t = 2375 + (25 * (released - h(2375))) / (h(2400) - h(2375));
    expect(Math.abs(t - adiabaticFlameTemperature({ ...cold, held: 'pressure', dissociation: false }))).toBeLessThan(
      1.5,
    );
  });
});

describe('chemical equilibrium', () => {
  it('obeys the law of mass action and keeps its atoms', () => {
    const t = 2500;
    const pressure = 2e5;
    const atoms = { C: 3, H: 8, O: 10, N: 37.6, Ar: 0.45 };
    const n = equilibrium(atoms, t, { pressure });
    const get = (name: Parameters<typeof n.get>[0]) => n.get(name) ?? 0;
    const total = [...n.values()].reduce((a, b) => a + b, 0);
    const partial = (name: Parameters<typeof n.get>[0]) => ((get(name) / total) * pressure) / 1e5;
    const gibbs = (name: Parameters<typeof molarEnthalpy>[0]) => molarEnthalpy(name, t) - t * molarEntropy(name, t);
    const shift = Math.exp(-(gibbs('CO') + gibbs('O2') / 2 - gibbs('CO2')) / (8.314462618 * t));
    expect((partial('CO') * Math.sqrt(partial('O2'))) / partial('CO2') / shift).toBeCloseTo(1, 8);
    const nitric = Math.exp(-(gibbs('NO') - gibbs('N2') / 2 - gibbs('O2') / 2) / (8.314462618 * t));
    expect(partial('NO') / Math.sqrt(partial('N2') * partial('O2')) / nitric).toBeCloseTo(1, 8);
    expect(get('CO2') + get('CO')).toBeCloseTo(3, 9);
    expect(2 * get('H2O') + 2 * get('H2') + get('OH') + get('H')).toBeCloseTo(8, 9);
  });

  it('gives the same gas at a volume as at the pressure which that gas has there', () => {
    const atoms = { C: 3, H: 8, O: 10, N: 37.6, Ar: 0 };
    const atPressure = equilibrium(atoms, 2400, { pressure: 3e5 });
    const total = [...atPressure.values()].reduce((a, b) => a + b, 0);
    const atVolume = equilibrium(atoms, 2400, { volume: (total * 8.314462618 * 2400) / 3e5 });
    for (const [name, amount] of atPressure) expect(atVolume.get(name)! / amount).toBeCloseTo(1, 8);
  });
});
