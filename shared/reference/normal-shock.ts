/**
 * Jumps across a standing normal shock in a γ-law gas; M is the Mach number ahead of it.
 *
 *     p2/p1 = (2γM² − (γ−1))/(γ+1)      ρ2/ρ1 = (γ+1)M²/((γ−1)M² + 2)      M2² = ((γ−1)M² + 2)/(2γM² − (γ−1))
 *
 * Source: NACA Report 1135, equations 93, 94 and 96.
 */
export interface NormalShock {
  /** Behind over ahead. */
  pressureRatio: number;
  densityRatio: number;
  temperatureRatio: number;
  /** Behind the shock. */
  mach: number;
}

/** Throws RangeError for a Mach number below 1. */
export function normalShock(mach: number, gamma: number): NormalShock {
  if (!(mach >= 1)) throw new RangeError(`A normal shock needs supersonic flow ahead of it; got Mach ${mach}.`);
  const m2 = mach * mach;
  const pressureRatio = (2 * gamma * m2 - (gamma - 1)) / (gamma + 1);
  const densityRatio = ((gamma + 1) * m2) / ((gamma - 1) * m2 + 2);
  return {
    pressureRatio,
    densityRatio,
    temperatureRatio: pressureRatio / densityRatio,
    mach: Math.sqrt(((gamma - 1) * m2 + 2) / (2 * gamma * m2 - (gamma - 1))),
  };
}
