/** Gas through a hole: isentropic orifice flow (NACA Report 1135), choked when the pressure ratio asks for it. SI units. */

/** Pressure ratio p/p0 below which the flow is sonic: (2/(γ+1))^(γ/(γ−1)). */
export function criticalRatio(gamma: number): number {
  return (2 / (gamma + 1)) ** (gamma / (gamma - 1));
}

/**
 * Mass flow per effective area, kg/(m² s), from stagnation `p0`, Pa, `t0`, K, to `back` pressure, Pa.
 * `r` gas constant, J/(kg K); `z` compressibility upstream.
 */
export function orificeFlux(p0: number, t0: number, back: number, gamma: number, r: number, z = 1): number {
  if (back >= p0) return 0;
  const ratio = Math.max(back / p0, criticalRatio(gamma));
  const shape = ((2 * gamma) / (gamma - 1)) * (ratio ** (2 / gamma) - ratio ** ((gamma + 1) / gamma));
  return (p0 * Math.sqrt(shape)) / Math.sqrt(z * r * t0);
}

/** Discharge coefficient of a drilled, deburred jet. Common practice, no source. */
const JET_DISCHARGE = 0.8;

/** Diameter, m, of the jet that passes `flow`, kg/s, at that flux. */
export function jetDiameter(flow: number, flux: number, discharge = JET_DISCHARGE): number {
  return Math.sqrt((4 * flow) / (Math.PI * discharge * flux));
}

/** Liquid through a hole: ṁ = Cd A √(2 ρ Δp). Diameter, m. */
export function liquidJetDiameter(flow: number, drop: number, density: number, discharge = JET_DISCHARGE): number {
  return Math.sqrt((4 * flow) / (Math.PI * discharge * Math.sqrt(2 * density * drop)));
}
