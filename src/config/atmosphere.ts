/**
 * International Standard Atmosphere, troposphere (ISO 2533): T = T₀ − L h, p = p₀ (T/T₀)^(g/(R L)).
 * T₀ 288.15 K, p₀ 101325 Pa, L 6.5 K/km, g 9.80665 m/s², R 287.05287 J/(kg K).
 */

const SEA_LEVEL_TEMPERATURE = 288.15;
const SEA_LEVEL_PRESSURE = 101325;
const LAPSE_RATE = 0.0065;
const GRAVITY = 9.80665;
const GAS_CONSTANT = 287.05287;

/** Altitude in m (−500 to 11000) → pressure in Pa and temperature in K. */
export function standardAtmosphere(altitude: number): { pressure: number; temperature: number } {
  const temperature = SEA_LEVEL_TEMPERATURE - LAPSE_RATE * altitude;
  const pressure =
    SEA_LEVEL_PRESSURE * (temperature / SEA_LEVEL_TEMPERATURE) ** (GRAVITY / (GAS_CONSTANT * LAPSE_RATE));
  return { pressure, temperature };
}
