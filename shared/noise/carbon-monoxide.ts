/** Carbon monoxide in a closed room. IDLH 1200 ppm and ceiling figures: NIOSH Pocket Guide; OSHA 50 ppm over 8 h. */
export const IDLH_PPM = 1200;

/** Molar masses, kg/kmol. */
const CARBON = 12.011;
const MONOXIDE = 28.01;

/**
 * Most CO that the exhaust can carry, kg/s: carbon of the fuel that does not burn to the end leaves as CO. An upper
 * bound from the carbon balance; `carbonShare` of fuel mass.
 */
export function monoxideFlow(fuelFlow: number, combustionEfficiency: number, carbonShare: number): number {
  // 1 kg of C burnt to CO releases 28 % of its heat, hence the divisor; never below 1 % of the carbon.
  const share = Math.min(Math.max((1 - combustionEfficiency) / 0.72, 0.01), 1);
  return fuelFlow * carbonShare * share * (MONOXIDE / CARBON);
}

/** Seconds until a sealed room of `volume`, m³, reaches `ppm` by volume, perfectly mixed. */
export function secondsToConcentration(flow: number, volume: number, ppm: number, airDensity: number): number {
  const moles = (ppm * 1e-6 * volume * airDensity) / 28.96;
  return (moles * MONOXIDE) / flow;
}
