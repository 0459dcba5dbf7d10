/**
 * Ignition delay: a progress χ rides with the fresh air from 0 (just arrived) to 1 (ready to burn).
 *
 *   dχ/dt = Q / τ_i,   τ_i = C₁ ℓ/√k + τ₁ exp(T_a/T − T_a/1000 K),   Q = 1/(1 + (u_jet/u_q)²)
 *
 * Q holds ignition back while inflow jets stretch the mixing layers; mixing with new inflow dilutes the mean χ. Both make
 * ignition wait for the inflow to end, which locks burning to the acoustics at every engine size.
 */

/** Burning begins at this progress and is in full swing at the next (fixed, not fitted: only their order matters). */
export const PROGRESS_ONSET = 0.5;
export const PROGRESS_FULL = 0.8;

/** Steep rise of the burning rate with progress: smooth step from PROGRESS_ONSET to PROGRESS_FULL. */
export function progressFunction(chi: number): number {
  if (chi <= PROGRESS_ONSET) return 0;
  if (chi >= PROGRESS_FULL) return 1;
  const s = (chi - PROGRESS_ONSET) / (PROGRESS_FULL - PROGRESS_ONSET);
  return s * s * (3 - 2 * s);
}

/** Share of the ignition rate left while jets of speed u (m/s) flow; u_q in m/s. */
export function stretchQuench(jetSpeed: number, quenchSpeed: number): number {
  const s = jetSpeed / quenchSpeed;
  return 1 / (1 + s * s);
}

/** Temperature at which the chemical delay is τ₁, K. */
const REFERENCE = 1000;

/** τ₁ exp(T_a/T − T_a/1000 K) at the knots of a temperature table, s; capped so that cold gas never overflows. */
export function chemicalDelayTable(
  t0: number,
  step: number,
  knots: number,
  chemicalTime: number,
  activationTemperature: number,
): Float64Array {
  const table = new Float64Array(knots);
  for (let n = 0; n < knots; n++) {
    table[n] = Math.min(
      1e3,
      chemicalTime * Math.exp(activationTemperature / (t0 + n * step) - activationTemperature / REFERENCE),
    );
  }
  return table;
}
