/**
 * The open end of a duct: what leaves keeps its outgoing Riemann invariant and meets the ambient pressure, choking when it
 * must; what enters comes from still air with an entry loss.
 *
 * With n the outward velocity: J = n + 2c/(γ − 1) leaves the duct.
 *   outflow   p_b = p_a,  ρ_b = ρ (p_b/p)^{1/γ},  n_b = n + 2 (c − c_b)/(γ − 1);  n_b ≤ c_b, else sonic: c_b = J (γ − 1)/(γ + 1)
 *   inflow    p_b = p + ρ c (n − n_b)  and  p_b = p_a (T_b/T_a)^{γ/(γ−1)} − K ρ_b n_b²/2,  T_b = T_a − n_b²/(2 c_p)
 */

/** Still air outside an end. */
export interface Ambient {
  /** Pa. */
  pressure: number;
  /** K. */
  temperature: number;
  gasConstant: number;
  gamma: number;
  /** Sensible enthalpy of the outside air, J/kg. */
  enthalpy: number;
}

/** State at the face of an open end, outward velocity positive. Reused between calls: no allocation. */
export interface OpenEndState {
  density: number;
  outward: number;
  pressure: number;
  inflow: boolean;
}

/** Solves the face of an open end into `state`. Interior: density, outward velocity, pressure, sound speed of the last cell. */
export function solveOpenEnd(
  state: OpenEndState,
  ambient: Ambient,
  entryLoss: number,
  density: number,
  outward: number,
  pressure: number,
  soundSpeed: number,
): void {
  const gamma = (soundSpeed * soundSpeed * density) / pressure;
  const g1 = gamma - 1;
  if (outward >= soundSpeed) {
    state.density = density;
    state.outward = outward;
    state.pressure = pressure;
    state.inflow = false;
    return;
  }
  const ratio = (ambient.pressure / pressure) ** (g1 / (2 * gamma));
  const cb = soundSpeed * ratio;
  const nb = outward + (2 * (soundSpeed - cb)) / g1;
  if (nb >= 0) {
    state.inflow = false;
    if (nb <= cb) {
      state.pressure = ambient.pressure;
      state.density = density * ratio ** (2 / g1);
      state.outward = nb;
    } else {
      const cs = ((outward + (2 * soundSpeed) / g1) * g1) / (gamma + 1);
      const rs = (cs / soundSpeed) ** (2 / g1);
      state.density = density * rs;
      state.pressure = pressure * rs * (cs / soundSpeed) ** 2;
      state.outward = cs;
    }
    return;
  }
  state.inflow = true;
  const cp = (ambient.gamma * ambient.gasConstant) / (ambient.gamma - 1);
  const impedance = density * soundSpeed;
  const still = pressure + impedance * outward;
  let v = Math.max(0, Math.min(-nb, 0.9 * Math.sqrt(ambient.gamma * ambient.gasConstant * ambient.temperature)));
  let pb = ambient.pressure;
  let rb = density;
  for (let n = 0; n < 6; n++) {
    const tb = ambient.temperature - (v * v) / (2 * cp);
    const p0 = ambient.pressure * (tb / ambient.temperature) ** (ambient.gamma / (ambient.gamma - 1));
    rb = p0 / (ambient.gasConstant * tb);
    pb = p0 - 0.5 * entryLoss * rb * v * v;
    const miss = still + impedance * v - pb;
    const step = miss / (impedance + rb * v * (1 + entryLoss));
    v = Math.max(0, v - step);
    if (Math.abs(step) < 1e-9 * soundSpeed) break;
  }
  const sonic = Math.sqrt((2 * ambient.gamma * ambient.gasConstant * ambient.temperature) / (ambient.gamma + 1));
  if (v > sonic) v = sonic;
  const tb = ambient.temperature - (v * v) / (2 * cp);
  state.pressure = Math.max(pb, 0.05 * ambient.pressure);
  state.density = state.pressure / (ambient.gasConstant * tb);
  state.outward = -v;
}
