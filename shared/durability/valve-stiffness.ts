/** Young's modulus and density of valve materials at room temperature, from the one table of valve materials. */
import type { ValveMaterialId } from './material-ids.ts';
import { valueAt } from './property-table.ts';
import { VALVE_MATERIALS } from './valve-materials.ts';

const ROOM = 293.15;

/** E, Pa, and density, kg/m³, of a valve material at 20 °C. */
export function valveMaterialStiffness(material: ValveMaterialId): { modulus: number; density: number } {
  const { modulus, density } = VALVE_MATERIALS[material];
  return { modulus: valueAt(modulus, ROOM), density };
}
