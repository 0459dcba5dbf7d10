import { describe, expect, it } from 'vitest';
import { fatigueCycles, fatigueStrength } from '../../shared/durability/basquin.ts';
import { groundSurfaceFactor, machinedSurfaceFactor } from '../../shared/durability/fatigue-factors.ts';
import { lifeDeviation, lognormalBand } from '../../shared/durability/life-band.ts';
import { equivalentAmplitude, goodmanAmplitude, swtAmplitude } from '../../shared/durability/mean-stress.ts';
import { VALVE_MATERIALS } from '../../shared/durability/valve-materials.ts';

describe('Basquin line', () => {
  it('gives 1014 MPa at 1e5 cycles for 1045 at 595 HB (SAE J1099 coefficients)', () => {
    expect(fatigueStrength({ coefficient: 2725e6, exponent: -0.081 }, 1e5) / 1e6).toBeCloseTo(1014, 0);
  });
  it.each([
    [10, 1],
    [1e4, 0.7],
    [3e8, 0.7],
  ])('cycles and strength are inverse at %s cycles, reduction %s', (cycles, reduction) => {
    const line = { coefficient: 2000e6, exponent: -0.09 };
    expect(fatigueCycles(line, fatigueStrength(line, cycles, reduction), reduction) / cycles).toBeCloseTo(1, 6);
  });
  it('reduces the strength in full at 1e6 cycles', () => {
    const line = { coefficient: 2000e6, exponent: -0.09 };
    expect(fatigueStrength(line, 1e6, 0.6) / fatigueStrength(line, 1e6)).toBeCloseTo(0.6, 9);
  });
  it('meets published endurance figures at 1e7: 301 full hard 552 MPa; 1095 580–640; Ti-6Al-4V 570–620', () => {
    const at = (id: keyof typeof VALVE_MATERIALS) => fatigueStrength(VALVE_MATERIALS[id].fatigue, 1e7) / 1e6;
    expect(at('AISI-301-full-hard')).toBeCloseTo(552, 0);
    expect(at('AISI-1095')).toBeGreaterThan(580);
    expect(at('AISI-1095')).toBeLessThan(640);
    expect(at('Ti-6Al-4V')).toBeGreaterThan(570);
    expect(at('Ti-6Al-4V')).toBeLessThan(620);
  });
});

describe('mean stress', () => {
  it('Goodman: 0…400 MPa on 1000 MPa acts as ±250 MPa (exact)', () => {
    expect(goodmanAmplitude(400e6, 0, 1000e6)).toBeCloseTo(250e6, 0);
    expect(goodmanAmplitude(2000e6, 1200e6, 1000e6)).toBe(Number.POSITIVE_INFINITY);
  });
  it('SWT: 0…400 MPa acts as ±282.8 MPa (exact)', () => {
    expect(swtAmplitude(400e6, 0) / 1e6).toBeCloseTo(282.843, 3);
  });
  it('fully reversed stress stays itself in both', () => {
    expect(equivalentAmplitude(300e6, -300e6, 1000e6)).toBeCloseTo(300e6, 0);
  });
});

describe('surface factors (Shigley, Marin factors)', () => {
  it('machined 690 MPa about 0.80, ground 690 MPa about 0.91', () => {
    expect(machinedSurfaceFactor(690e6)).toBeCloseTo(0.798, 2);
    expect(groundSurfaceFactor(690e6)).toBeCloseTo(0.907, 2);
  });
});

describe('life band', () => {
  it('is never tighter than a factor of three', () => {
    const band = lognormalBand(1000, 0.01);
    expect(band.high / band.low).toBeGreaterThanOrEqual(3 - 1e-12);
    expect(band.low * band.high).toBeCloseTo(1000 * 1000, 3);
  });
  it('spans 10^(2·1.645·s) for wide scatter (normal distribution tables)', () => {
    const band = lognormalBand(1, 0.5);
    expect(Math.log10(band.high / band.low)).toBeCloseTo(1.645, 3);
  });
  it('a flatter S–N line turns the same stress error into a wider band', () => {
    expect(lifeDeviation(0.2, 0.1, -0.08)).toBeGreaterThan(lifeDeviation(0.2, 0.1, -0.16));
  });
});
