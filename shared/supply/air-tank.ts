/** Compressed-air tank that blows down fast: adiabatic, so m/m0 = (p/p0)^(1/γ) and T/T0 = (p/p0)^((γ−1)/γ). SI units. */
const GAMMA = 1.4;
const AIR_GAS_CONSTANT = 287.05;

/** Air, kg, that leaves while the pressure falls from `full` to `least`, Pa absolute. */
export function airDelivered(volume: number, full: number, least: number, temperature: number): number {
  if (least >= full) return 0;
  return ((volume * full) / (AIR_GAS_CONSTANT * temperature)) * (1 - (least / full) ** (1 / GAMMA));
}

/** Temperature left in the tank, K. */
export function tankTemperature(full: number, least: number, temperature: number): number {
  return temperature * (Math.min(least, full) / full) ** ((GAMMA - 1) / GAMMA);
}

/** Seconds of `flow`, kg/s, with a compressor that keeps adding `delivery`, kg/s. Infinity when it keeps up. */
export function tankSeconds(
  volume: number,
  full: number,
  least: number,
  temperature: number,
  flow: number,
  delivery: number,
): number {
  const net = flow - delivery;
  return net <= 0 ? Number.POSITIVE_INFINITY : airDelivered(volume, full, least, temperature) / net;
}
