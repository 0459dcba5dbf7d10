/**
 * Sound of gas that pulses through an opening: p(r,t) = ρ0/(4π r) dQ/dt, Q the volume flow (Lighthill, Waves in Fluids
 * §1.4); hard ground doubles the mean square. For hot gas the volume, not the mass, displaces the air. Harmonics whose
 * wave is shorter than the opening no longer gain: radiated power is divided by 1 + (ka)², the shape of the radiation
 * resistance of an opening (Morse & Ingard, Theoretical Acoustics).
 */
import { aWeighting } from './a-weighting.ts';

/** Pa. */
const REFERENCE = 20e-6;
const GROUND = Math.SQRT2;

/** The opening, m, and the outside air, kg/m³ and m/s. */
export interface Opening {
  radius: number;
  airDensity: number;
  soundSpeed: number;
}

/** A-weighted level, dB(A), at 1 m from one cycle of volume flow (m³/s, equal time steps). −∞ for steady flow. */
export function monopoleLevel(volumeFlow: readonly number[], frequency: number, opening: Opening): number {
  const n = volumeFlow.length;
  const cosine = Array.from({ length: n }, (_, i) => Math.cos((2 * Math.PI * i) / n));
  const sine = Array.from({ length: n }, (_, i) => Math.sin((2 * Math.PI * i) / n));
  let power = 0;
  for (let k = 1; k <= Math.floor((n - 1) / 2); k++) {
    let re = 0;
    let im = 0;
    for (let i = 0; i < n; i++) {
      const turn = (k * i) % n;
      re += volumeFlow[i] * cosine[turn];
      im -= volumeFlow[i] * sine[turn];
    }
    const amplitude = (2 / n) * Math.hypot(re, im);
    const ka = (2 * Math.PI * k * frequency * opening.radius) / opening.soundSpeed;
    const pressure = (GROUND * opening.airDensity * k * frequency * amplitude) / 2 / Math.sqrt(1 + ka * ka);
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
