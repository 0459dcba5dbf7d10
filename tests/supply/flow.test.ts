import { describe, expect, it } from 'vitest';
import { airDelivered, tankSeconds, tankTemperature } from '../../shared/supply/air-tank.ts';
import {
  depressionAt,
  effectiveArea,
  flowLoss,
  INCH_MERCURY,
  pulsatingDepression,
  ratingAt,
} from '../../shared/supply/carburettor.ts';
import { criticalRatio, jetDiameter, liquidJetDiameter, orificeFlux } from '../../shared/supply/orifice.ts';

describe('orifice', () => {
  it('choked air: ṁ√T0/(A p0) = 0.0404149 (computed from NACA 1135 relations)', () => {
    expect((orificeFlux(1e6, 300, 1e5, 1.4, 287.05) * Math.sqrt(300)) / 1e6).toBeCloseTo(0.0404149, 7);
  });
  it('air chokes at p/p0 0.5283 (NACA 1135)', () => {
    expect(criticalRatio(1.4)).toBeCloseTo(0.5283, 4);
  });
  it('is continuous at choking and zero without a drop', () => {
    const r = criticalRatio(1.13);
    expect(orificeFlux(1e5, 300, r * 1e5 * 1.0001, 1.13, 188.55)).toBeCloseTo(
      orificeFlux(1e5, 300, 0, 1.13, 188.55),
      2,
    );
    expect(orificeFlux(1e5, 300, 1e5, 1.13, 188.55)).toBe(0);
  });
  it('jet diameters invert their flows', () => {
    const d = jetDiameter(1e-3, 1000, 0.8);
    expect((Math.PI / 4) * d * d * 0.8 * 1000).toBeCloseTo(1e-3, 12);
    const l = liquidJetDiameter(1e-3, 3e5, 740, 0.8);
    expect((Math.PI / 4) * l * l * 0.8 * Math.sqrt(2 * 740 * 3e5)).toBeCloseTo(1e-3, 12);
  });
});

describe('carburettor', () => {
  const area = effectiveArea(0.1, 3 * INCH_MERCURY, 1.2);
  it('flows its rating at its rating depression; 1.5 inHg is 0.7071 of 3.0 inHg (published convention)', () => {
    expect(depressionAt(0.1, area, 1.2)).toBeCloseTo(3 * INCH_MERCURY, 6);
    expect(ratingAt(1, 3, 1.5)).toBeCloseTo(Math.SQRT1_2, 9);
  });
  it('a half-time square pulse doubles flow and quadruples depression against smooth flow (exact)', () => {
    const p = pulsatingDepression([0.12, 0.12, 0, 0], area, 1.2);
    expect(p.mean / p.smoothed).toBeCloseTo(4, 9);
    expect(p.peak).toBeCloseTo(p.mean, 9);
  });
  it('as much drop as suction costs 1 − 1/√2 of the air', () => {
    expect(flowLoss(5e3, 5e3)).toBeCloseTo(1 - Math.SQRT1_2, 12);
  });
});

describe('air tank', () => {
  it('10 → 5 bar cools 300 K air to 246.10 K (closed form, computed)', () => {
    expect(tankTemperature(10e5, 5e5, 300)).toBeCloseTo(246.1, 2);
  });
  it('1 L of that through 10 mm² lasts 0.2590 s when the flow follows the pressure; mass leaves as (p/p0)^(1/γ)', () => {
    const mass = airDelivered(1e-3, 10e5, 5e5, 300);
    expect(mass).toBeCloseTo(((1e-3 * 10e5) / (287.05 * 300)) * (1 - 0.5 ** (1 / 1.4)), 12);
    const first = orificeFlux(10e5, 300, 0, 1.4, 287.05) * 10e-6;
    const last = orificeFlux(5e5, 246.1, 0, 1.4, 287.05) * 10e-6;
    expect(mass / first).toBeLessThan(0.259);
    expect(mass / last).toBeGreaterThan(0.259);
  });
  it('a compressor that keeps up makes it last for ever', () => {
    expect(tankSeconds(0.05, 8e5, 2e5, 293, 0.01, 0.02)).toBe(Number.POSITIVE_INFINITY);
  });
});
