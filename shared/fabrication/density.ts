/** Density by standard designation, from the project's own material data. */
import { SHEET_MATERIALS } from '../durability/sheet-materials.ts';
import { VALVE_MATERIALS } from '../durability/valve-materials.ts';

/** Unalloyed spring steel wire, EN 10270-1; 7850 kg/m³ as EN 13906-1 takes it. */
export const SPRING_WIRE = 'EN 10270-1 SH';
const SPRING_WIRE_DENSITY = 7850;

/** kg/m³ at room temperature. Throws when the designation is unknown: a part without density must not weigh nothing. */
export function densityOf(material: string): number {
  if (material === SPRING_WIRE) return SPRING_WIRE_DENSITY;
  const known: Record<string, { density: number } | undefined> = { ...SHEET_MATERIALS, ...VALVE_MATERIALS };
  const found = known[material];
  if (found === undefined) {
    throw new Error(`no density is known for "${material}"; expected one of ${Object.keys(known).join(', ')}`);
  }
  return found.density;
}
