/** Size of a fuel cylinder from what it holds. Proportions of common upright steel cylinders; common practice, no source. */
export interface CylinderGeometry {
  /** m. */
  diameter: number;
  height: number;
  /** Steel, kg. */
  tareMass: number;
}

/** Liquid density at filling temperature, kg/m³, and share of the volume that a full cylinder may hold. */
const LIQUID_DENSITY = 505;
const FULL_SHARE = 0.8;

/** @param capacity propane in a full cylinder, kg */
export function cylinderGeometry(capacity: number): CylinderGeometry {
  const volume = capacity / (LIQUID_DENSITY * FULL_SHARE);
  // Small bottles are squat (9 kg: 1.3), tall ones slender (45 kg: 2.7).
  const aspect = Math.min(Math.max(1.3 + (capacity - 9) * 0.039, 1.3), 2.7);
  const diameter = Math.cbrt((4 * volume) / (Math.PI * aspect));
  return { diameter, height: aspect * diameter, tareMass: 4 + 0.65 * capacity };
}

/** The foot ring shelters the bottom; dry steel just above the liquid works as a fin, m. Both fitted to published draw tables. */
const BOTTOM_SHARE = 0.6;
const FIN_HEIGHT = 0.07;

/** Area through which air warms the liquid, m²: bottom, and side up to the level and a little above it. */
export function wettedArea(g: CylinderGeometry, fill: number): number {
  const level = Math.min(g.height * FULL_SHARE * fill + FIN_HEIGHT, g.height);
  return BOTTOM_SHARE * (Math.PI / 4) * g.diameter ** 2 + Math.PI * g.diameter * level;
}
