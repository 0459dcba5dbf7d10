/**
 * Flow through a port from one pressure to another (isentropic to the throat, choked when it must be).
 *
 * ṁ = C_d A p₀ √(2γ/((γ−1) R T₀) (r^{2/γ} − r^{(γ+1)/γ})),  r = p/p₀ ≥ (2/(γ+1))^{γ/(γ−1)}   (NACA Report 1135)
 */

/** Mass flow, kg/s, through the effective area C_d A, m², from (p0, T0) to p; zero when p ≥ p0. */
export function orificeFlow(
  effectiveArea: number,
  p0: number,
  t0: number,
  p: number,
  gasConstant: number,
  gamma: number,
): number {
  if (p >= p0) return 0;
  const critical = (2 / (gamma + 1)) ** (gamma / (gamma - 1));
  const r = Math.max(p / p0, critical);
  const a = r ** (1 / gamma);
  return effectiveArea * p0 * Math.sqrt(Math.max(0, ((2 * gamma) / ((gamma - 1) * gasConstant * t0)) * a * (a - r)));
}

/** Speed of the jet at its throat, m/s. */
export function jetSpeed(p0: number, t0: number, p: number, gasConstant: number, gamma: number): number {
  if (p >= p0) return 0;
  const critical = (2 / (gamma + 1)) ** (gamma / (gamma - 1));
  const r = Math.max(p / p0, critical);
  return Math.sqrt(((2 * gamma) / (gamma - 1)) * gasConstant * t0 * (1 - r ** ((gamma - 1) / gamma)));
}
