/**
 * A vessel emptying through a choked hole, with no heat from its walls.
 *
 *     p/p_0 = (1 + (γ−1)/2 · t/τ)^(−2γ/(γ−1))        T/T_0 = (1 + (γ−1)/2 · t/τ)^(−2)
 *     τ = V / (Cd A · √(γ R T_0) · (2/(γ+1))^((γ+1)/(2(γ−1))))
 *
 * Follows from dm/dt = −ṁ_choked and p ∝ m^γ; found so in texts on gas dynamics.
 */
export interface Vessel {
  /** m³. */
  volume: number;
  /** Discharge coefficient times hole area, m². */
  effectiveArea: number;
  /** K, at the start. */
  temperature: number;
  gamma: number;
  /** J/(kg K). */
  gasConstant: number;
}

function timeConstant(vessel: Vessel): number {
  const { volume, effectiveArea, temperature, gamma, gasConstant } = vessel;
  const throat = (2 / (gamma + 1)) ** ((gamma + 1) / (2 * (gamma - 1)));
  return volume / (effectiveArea * Math.sqrt(gamma * gasConstant * temperature) * throat);
}

/** Time to fall to a fraction of the starting pressure, s, while choked throughout. */
export function blowdownTime(vessel: Vessel, pressureFraction: number): number {
  const { gamma } = vessel;
  return timeConstant(vessel) * (2 / (gamma - 1)) * (pressureFraction ** (-(gamma - 1) / (2 * gamma)) - 1);
}

/** Pressure over starting pressure, and temperature, K, after a time, s. */
export function blowdownState(vessel: Vessel, time: number): { pressureFraction: number; temperature: number } {
  const { gamma } = vessel;
  const base = 1 + (((gamma - 1) / 2) * time) / timeConstant(vessel);
  return { pressureFraction: base ** ((-2 * gamma) / (gamma - 1)), temperature: vessel.temperature / base ** 2 };
}
