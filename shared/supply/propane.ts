/** Propane as stored: saturation pressure, latent heat, compressibility. SI units. */

/** Critical point and gas constant: Lemmon, McLinden & Wagner, J. Chem. Eng. Data 54 (2009) 3141. */
export const PROPANE = {
  criticalTemperature: 369.89,
  criticalPressure: 4.2512e6,
  /** J/(kg K). */
  gasConstant: 188.55,
  acentricFactor: 0.1521,
  /** Heat capacity ratio of the gas near 300 K. */
  gamma: 1.13,
  /** Heat capacity of the liquid between −40 and 20 °C, and of the gas, J/(kg K). */
  liquidHeat: 2450,
  gasHeat: 1660,
} as const;

/** Saturation pressure, Pa absolute: ln(p/pc) = (Tc/T) Σ Ni θ^ki, θ = 1 − T/Tc (same source, ancillary equation). */
export function vapourPressure(temperature: number): number {
  const theta = Math.max(1 - temperature / PROPANE.criticalTemperature, 0);
  const sum =
    -6.7722 * theta + 1.6938 * theta ** 1.5 - 1.3341 * theta ** 2.2 - 3.1876 * theta ** 4.8 + 0.94937 * theta ** 6.2;
  return PROPANE.criticalPressure * Math.exp((PROPANE.criticalTemperature / temperature) * sum);
}

/** Temperature, K, at which the liquid boils under `pressure`, Pa absolute; bisection between 150 K and the critical point. */
export function saturationTemperature(pressure: number): number {
  let low = 150;
  let high: number = PROPANE.criticalTemperature;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (vapourPressure(middle) < pressure) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Latent heat, J/kg: Watson’s rule h = 374.9 kJ/kg ((Tc − T)/(Tc − 273.15 K))^0.38 (Poling, Prausnitz & O’Connell). */
export function latentHeat(temperature: number): number {
  const tc = PROPANE.criticalTemperature;
  return 374.9e3 * (Math.max(tc - temperature, 0) / (tc - 273.15)) ** 0.38;
}

/** Compressibility Z of the gas by the Pitzer–Abbott second virial coefficient (Smith & Van Ness). */
export function compressibility(pressure: number, temperature: number): number {
  const tr = temperature / PROPANE.criticalTemperature;
  const pr = pressure / PROPANE.criticalPressure;
  const b = 0.083 - 0.422 / tr ** 1.6 + PROPANE.acentricFactor * (0.139 - 0.172 / tr ** 4.2);
  return Math.max(1 + (b * pr) / tr, 0.3);
}
