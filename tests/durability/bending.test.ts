import { describe, expect, it } from 'vitest';
import { cantileverFrequency, rootStress } from '../../shared/durability/cantilever.ts';
import { loadedRodImpactStress, stripImpactStress, waveStress } from '../../shared/durability/impact-stress.ts';
import { circularPlateStress, rectangularPlateStress } from '../../shared/durability/plate-bending.ts';
import { discCompliance, discFootStress, impactForce } from '../../shared/durability/poppet-stress.ts';
import { rootStressAgainstStop, stopRadius, wrapStress } from '../../shared/durability/stop-curvature.ts';
import { valveTemperature } from '../../shared/durability/valve-temperature.ts';
import { archardVolume } from '../../shared/durability/wear.ts';

const E = 205e9;

describe('petal as a cantilever', () => {
  it('steel 0.15 × 20 mm rings at 309.57, 1940.0, 5432.1 Hz (Euler–Bernoulli, computed)', () => {
    expect(cantileverFrequency(E, 7850, 0.15e-3, 20e-3, 1)).toBeCloseTo(309.57, 1);
    expect(cantileverFrequency(E, 7850, 0.15e-3, 20e-3, 2)).toBeCloseTo(1940, 0);
    expect(cantileverFrequency(E, 7850, 0.15e-3, 20e-3, 3)).toBeCloseTo(5432.1, 0);
  });
  it('root stress is K E t δ/(2L²) with K 3.516, 4 and 3 (beam theory)', () => {
    const unit = (E * 0.15e-3 * 2e-3) / (2 * 0.02 ** 2);
    expect(rootStress(E, 0.15e-3, 0.02, 2e-3) / unit).toBeCloseTo(3.516, 9);
    expect(rootStress(E, 0.15e-3, 0.02, 2e-3, 'uniform pressure') / unit).toBe(4);
    expect(rootStress(E, 0.15e-3, 0.02, 2e-3, 'tip load') / unit).toBe(3);
  });
});

describe('curved stop', () => {
  it('the radius lifts an arc of 20 mm by 2 mm exactly', () => {
    const r = stopRadius(0.02, 2e-3);
    expect(r * (1 - Math.cos(0.02 / r))).toBeCloseTo(2e-3, 12);
  });
  it('wrapped strip: 0.15 mm steel on R 100 mm carries 153.75 MPa (E t/2R)', () => {
    expect(wrapStress(E, 0.15e-3, 0.1) / 1e6).toBeCloseTo(153.75, 6);
  });
  it('the stop caps the root stress once the petal lies on it', () => {
    const low = rootStressAgainstStop(E, 0.15e-3, 0.02, 0.5e-3, 2e-3);
    const high = rootStressAgainstStop(E, 0.15e-3, 0.02, 2e-3, 2e-3);
    expect(low).toBeCloseTo(rootStress(E, 0.15e-3, 0.02, 0.5e-3), 0);
    expect(high).toBeCloseTo(wrapStress(E, 0.15e-3, stopRadius(0.02, 2e-3)), 0);
    expect(high).toBeLessThan(rootStress(E, 0.15e-3, 0.02, 2e-3));
  });
});

describe('impact', () => {
  it('steel gives about 40 MPa per m/s (√(Eρ)) and √3 of that in bending (Hunt 1960)', () => {
    expect(waveStress(E, 7850, 1) / 1e6).toBeCloseTo(40.1, 1);
    expect(stripImpactStress(E, 7850, 1) / waveStress(E, 7850, 1)).toBeCloseTo(Math.sqrt(3), 12);
  });
  it('a mass on the far end of the rod adds √(M/m) (Timoshenko & Goodier)', () => {
    expect(loadedRodImpactStress(E, 7850, 2, 4, 1) / waveStress(E, 7850, 2)).toBeCloseTo(3, 12);
  });
});

describe('plates (Roark)', () => {
  it('square 0.2874 and very long 0.75 p b²/t²', () => {
    expect(rectangularPlateStress(1e5, 0.01, 0.01, 1e-3)).toBeCloseTo(0.2874 * 1e5 * 100, 3);
    expect(rectangularPlateStress(1e5, 10, 0.01, 1e-3) / (1e5 * 100)).toBeCloseTo(0.75, 2);
  });
  it('circle, ν 0.3: 1.2375 p a²/t²', () => {
    expect(circularPlateStress(1e5, 0.01, 1e-3, 0.3) / (1e5 * 100)).toBeCloseTo(1.2375, 6);
  });
});

describe('poppet landing', () => {
  it('steel disc 40 mm × 2 mm, ν 0.3: centre load bends it by (3+ν)/(1+ν) P a²/(16πD), 1.38e-7 m/N (Timoshenko)', () => {
    const stiffness = (200e9 * 2e-3 ** 3) / (12 * 0.91);
    expect(discCompliance(200e9, 0.3, 0.02, 2e-3)).toBeCloseTo(((3.3 / 1.3) * 4e-4) / (16 * Math.PI * stiffness), 15);
    expect(discCompliance(200e9, 0.3, 0.02, 2e-3) * 1e7).toBeCloseTo(1.379, 2);
  });
  it('the spring of the disc stores ½ m v² (energy balance)', () => {
    const force = impactForce(3, 0.02, 1.4e-7);
    expect(0.5 * 1.4e-7 * force ** 2).toBeCloseTo(0.5 * 0.02 * 9, 12);
  });
  it('where stem and disc are equally wide the foot stress is 3P/(2πt²) (limit of the formula)', () => {
    expect(discFootStress(100, 0.3, 0.01, 0.01, 1e-3)).toBeCloseTo(300 / (2 * Math.PI * 1e-6), 0);
  });
});

describe('valve temperature', () => {
  const heat = {
    openShare: 0.3,
    gasFilm: 100,
    gasTemperature: 1500,
    airFilm: 200,
    airTemperature: 300,
    seatConductance: 300,
    seatTemperature: 400,
  };
  it('lies between charge and gas, and falls as the valve opens longer', () => {
    const t = valveTemperature(heat);
    expect(t).toBeGreaterThan(300);
    expect(t).toBeLessThan(1500);
    expect(valveTemperature({ ...heat, openShare: 0.6 })).toBeLessThan(t);
  });
});

it('Archard wear is K F s/H', () => {
  expect(archardVolume(1e-4, 10, 1000, 2e9)).toBeCloseTo(5e-10, 16);
});
