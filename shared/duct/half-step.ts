/**
 * The predictor of the step (MUSCL–Hancock; van Leer, SIAM J. Sci. Stat. Comput. 5 (1984) 1; Toro, "Riemann Solvers", ch. 14):
 * limited slopes of ρ, Q = uA, p and the scalars in every cell, and what the primitive equations make of the cell's middle in half
 * a step, with Δ the difference across a cell, A its mean area and λ = Δt/(2Δx):
 *
 *     ρ ← ρ − λ (u Δρ + ρ ΔQ/A)
 *     p ← p − λ (u Δp + ρc² ΔQ/A)
 *     Q ← Q − λ (u (ΔQ − u ΔA) + A Δp/ρ)
 *     y ← y − λ u Δy                                   y: fuel, products, k, Z
 *
 * Face states are these middles and half a slope. One flux evaluation then serves the whole step to second order, where a
 * two-stage Runge–Kutta step needs two. Gas at rest of one pressure stays as it is, in any A(x).
 */
import type { Flow } from './flow.ts';
import { limitSlopes } from './limiter.ts';

/** Fills `slopes` and `half` for a step of dt seconds. Primitives must be fresh. End cells have no slope and stay as they are. */
export function predictHalfStep(flow: Flow, dt: number): void {
  const n = flow.grid.cells;
  const { density, velocity, volumeFlow, pressure, soundSpeed, specificVolume, fuel, product, k, z } = flow;
  const s = flow.slopes;
  limitSlopes(density, s.density, n);
  limitSlopes(volumeFlow, s.flow, n);
  limitSlopes(pressure, s.pressure, n);
  limitSlopes(fuel, s.fuel, n);
  limitSlopes(product, s.product, n);
  limitSlopes(k, s.k, n);
  limitSlopes(z, s.z, n);
  const h = flow.half;
  const { faceArea, volume, width } = flow.grid;
  for (let i = 1; i < n - 1; i++) {
    const perWidth = 1 / width[i];
    const ratio = 0.5 * dt * perWidth;
    const area = volume[i] * perWidth;
    const u = velocity[i];
    const rho = density[i];
    const c = soundSpeed[i];
    const ahead = ratio * u;
    const spread = ratio * (1 / area) * s.flow[i];
    const impedance = rho * c;
    h.density[i] = rho - (ahead * s.density[i] + spread * rho);
    h.pressure[i] = pressure[i] - (ahead * s.pressure[i] + spread * (impedance * c));
    const steepening = s.flow[i] - u * (faceArea[i + 1] - faceArea[i]);
    h.flow[i] = volumeFlow[i] - (ahead * steepening + ratio * area * (s.pressure[i] * specificVolume[i]));
    h.fuel[i] = fuel[i] - ahead * s.fuel[i];
    h.product[i] = product[i] - ahead * s.product[i];
    h.k[i] = k[i] - ahead * s.k[i];
    h.z[i] = z[i] - ahead * s.z[i];
  }
  for (const i of [0, n - 1]) {
    h.density[i] = density[i];
    h.pressure[i] = pressure[i];
    h.flow[i] = volumeFlow[i];
    h.fuel[i] = fuel[i];
    h.product[i] = product[i];
    h.k[i] = k[i];
    h.z[i] = z[i];
  }
}
