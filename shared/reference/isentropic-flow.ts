/**
 * Steady isentropic flow of a γ-law gas along a duct of changing area.
 *
 *     T0/T = 1 + (γ−1)/2 M²        p0/p = (T0/T)^(γ/(γ−1))
 *     A/A* = (1/M) · (2/(γ+1) · T0/T)^((γ+1)/(2(γ−1)))
 *
 * Source: NACA Report 1135, equations 43, 44 and 80.
 */
import { bisect } from './bisect.ts';

/** T0/T. */
export function temperatureRatio(mach: number, gamma: number): number {
  return 1 + ((gamma - 1) / 2) * mach * mach;
}

/** p0/p. */
export function pressureRatio(mach: number, gamma: number): number {
  return temperatureRatio(mach, gamma) ** (gamma / (gamma - 1));
}

/** A/A*, the area over the area where the same flow would be sonic. */
export function areaRatio(mach: number, gamma: number): number {
  return ((2 / (gamma + 1)) * temperatureRatio(mach, gamma)) ** ((gamma + 1) / (2 * (gamma - 1))) / mach;
}

/** Mach number at A/A*. Throws RangeError for a ratio below 1, where no steady flow exists. */
export function machAtAreaRatio(ratio: number, gamma: number, branch: 'subsonic' | 'supersonic'): number {
  if (!(ratio >= 1)) throw new RangeError(`A/A* is at least 1 in steady flow; got ${ratio}.`);
  const gap = (mach: number) => areaRatio(mach, gamma) - ratio;
  return branch === 'subsonic' ? bisect(gap, 1e-9, 1) : bisect(gap, 1, 1000);
}
