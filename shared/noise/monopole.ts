/**
 * Sound of gas that pulses through an opening small against the wavelength: a monopole over hard ground,
 * p(r,t) = 2 ρ0/(4π r) dQ/dt, Q the volume flow (Lighthill, Waves in Fluids §1.4; factor 2 for the ground).
 * For hot gas the volume, not the mass, displaces the air.
 */
import { aWeighting } from './a-weighting.ts';

/** Pa. */
const REFERENCE = 20e-6;
const GROUND = 2;

/** A-weighted level, dB(A), at 1 m from one cycle of volume flow (m³/s, equal time steps). −∞ for steady flow. */
export function monopoleLevel(volumeFlow: readonly number[], frequency: number, airDensity: number): number {
  const n = volumeFlow.length;
  let power = 0;
  for (let k = 1; k <= Math.floor((n - 1) / 2); k++) {
    let re = 0;
    let im = 0;
    for (let i = 0; i < n; i++) {
      const angle = (2 * Math.PI * k * i) / n;
      re += volumeFlow[i] * Math.cos(angle);
      im -= volumeFlow[i] * Math.sin(angle);
    }
    const amplitude = (2 / n) * Math.hypot(re, im);
    const pressure = (GROUND * airDensity * 2 * Math.PI * k * frequency * amplitude) / (4 * Math.PI);
    const weighted = (pressure / Math.SQRT2 / REFERENCE) * 10 ** (aWeighting(k * frequency) / 20);
    power += weighted * weighted;
  }
  return 10 * Math.log10(power);
}

/** Sum of incoherent sources, dB. */
export function sumLevels(levels: readonly number[]): number {
  return 10 * Math.log10(levels.reduce((sum, level) => sum + 10 ** (level / 10), 0));
}

/** Level at `distance`, m, from the level at 1 m: −6 dB for each doubling (spherical spreading). */
export function levelAt(levelAtOneMetre: number, distance: number): number {
  return levelAtOneMetre - 20 * Math.log10(Math.max(distance, 0.1));
}

/** Distance, m, at which the level has fallen to `limit`. */
export function distanceFor(levelAtOneMetre: number, limit: number): number {
  return 10 ** ((levelAtOneMetre - limit) / 20);
}
