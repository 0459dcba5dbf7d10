import { describe, expect, it } from 'vitest';
import { type GasState, riemannState, starState } from '../../shared/reference/riemann-exact.ts';

const state = (density: number, velocity: number, pressure: number): GasState => ({ density, velocity, pressure });

// Star states: standard shock-tube tests of the literature (Sod, J. Comput. Phys. 27 (1978) 1; Toro, ch. 4, tests 1–3),
// figures computed independently to nine digits.
describe('exact Riemann solution', () => {
  it('solves Sod’s tube', () => {
    const star = starState(state(1, 0, 1), state(0.125, 0, 0.1), 1.4);
    expect(star.pressure).toBeCloseTo(0.303130178, 9);
    expect(star.velocity).toBeCloseTo(0.92745262, 9);
    expect(star.densityLeft).toBeCloseTo(0.426319428, 9);
    expect(star.densityRight).toBeCloseTo(0.265573712, 9);
  });

  it('solves Sod’s tube at γ = 4/3', () => {
    const star = starState(state(1, 0, 1), state(0.125, 0, 0.1), 4 / 3);
    expect(star.pressure).toBeCloseTo(0.306011294, 9);
    expect(star.velocity).toBeCloseTo(0.953204729, 9);
  });

  it('solves two rarefactions that almost part', () => {
    const star = starState(state(1, -2, 0.4), state(1, 2, 0.4), 1.4);
    expect(star.pressure).toBeCloseTo(0.00189387342, 10);
    expect(star.densityLeft).toBeCloseTo(0.0218521182, 9);
    expect(star.velocity).toBeCloseTo(0, 12);
  });

  it('solves a strong blast', () => {
    const star = starState(state(1, 0, 1000), state(1, 0, 0.01), 1.4);
    expect(star.pressure).toBeCloseTo(460.893787, 5);
    expect(star.velocity).toBeCloseTo(19.5974514, 6);
  });

  it('keeps mass and momentum over the self-similar fan', () => {
    const left = state(1, 0, 1);
    const right = state(0.125, 0, 0.1);
    const [reach, steps] = [2.5, 200_000];
    const star = starState(left, right, 1.4);
    let mass = 0;
    let momentum = 0;
    for (let i = 0; i < steps; i++) {
      const speed = -reach + ((i + 0.5) * 2 * reach) / steps;
      const { density, velocity } = riemannState(left, right, 1.4, speed, star);
      mass += (density * 2 * reach) / steps;
      momentum += (density * velocity * 2 * reach) / steps;
    }
    expect(mass).toBeCloseTo(1.125 * reach, 4);
    // Momentum grows by the pressure difference of the far ends, per unit time.
    expect(momentum).toBeCloseTo(0.9, 4);
  });

  it('is its own mirror image', () => {
    const left = state(1, 0.3, 2);
    const right = state(0.4, -0.1, 0.5);
    const flip = ({ density, velocity, pressure }: GasState) => state(density, -velocity, pressure);
    for (const speed of [-3, -1, -0.2, 0.4, 1.1, 3]) {
      const there = riemannState(left, right, 1.4, speed);
      const back = flip(riemannState(flip(right), flip(left), 1.4, -speed));
      expect(back.density).toBeCloseTo(there.density, 12);
      expect(back.velocity).toBeCloseTo(there.velocity, 12);
      expect(back.pressure).toBeCloseTo(there.pressure, 12);
    }
  });

  it('refuses a vacuum and impossible states', () => {
    expect(() => starState(state(1, -20, 0.4), state(1, 20, 0.4), 1.4)).toThrow(/vacuum/);
    expect(() => starState(state(0, 0, 1), state(1, 0, 1), 1.4)).toThrow(RangeError);
  });
});
