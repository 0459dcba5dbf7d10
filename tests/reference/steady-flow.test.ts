import { describe, expect, it } from 'vitest';
import { chokedFlowFactor, criticalPressureRatio, orificeFlow } from '../../shared/reference/choked-flow.ts';
import { fannoLength, fannoMach, fannoPressure, fannoTemperature } from '../../shared/reference/fanno-flow.ts';
import { areaRatio, machAtAreaRatio, pressureRatio, temperatureRatio } from '../../shared/reference/isentropic-flow.ts';
import { normalShock } from '../../shared/reference/normal-shock.ts';
import {
  rayleighMach,
  rayleighPressure,
  rayleighStagnationTemperature,
  rayleighTemperature,
} from '../../shared/reference/rayleigh-flow.ts';
import { blowdownState, blowdownTime } from '../../shared/reference/vessel-blowdown.ts';

const AIR = { gamma: 1.4, gasConstant: 287.05 };

describe('isentropic flow', () => {
  // NACA Report 1135, tables I and II.
  it.each([
    [0.2, 2.9635],
    [0.5, 1.3398],
    [0.8, 1.0382],
    [1.5, 1.1762],
    [2, 1.6875],
  ])('A/A* at Mach %d is %d', (mach, ratio) => {
    expect(areaRatio(mach, 1.4)).toBeCloseTo(ratio, 4);
    const branch = mach < 1 ? 'subsonic' : 'supersonic';
    expect(machAtAreaRatio(areaRatio(mach, 1.4), 1.4, branch)).toBeCloseTo(mach, 10);
  });

  it('has the tabled pressure and temperature at Mach 2', () => {
    expect(1 / pressureRatio(2, 1.4)).toBeCloseTo(0.1278, 4);
    expect(1 / temperatureRatio(2, 1.4)).toBeCloseTo(0.5556, 4);
  });

  it('refuses an area below the throat', () => {
    expect(() => machAtAreaRatio(0.9, 1.4, 'subsonic')).toThrow(RangeError);
  });
});

describe('normal shock', () => {
  // NACA Report 1135, table II.
  it.each([
    [1.5, 2.4583, 1.8621, 0.7011],
    [2, 4.5, 2.6667, 0.5774],
    [3, 10.3333, 3.8571, 0.4752],
  ])('at Mach %d: p2/p1 %d, ρ2/ρ1 %d, M2 %d', (mach, pressure, density, after) => {
    const shock = normalShock(mach, 1.4);
    expect(shock.pressureRatio).toBeCloseTo(pressure, 4);
    expect(shock.densityRatio).toBeCloseTo(density, 4);
    expect(shock.mach).toBeCloseTo(after, 4);
  });

  it('refuses subsonic flow', () => {
    expect(() => normalShock(0.9, 1.4)).toThrow(RangeError);
  });
});

describe('Fanno flow', () => {
  // Compressible-flow tables (Shapiro, vol. 1, appendix B).
  it.each([
    [0.1, 66.9216],
    [0.2, 14.5333],
    [0.5, 1.0691],
  ])('4fL*/D at Mach %d is %d', (mach, length) => {
    expect(fannoLength(mach, 1.4)).toBeCloseTo(length, 4);
    expect(fannoMach(length, 1.4)).toBeCloseTo(mach, 4);
  });

  it('keeps mass flow and stagnation temperature', () => {
    for (const mach of [0.1, 0.4, 0.9]) {
      const massFlow = (fannoPressure(mach, 1.4) * mach) / Math.sqrt(fannoTemperature(mach, 1.4));
      expect(massFlow).toBeCloseTo(1, 12);
      expect(fannoTemperature(mach, 1.4) * temperatureRatio(mach, 1.4)).toBeCloseTo(1.2, 12);
    }
  });
});

describe('Rayleigh flow', () => {
  // Compressible-flow tables (Shapiro, vol. 1, appendix B).
  it.each([
    [0.1, 0.0468],
    [0.2, 0.1736],
    [0.5, 0.6914],
  ])('T0/T0* at Mach %d is %d', (mach, ratio) => {
    expect(rayleighStagnationTemperature(mach, 1.4)).toBeCloseTo(ratio, 4);
    expect(rayleighMach(rayleighStagnationTemperature(mach, 1.4), 1.4)).toBeCloseTo(mach, 10);
  });

  it('keeps mass flow and impulse', () => {
    for (const mach of [0.1, 0.4, 0.9]) {
      const p = rayleighPressure(mach, 1.4);
      expect((p * mach) / Math.sqrt(rayleighTemperature(mach, 1.4))).toBeCloseTo(1, 12);
      expect(p * (1 + 1.4 * mach * mach)).toBeCloseTo(2.4, 12);
    }
  });
});

describe('choked flow', () => {
  it('passes 0.0404149 of p0 A/√T0 for air', () => {
    // Computed from the closed form; the usual hand value is 0.0404.
    expect(chokedFlowFactor(1.4, 287.05)).toBeCloseTo(0.0404149, 7);
    expect(criticalPressureRatio(1.4)).toBeCloseTo(0.5283, 4); // NACA Report 1135, table I
  });

  it('is what an orifice passes below the critical ratio and not above', () => {
    const flow = { stagnationPressure: 1e6, stagnationTemperature: 300, area: 1e-5, ...AIR };
    const choked = (chokedFlowFactor(1.4, 287.05) * 1e6 * 1e-5) / Math.sqrt(300);
    expect(orificeFlow({ ...flow, backPressure: 1e5 })).toBeCloseTo(choked, 12);
    expect(orificeFlow({ ...flow, backPressure: 5.2e5 })).toBeCloseTo(choked, 12);
    expect(orificeFlow({ ...flow, backPressure: 8e5 })).toBeLessThan(0.85 * choked);
    expect(orificeFlow({ ...flow, backPressure: 1e6 })).toBe(0);
    // A small pressure difference passes what Bernoulli says.
    const density = 1e6 / (287.05 * 300);
    expect(orificeFlow({ ...flow, backPressure: 999_900 }) / (1e-5 * Math.sqrt(2 * density * 100))).toBeCloseTo(1, 3);
  });
});

describe('vessel blowdown', () => {
  const vessel = { volume: 1e-3, effectiveArea: 10e-6, temperature: 300, ...AIR };

  it('falls from 10 to 5 bar in 0.2590 s and ends at 246.10 K', () => {
    // Computed independently from the closed form.
    const time = blowdownTime(vessel, 0.5);
    expect(time).toBeCloseTo(0.259, 4);
    expect(blowdownState(vessel, time).temperature).toBeCloseTo(246.1, 2);
  });

  it('agrees with step-by-step emptying through the choked orifice', () => {
    let mass = (1e6 * 1e-3) / (287.05 * 300);
    const start = mass;
    const steps = 20_000;
    for (let i = 0; i < steps; i++) {
      const temperature = 300 * (mass / start) ** 0.4;
      const pressure = 1e6 * (mass / start) ** 1.4;
      mass -= ((chokedFlowFactor(1.4, 287.05) * pressure * 10e-6) / Math.sqrt(temperature)) * (0.2 / steps);
    }
    expect(blowdownState(vessel, 0.2).pressureFraction).toBeCloseTo((mass / start) ** 1.4, 5);
  });
});
