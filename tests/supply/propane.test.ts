import { describe, expect, it } from 'vitest';
import { drawFor, greatestDraw, steadyDraw } from '../../shared/supply/cylinder-evaporation.ts';
import { cylinderGeometry } from '../../shared/supply/cylinder-geometry.ts';
import { vaporiserDuty } from '../../shared/supply/liquid-draw.ts';
import { compressibility, latentHeat, saturationTemperature, vapourPressure } from '../../shared/supply/propane.ts';

const C = 273.15;

describe('propane', () => {
  it.each([
    [-20, 244.5],
    [0, 474.5],
    [20, 836.5],
    [40, 1369.4],
  ])('boils at %s °C under %s kPa (CoolProp, computed)', (c, kpa) => {
    expect(vapourPressure(c + C) / 1e3 / kpa).toBeCloseTo(1, 2);
    expect(Math.abs(vapourPressure(c + C) / 1e3 / kpa - 1)).toBeLessThan(0.004);
  });
  it('boils at −42.1 °C under 1 atm (handbook) and takes 374.9 kJ/kg at 0 °C, about 426 at its boiling point', () => {
    expect(saturationTemperature(101325) - C).toBeCloseTo(-42.1, 1);
    expect(latentHeat(C) / 1e3).toBeCloseTo(374.9, 6);
    expect(Math.abs(latentHeat(231.04) / 426e3 - 1)).toBeLessThan(0.015);
  });
  it('is an ideal gas when thin, and saturated vapour at 20 °C has Z about 0.83 (CoolProp: 0.829, from memory, medium)', () => {
    expect(compressibility(1e3, 300)).toBeCloseTo(1, 3);
    expect(Math.abs(compressibility(836.5e3, 293.15) - 0.83)).toBeLessThan(0.03);
  });
});

describe('cylinder', () => {
  /** kBtu/h at 21 500 Btu/lb gross → kg/s. */
  const flow = (kbtu: number) => ((kbtu * 1000) / 21500) * (0.45359237 / 3600);
  const hundredPound = cylinderGeometry(45.36);
  it.each([
    [-18, 1, 113],
    [-7, 1, 167],
    [4, 1, 214],
    [16, 1, 277],
    [21, 1, 300],
    [-18, 0.1, 28],
    [-7, 0.1, 38],
    [4, 0.1, 49],
    [16, 0.1, 60],
    [21, 0.1, 66],
  ])(
    'a 100-lb cylinder at %s °C, %s full, gives %s kBtu/h for ever (supplier and generator manuals) within 15 %%',
    (c, fill, kbtu) => {
      const draw = steadyDraw(hundredPound, fill, c + C, 101325);
      expect(Math.abs(draw / flow(kbtu) - 1)).toBeLessThan(0.15);
    },
  );
  it('holds a small draw for the whole time, a big one until the pressure falls', () => {
    const small = drawFor(hundredPound, 45.36, 1, 293.15, 1e-3, 3600, 300e3);
    expect(small.stoppedBy).toBe('time');
    const big = drawFor(hundredPound, 45.36, 1, 293.15, 10e-3, 3600, 300e3);
    expect(big.stoppedBy).toBe('pressure');
    expect(big.temperature).toBeLessThan(293.15);
    expect(big.lasted).toBeLessThan(3600);
  });
  it('conserves heat: without air warming the fall in temperature pays for the vapour', () => {
    const g = { diameter: 1e-6, height: 1e-6, tareMass: 0 };
    const run = drawFor(g, 100, 1, 293.15, 0.01, 100, 101325);
    const expected = (0.01 * 100 * latentHeat(292.5)) / (99.5 * 2450);
    expect(293.15 - run.temperature).toBeCloseTo(expected, 2);
  });
  it('empties when the run is longer than the fuel', () => {
    expect(drawFor(hundredPound, 45.36, 0.05, 308, 5e-4, 36000, 110e3).stoppedBy).toBe('empty');
  });
  it('the greatest draw for a short run exceeds the endless one, and grows with heat', () => {
    const short = greatestDraw(hundredPound, 45.36, 1, 293.15, 600, 300e3);
    expect(short).toBeGreaterThan(steadyDraw(hundredPound, 1, 293.15, 300e3));
    expect(greatestDraw(hundredPound, 45.36, 1, 303.15, 600, 300e3)).toBeGreaterThan(short);
  });
  it('is the size that people know: 45 kg about 0.37 m × 1.1 m, 9 kg about 0.30 m wide', () => {
    expect(Math.abs(hundredPound.diameter - 0.375)).toBeLessThan(0.02);
    expect(Math.abs(cylinderGeometry(9.1).diameter - 0.3)).toBeLessThan(0.03);
  });
});

it('1 g/s of liquid at 0 °C needs 375 W to boil and 33 W more to reach 20 °C (first law)', () => {
  expect(vaporiserDuty(1e-3, 273.15, 273.15)).toBeCloseTo(374.9, 3);
  expect(vaporiserDuty(1e-3, 273.15, 293.15) - 374.9).toBeCloseTo(33.2, 3);
});

it('the greatest draw does last, and 1 % more does not, on a step ten times finer', () => {
  const g = cylinderGeometry(11);
  const most = greatestDraw(g, 11, 0.8, 288.15, 900, 300e3);
  expect(drawFor(g, 11, 0.8, 288.15, 0.99 * most, 900, 300e3, 240).stoppedBy).toBe('time');
  expect(drawFor(g, 11, 0.8, 288.15, 1.01 * most, 900, 300e3, 240).stoppedBy).toBe('pressure');
});
