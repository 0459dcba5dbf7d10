/** What the checks know of a sheet for rolled shells. SI units. */
import type { SheetMaterialId } from './material-ids.ts';
import type { PropertyTable } from './property-table.ts';

export interface SheetMaterial {
  id: SheetMaterialId;
  name: string;
  /** kg/m³ at room temperature. */
  density: number;
  poisson: number;
  /** Pa. */
  yield: PropertyTable;
  /** Pa. */
  modulus: PropertyTable;
  /** Mean linear expansion from 20 °C to red heat, 1/K. */
  expansion: number;
  /** Emissivity of the oxidised outside. */
  emissivity: number;
  /** Stress to rupture in 1000 h, Pa. */
  ruptureStress1000h: PropertyTable;
  /** Oxygen taken up by one face in 100 h of cyclic heating, kg/m². */
  oxidation100h: PropertyTable;
  /** Metal consumed per mass of oxygen taken up. */
  metalPerOxygen: number;
  /** Scaling limits in air: runs with cooling between, and unbroken heat, K. */
  scalingIntermittent: number;
  scalingContinuous: number;
  weldability: { good: boolean; note: string };
  sources: string;
}
