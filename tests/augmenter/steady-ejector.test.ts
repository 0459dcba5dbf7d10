import { describe, expect, it } from 'vitest';
import { steadyEjector } from '../../shared/augmenter/steady-ejector.ts';

describe('steady ejector', () => {
  // Momentum theory of the constant-area ejector (von Kármán 1949), solved independently.
  it.each([
    [4, 1, 1.2369],
    [6.05, 1, 1.321],
    [9, 1, 1.3992],
    [6.05, 0.3, 1.2618],
  ])('area ratio %d, jet density %d of air: thrust ratio %d', (areaRatio, densityRatio, expected) => {
    expect(Math.abs(steadyEjector({ areaRatio, densityRatio }).thrustRatio / expected - 1)).toBeLessThan(1e-4);
  });

  it('tends to 2 for an endless tube', () => {
    expect(Math.abs(steadyEjector({ areaRatio: 1e8, densityRatio: 1 }).thrustRatio - 2)).toBeLessThan(1e-3);
    expect(steadyEjector({ areaRatio: 1e8, densityRatio: 1 }).thrustRatio).toBeLessThan(2);
  });

  it('closes mass and momentum in its own result', () => {
    const [areaRatio, densityRatio, lipLoss, wallLoss] = [6, 0.4, 0.2, 0.1];
    const {
      thrustRatio,
      entrainmentRatio,
      entryVelocity: v,
    } = steadyEjector({ areaRatio, densityRatio, lipLoss, wallLoss });
    const jet = Math.sqrt(1 + ((1 + lipLoss) * v * v) / densityRatio);
    expect(entrainmentRatio).toBeCloseTo((v * (areaRatio - 1)) / (densityRatio * jet), 10);
    const mass = densityRatio * jet * (1 + entrainmentRatio);
    const mixed = (jet + v * (areaRatio - 1)) / areaRatio;
    const into = -0.5 * (1 + lipLoss) * v * v * areaRatio + densityRatio * jet ** 2 + v * v * (areaRatio - 1);
    expect(into).toBeCloseTo(mass * mixed * (1 + wallLoss / 2), 10);
    expect(thrustRatio).toBeCloseTo((mass * mixed) / (densityRatio * jet), 10);
  });

  it('loses by lip and wall and gains by an efficient diffuser', () => {
    const clean = { areaRatio: 6.05, densityRatio: 0.3 };
    const base = steadyEjector(clean).thrustRatio;
    expect(steadyEjector({ ...clean, lipLoss: 0.5 }).thrustRatio).toBeLessThan(base - 0.02);
    expect(steadyEjector({ ...clean, wallLoss: 0.1 }).thrustRatio).toBeLessThan(base - 0.02);
    expect(steadyEjector({ ...clean, diffuserAreaRatio: 1.5, diffuserEfficiency: 1 }).thrustRatio).toBeGreaterThan(
      base + 0.05,
    );
    expect(steadyEjector({ ...clean, diffuserAreaRatio: 1.5, diffuserEfficiency: 0.3 }).thrustRatio).toBeLessThan(base);
  });

  it('never gives what only pulsing gives: 1.8 is out of reach of any usual steady ejector', () => {
    for (const areaRatio of [3, 6, 10, 16]) {
      expect(steadyEjector({ areaRatio, densityRatio: 1 }).thrustRatio).toBeLessThan(1.55);
    }
  });

  it('refuses what is no ejector', () => {
    expect(() => steadyEjector({ areaRatio: 1, densityRatio: 1 })).toThrow(/wider/);
    expect(() => steadyEjector({ areaRatio: 4, densityRatio: 0 })).toThrow(RangeError);
    expect(() => steadyEjector({ areaRatio: 4, densityRatio: 1, diffuserAreaRatio: 0.8 })).toThrow(RangeError);
    expect(() => steadyEjector({ areaRatio: 4, densityRatio: 1, lipLoss: -0.1 })).toThrow(RangeError);
  });
});
