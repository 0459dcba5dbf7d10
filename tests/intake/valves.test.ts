/** Reeds and poppets against beam theory and the closed form of a mass on a spring. */
import { describe, expect, it } from 'vitest';
import { valveMaterialStiffness } from '../../shared/durability/valve-stiffness.ts';
import type { PoppetIntake, ReedIntake } from '../../shared/engine/engine.ts';
import { followCures, followForces } from '../../shared/intake/follow.ts';
import { jetSpeed, orificeFlow } from '../../shared/intake/orifice.ts';
import { makePoppetValve, poppetDischarge, poppetMovingMass } from '../../shared/intake/poppet.ts';
import { makeReedValve, reedCurtain, reedFrequency, seriesArea } from '../../shared/intake/reed.ts';
import { chokedFlowFactor } from '../../shared/reference/choked-flow.ts';

const REED: ReedIntake = {
  kind: 'reed',
  petals: 10,
  length: 0.02,
  width: 0.01,
  thickness: 0.00015,
  material: 'AISI-1095',
  stopLift: 1,
  portArea: 5e-5,
};
const POPPET: PoppetIntake = {
  kind: 'poppet',
  valves: 1,
  headDiameter: 0.03,
  portDiameter: 0.026,
  lift: 1,
  mass: 0.02,
  stemDiameter: 0.005,
  springMass: 0.006,
  springRate: 2000,
  preload: 0,
  material: 'Ti-6Al-4V',
  stemJoint: 'one-piece',
  axis: 'horizontal',
};

