/**
 * Hiss of the jet: acoustic power W = 10⁻⁴ M⁵ · ½ ρ U³ A, M = U/c0, taken at every instant of the cycle (Lighthill’s eighth
 * power; the factor 10⁻⁴ is that of round subsonic jets, from memory, confidence medium). Peak near f = 0.2 U/D.
 */
import { aWeighting } from './a-weighting.ts';

const EFFICIENCY = 1e-4;
/** Above this Mach number the efficiency no longer grows (supersonic jets give about 0.5 % of their power). */
const LARGEST_MACH = 2;
const STROUHAL = 0.2;

/** Acoustic power, W, of a round jet of `diameter`, m, and `density`, kg/m³, in air of sound speed `c0`. */
export function jetPower(speed: number, diameter: number, density: number, c0: number): number {
  const mach = Math.min(speed / c0, LARGEST_MACH);
  return EFFICIENCY * mach ** 5 * 0.5 * density * speed ** 3 * (Math.PI / 4) * diameter ** 2;
}

/** A-weighted level, dB(A), at 1 m over hard ground (half a sphere), averaged over a cycle of exit speeds at equal times. */
export function jetLevel(speeds: readonly number[], diameter: number, density: number, c0: number): number {
  const power = speeds.reduce((sum, u) => sum + jetPower(u, diameter, density, c0), 0) / Math.max(speeds.length, 1);
  const fastest = Math.max(...speeds, 1);
  return 10 * Math.log10(power / 1e-12) - 10 * Math.log10(2 * Math.PI) + aWeighting((STROUHAL * fastest) / diameter);
}
