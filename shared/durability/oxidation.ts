/** Metal lost to scale. */
import { arrheniusAt } from './property-table.ts';
import type { SheetMaterial } from './sheet-materials.ts';

const SECONDS_100H = 360_000;

/**
 * Rate at which both faces of a hot wall recede together, m/s: cyclic oxygen uptake (100 h tables, interpolated
 * Arrhenius-fashion) times the metal that the oxygen binds. Linear in time, since runs with cooling between shed the
 * scale; pessimistic for unbroken heat, where growth slows as √t.
 */
export function recessionRate(material: SheetMaterial, temperature: number): number {
  const uptake = arrheniusAt(material.oxidation100h, temperature);
  return (2 * uptake * material.metalPerOxygen) / (material.density * SECONDS_100H);
}

/** Lives beyond 30 000 years say nothing, s. */
const LONGEST = 1e12;

/** Running time, s, until `share` of the thickness (m) is gone. */
export function oxidationLife(material: SheetMaterial, temperature: number, thickness: number, share: number): number {
  return Math.min((share * thickness) / recessionRate(material, temperature), LONGEST);
}
