import { describe, expect, it } from 'vitest';
import { aWeighting } from '../../shared/noise/a-weighting.ts';
import { monoxideFlow, secondsToConcentration } from '../../shared/noise/carbon-monoxide.ts';
import { broadsideFlux } from '../../shared/noise/heat-radiation.ts';
import { jetLevel, jetPower } from '../../shared/noise/jet-noise.ts';
import { distanceFor, levelAt, monopoleLevel, sumLevels } from '../../shared/noise/monopole.ts';
import { exposureMinutes, levelForMinutes } from '../../shared/noise/noise-dose.ts';

describe('A-weighting (IEC 61672-1 table)', () => {
  it.each([
    [50, -30.2],
    [100, -19.1],
    [250, -8.6],
    [1000, 0],
    [4000, 1.0],
  ])('%s Hz: %s dB', (f, db) => {
    expect(Math.abs(aWeighting(f) - db)).toBeLessThan(0.15);
  });
});

describe('noise dose (NIOSH 98-126)', () => {
  it('85 dB(A) 8 h, 100 dB(A) 15 min, 110 dB(A) 89 s', () => {
    expect(exposureMinutes(85)).toBe(480);
    expect(exposureMinutes(100)).toBe(15);
    expect(exposureMinutes(110) * 60).toBeCloseTo(89.3, 1);
    expect(levelForMinutes(exposureMinutes(107))).toBeCloseTo(107, 9);
  });
});

describe('monopole', () => {
  const sine = (n: number, a: number) => Array.from({ length: n }, (_, i) => a * Math.sin((2 * Math.PI * i) / n));
  const point = { radius: 1e-4, airDensity: 1.2, soundSpeed: 343 };
  it('1 kHz, 0.01 m³/s: p = ρ f q/2 in the open, √2 more over hard ground, 109.5 dB at 1 m (exact formula)', () => {
    const expected = 20 * Math.log10((Math.SQRT2 * 1.2 * 1000 * 0.01) / 2 / Math.SQRT2 / 20e-6);
    expect(monopoleLevel(sine(64, 0.01), 1000, point)).toBeCloseTo(expected, 1);
    expect(expected).toBeCloseTo(109.5, 0);
  });
  it('an opening as wide as ka = 1 radiates 3 dB less than a point', () => {
    const wide = { ...point, radius: 343 / (2 * Math.PI * 1000) };
    expect(monopoleLevel(sine(64, 0.01), 1000, point) - monopoleLevel(sine(64, 0.01), 1000, wide)).toBeCloseTo(3.01, 2);
  });
  it('steady flow is silent; doubling the pulse adds 6 dB', () => {
    expect(monopoleLevel(new Array(32).fill(0.3), 200, point)).toBeLessThan(-100);
    expect(monopoleLevel(sine(64, 0.02), 1000, point) - monopoleLevel(sine(64, 0.01), 1000, point)).toBeCloseTo(
      6.02,
      2,
    );
  });
  it('two equal sources add 3 dB; level falls 6 dB for each doubling; stand-off inverts it', () => {
    expect(sumLevels([100, 100])).toBeCloseTo(103.01, 2);
    expect(levelAt(120, 2)).toBeCloseTo(113.98, 2);
    expect(levelAt(120, distanceFor(120, 85))).toBeCloseTo(85, 9);
  });
});

describe('carbon monoxide', () => {
  it('1 g of CO in 1 m³ of air of 1.2 kg/m³ is 862 ppm (ideal gas)', () => {
    expect(secondsToConcentration(1e-3, 1, 861.6, 1.2)).toBeCloseTo(1, 3);
  });
  it('grows as less of the heat is released', () => {
    expect(monoxideFlow(1e-3, 0.7, 0.82)).toBeGreaterThan(monoxideFlow(1e-3, 0.95, 0.82));
  });
});

it('a black cylinder at 1000 K, 0.1 × 1 m, throws σT⁴ D L/(π r²) at 2 m', () => {
  const q = broadsideFlux([1000], [0.1], [1], 1, 0, 2);
  expect(q).toBeCloseTo((5.670374e-8 * 1e12 * 0.1) / (Math.PI * 4), 6);
});

describe('jet', () => {
  it('follows the eighth power of speed (Lighthill): twice as fast is 24 dB more power', () => {
    expect(10 * Math.log10(jetPower(300, 0.1, 1.2, 340) / jetPower(150, 0.1, 1.2, 340))).toBeCloseTo(24.08, 2);
  });
  it('M = 1, 0.1 m, air: 10⁻⁴ of ½ρU³A is 18.5 W, 124.7 dB at 1 m before weighting for 680 Hz (exact formula)', () => {
    const power = jetPower(340, 0.1, 1.2, 340);
    expect(power).toBeCloseTo(18.52, 1);
    const expected = 10 * Math.log10(power / 1e-12 / (2 * Math.PI)) + aWeighting(680);
    expect(jetLevel([340], 0.1, 1.2, 340)).toBeCloseTo(expected, 6);
  });
});
