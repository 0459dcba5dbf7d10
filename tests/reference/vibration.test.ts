import { describe, expect, it } from 'vitest';
import {
  cantileverFrequency,
  cantileverRoot,
  cantileverShape,
  modalRootStressFactor,
  ROOT_STRESS_FACTOR_TIP_LOAD,
  ROOT_STRESS_FACTOR_UNIFORM_PRESSURE,
  rootStress,
} from '../../shared/reference/cantilever-modes.ts';
import { forcedResponse, freeMotion, naturalFrequency, stepMotion } from '../../shared/reference/oscillator.ts';

describe('cantilever modes', () => {
  // Roots: tables of beam vibration. Frequencies computed independently for a steel reed.
  const reed = { thickness: 0.15e-3, length: 20e-3, youngsModulus: 205e9, density: 7850 };

  it.each([
    [1, 1.8751041, 309.57],
    [2, 4.6940911, 1940.0],
    [3, 7.8547574, 5432.1],
  ])('mode %d: root %d, reed frequency %d Hz', (mode, root, frequency) => {
    expect(cantileverRoot(mode)).toBeCloseTo(root, 7);
    expect(Math.abs(cantileverFrequency(reed, mode) / frequency - 1)).toBeLessThan(2e-5);
  });

  it.each([1, 2, 3])('mode %d is clamped, free at the tip, and bends by K at the root', (mode) => {
    expect(cantileverShape(mode, 0)).toBeCloseTo(0, 12);
    expect((cantileverShape(mode, 1e-5) - cantileverShape(mode, 0)) / 1e-5).toBeLessThan(5e-4);
    expect(Math.abs(cantileverShape(mode, 1))).toBeCloseTo(1, 9);
    const h = 1e-3;
    const curvature = (s: number) =>
      (cantileverShape(mode, s + h) - 2 * cantileverShape(mode, s) + cantileverShape(mode, s - h)) / h ** 2;
    expect(curvature(h) / modalRootStressFactor(mode)).toBeCloseTo(1, 1);
    expect(Math.abs(curvature(1 - h))).toBeLessThan(0.05);
  });

  it('has orthogonal modes, each a quarter in mean square', () => {
    const steps = 4000;
    const product = (a: number, b: number) => {
      let sum = 0;
      for (let i = 0; i < steps; i++)
        sum += cantileverShape(a, (i + 0.5) / steps) * cantileverShape(b, (i + 0.5) / steps);
      return sum / steps;
    };
    expect(product(1, 2)).toBeCloseTo(0, 6);
    expect(product(1, 1)).toBeCloseTo(0.25, 6);
    expect(product(2, 2)).toBeCloseTo(0.25, 5);
  });

  it('stresses the root by beam theory', () => {
    expect(modalRootStressFactor(1)).toBeCloseTo(3.516, 3);
    // Uniform pressure p on width w: M = p w L²/2, δ = p w L⁴/(8 E I). Tip load F: M = F L, δ = F L³/(3 E I). σ = M t/(2 I).
    const { thickness: t, length: L, youngsModulus: E } = reed;
    const inertia = (0.01 * t ** 3) / 12;
    const load = 1000 * 0.01;
    const uniform = ((load * L ** 2) / 2) * (t / (2 * inertia));
    const uniformLift = (load * L ** 4) / (8 * E * inertia);
    expect(rootStress(reed, uniformLift, ROOT_STRESS_FACTOR_UNIFORM_PRESSURE) / uniform).toBeCloseTo(1, 12);
    const tip = 0.2 * L * (t / (2 * inertia));
    const tipLift = (0.2 * L ** 3) / (3 * E * inertia);
    expect(rootStress(reed, tipLift, ROOT_STRESS_FACTOR_TIP_LOAD) / tip).toBeCloseTo(1, 12);
  });
});

describe('one-degree-of-freedom oscillator', () => {
  const light = { mass: 0.02, stiffness: 5000, dampingRatio: 0.05 };

  it('rings at √(k/m) and decays by the logarithmic decrement', () => {
    expect(naturalFrequency(light)).toBeCloseTo(500, 9);
    const period = (2 * Math.PI) / (500 * Math.sqrt(1 - 0.05 ** 2));
    const after = freeMotion(light, { position: 1e-3, velocity: 0 }, period);
    expect(Math.log(1e-3 / after.position)).toBeCloseTo((2 * Math.PI * 0.05) / Math.sqrt(1 - 0.05 ** 2), 9);
    expect(after.velocity).toBeCloseTo(0, 9);
  });

  it('obeys its own equation of motion, free and under a step', () => {
    const start = { position: 2e-3, velocity: -0.4 };
    const h = 1e-6;
    for (const force of [0, 3]) {
      const at = (t: number) => stepMotion(light, start, force, t);
      for (const t of [0.001, 0.0123]) {
        const acceleration = (at(t + h).velocity - at(t - h).velocity) / (2 * h);
        const { position, velocity } = at(t);
        const balance = (force - 5000 * position) / 0.02 - 2 * 0.05 * 500 * velocity;
        expect(acceleration / balance).toBeCloseTo(1, 4);
        expect((at(t + h).position - at(t - h).position) / (2 * h)).toBeCloseTo(velocity, 5);
      }
    }
  });

  it('answers a steady force as at rest when slow, with 1/(2ζ) at resonance, and against it when fast', () => {
    expect(forcedResponse(light, 10, 1).amplitude).toBeCloseTo(10 / 5000, 7);
    const resonance = forcedResponse(light, 10, 500);
    expect(resonance.amplitude / (10 / 5000)).toBeCloseTo(10, 9);
    expect(resonance.lag).toBeCloseTo(Math.PI / 2, 9);
    expect(forcedResponse(light, 10, 50_000).lag).toBeGreaterThan(3.13);
  });

  it('refuses critical damping, which its formula does not cover', () => {
    expect(() => freeMotion({ ...light, dampingRatio: 1 }, { position: 1, velocity: 0 }, 1)).toThrow(RangeError);
  });
});
