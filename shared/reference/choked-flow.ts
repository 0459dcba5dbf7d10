/**
 * Greatest mass flow of a γ-law gas through a throat.
 *
 *     ṁ √T0 / (A p0) = √(γ/R) · (2/(γ+1))^((γ+1)/(2(γ−1)))
 *
 * Source: NACA Report 1135, from the isentropic relations at M = 1.
 */

/** ṁ√T0/(A p0), √K·s/m. gasConstant in J/(kg K). */
export function chokedFlowFactor(gamma: number, gasConstant: number): number {
  return Math.sqrt(gamma / gasConstant) * (2 / (gamma + 1)) ** ((gamma + 1) / (2 * (gamma - 1)));
}

/** Pressure behind over stagnation pressure ahead, below which the throat is choked. */
export function criticalPressureRatio(gamma: number): number {
  return (2 / (gamma + 1)) ** (gamma / (gamma - 1));
}

/** Mass flow through an effective area, kg/s, choked or not; pressures Pa, temperature K, area m². */
export function orificeFlow(flow: {
  stagnationPressure: number;
  stagnationTemperature: number;
  backPressure: number;
  area: number;
  gamma: number;
  gasConstant: number;
}): number {
  const { stagnationPressure: p0, stagnationTemperature: t0, backPressure, area, gamma, gasConstant } = flow;
  const ratio = Math.min(1, Math.max(backPressure / p0, criticalPressureRatio(gamma)));
  const speed = Math.sqrt(((2 * gamma) / (gamma - 1)) * gasConstant * t0 * (1 - ratio ** ((gamma - 1) / gamma)));
  return ((area * p0) / (gasConstant * t0)) * ratio ** (1 / gamma) * speed;
}