describe('reed', () => {
  it('has the bending frequencies of an Euler–Bernoulli cantilever: 309.57 and 1940.0 Hz for 0.15 × 20 mm steel', () => {
    expect(Math.abs(reedFrequency(1, 0.00015, 0.02, 205e9, 7850) / 309.57 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(reedFrequency(2, 0.00015, 0.02, 205e9, 7850) / 1940.0 - 1)).toBeLessThan(1e-3);
  });

  it('swings at its first frequency and settles at the static deflection p w L⁴/(8 E I) within 2 %', () => {
    const valve = makeReedValve(REED, 0.6);
    const { modulus, density } = valveMaterialStiffness('AISI-1095');
    const dt = 2e-6;
    const pressure = 20;
    const lifts: number[] = [];
    for (let n = 0; n < 400_000; n++) {
      valve.advance(dt, pressure);
      lifts.push(valve.lift());
    }
    const expected = (pressure * REED.length ** 4 * 12) / (8 * modulus * REED.thickness ** 3);
    expect(Math.abs(lifts[lifts.length - 1] / expected - 1)).toBeLessThan(0.02);
    // Time between the first two crests, second mode averaged out by looking for the largest value of each swing.
    const period = 1 / reedFrequency(1, REED.thickness, REED.length, modulus, density);
    const crest = (from: number, to: number) => {
      let best = Math.round(from / dt);
      for (let i = best; i < to / dt; i++) if (lifts[i] > lifts[best]) best = i;
      return best * dt;
    };
    const first = crest(0.1 * period, 0.9 * period);
    const eighth = crest(7.1 * period, 7.9 * period);
    expect(Math.abs((eighth - first) / 7 / period - 1)).toBeLessThan(0.02);
  });

  it('stays shut under pressure from inside and never leaves its stop', () => {
    const valve = makeReedValve({ ...REED, stopLift: 0.003 }, 0.6);
    for (let n = 0; n < 2000; n++) valve.advance(5e-6, -50_000);
    expect(valve.lift()).toBe(0);
    for (let n = 0; n < 4000; n++) {
      valve.advance(5e-6, 30_000);
      expect(valve.lift()).toBeLessThanOrEqual(0.003 + 1e-12);
    }
    expect(valve.stopImpact).toBeGreaterThan(1);
  });

  it('opens a curtain that grows with lift and is capped by the ports', () => {
    expect(reedCurtain(0.002, 0.01, 0.02)).toBeGreaterThan(reedCurtain(0.001, 0.01, 0.02));
    expect(seriesArea(1, 1e9)).toBeCloseTo(1, 6);
    expect(seriesArea(3, 4)).toBeCloseTo(2.4, 12);
  });
});

describe('poppet', () => {
  it('moves as m ẍ = F − k x: peak 2 F/k at half a period, closed form of the undamped oscillator', () => {
    const valve = makePoppetValve(POPPET);
    const m = poppetMovingMass(POPPET);
    expect(m).toBeCloseTo(0.022, 12);
    const half = Math.PI * Math.sqrt(m / POPPET.springRate);
    const pressure = 5000;
    let t = 0;
    let peak = 0;
    let at = 0;
    while (t < 1.5 * half) {
      valve.advance(2e-6, pressure);
      t += 2e-6;
      if (valve.lift() > peak) {
        peak = valve.lift();
        at = t;
      }
    }
    const force = pressure * 0.25 * Math.PI * POPPET.portDiameter ** 2;
    // Damping 3 %, guide friction and the falling pressure force take the rest.
    expect(Math.abs(at / half - 1)).toBeLessThan(0.04);
    expect(peak).toBeGreaterThan(0.8 * ((2 * force) / POPPET.springRate));
    expect(peak).toBeLessThan((2 * force) / POPPET.springRate);
  });

  it('is the textbook discharge coefficient at lift/diameter 0.05, 0.10, 0.20, 0.30 (memory medium, ±0.06)', () => {
    expect(poppetDischarge(0.05)).toBeCloseTo(0.62, 6);
    expect(poppetDischarge(0.1)).toBeCloseTo(0.66, 6);
    expect(poppetDischarge(0.2)).toBeCloseTo(0.58, 6);
    expect(poppetDischarge(0.3)).toBeCloseTo(0.47, 6);
  });
});

describe('whether a valve follows', () => {
  const input = {
    mass: 0.15,
    lift: 0.025,
    preload: 3,
    stiffness: 3000,
    pressureArea: 0.00785,
    count: 1,
    suction: 20_000,
    window: 5e-3,
  };

  it('needs 2 m L/(t/2)² + F₀ + k L/2', () => {
    const f = followForces(input);
    expect(f.needed).toBeCloseTo((2 * 0.15 * 0.025) / 0.0025 ** 2 + 3 + 37.5, 9);
    expect(f.offered).toBeCloseTo(157, 9);
  });

  it('names cures that bring both forces into balance', () => {
    const c = followCures(input);
    expect(followForces({ ...input, mass: c.mass as number }).ratio).toBeCloseTo(1, 9);
    expect(followForces({ ...input, lift: c.lift as number }).ratio).toBeCloseTo(1, 9);
    const s = Math.sqrt((c.valves as number) / input.count);
    const split = {
      ...input,
      mass: input.mass / s ** 3,
      lift: input.lift / s,
      preload: input.preload / s ** 2,
      stiffness: input.stiffness / s ** 3,
      pressureArea: input.pressureArea / s ** 2,
    };
    expect(followForces(split).ratio).toBeGreaterThanOrEqual(1);
    expect(c.stiffness).toBeNull();
  });
});

describe('port flow', () => {
  it('chokes at ṁ√T₀/(A p₀) = 0.0404149 for R 287.05 (compressible-flow tables)', () => {
    const flow = orificeFlow(1e-4, 5e5, 300, 1e5, 287.05, 1.4);
    expect((flow * Math.sqrt(300)) / (1e-4 * 5e5)).toBeCloseTo(0.0404149, 6);
    expect(flow).toBeCloseTo((1e-4 * 5e5 * chokedFlowFactor(1.4, 287.05)) / Math.sqrt(300), 9);
  });

  it('is √(2 Δp/ρ) for small differences, and nothing backwards', () => {
    expect(
      Math.abs(jetSpeed(101_425, 288, 101_325, 287.05, 1.4) / Math.sqrt((2 * 100 * 287.05 * 288) / 101_325) - 1),
    ).toBeLessThan(1e-3);
    expect(orificeFlow(1e-4, 1e5, 300, 1.1e5, 287.05, 1.4)).toBe(0);
  });
});
