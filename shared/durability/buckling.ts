/** Collapse of thin tubes under outside pressure. SI units; every pressure in Pa. */

/** Very long tube: p = 2E/(1−ν²) (t/D)³ (Bresse; Roark table 15.2 case 19a). */
export function longTubeCollapse(modulus: number, poisson: number, thickness: number, diameter: number): number {
  return ((2 * modulus) / (1 - poisson * poisson)) * (thickness / diameter) ** 3;
}

/**
 * Tube of length L between stiff ends, U. S. Experimental Model Basin formula:
 * p = 2.42 E/(1−ν²)^¾ (t/D)^2.5 / (L/D − 0.45 √(t/D)). Windenburg & Trilling, Trans. ASME 56 (1934) 819.
 */
export function shortTubeCollapse(
  modulus: number,
  poisson: number,
  thickness: number,
  diameter: number,
  length: number,
): number {
  const slenderness = thickness / diameter;
  // Shorter than this it is a ring, and the formula would give infinity.
  const span = Math.max(length / diameter - 0.45 * Math.sqrt(slenderness), 0.05);
  return ((2.42 * modulus) / (1 - poisson * poisson) ** 0.75) * (slenderness ** 2.5 / span);
}

/** The larger of both: stiff ends can only help. `knockdown` covers out-of-roundness (0.8: the same tests). */
export function collapsePressure(
  modulus: number,
  poisson: number,
  thickness: number,
  diameter: number,
  length: number,
  knockdown = 0.8,
): number {
  return (
    knockdown *
    Math.max(
      longTubeCollapse(modulus, poisson, thickness, diameter),
      shortTubeCollapse(modulus, poisson, thickness, diameter, length),
    )
  );
}
