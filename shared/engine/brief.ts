/** The builder's circumstances: what is wanted, where, with which supply, stock and tools. SI units; null means "not stated". */

import type { SheetMaterialId, ValveMaterialId } from '../durability/material-ids.ts';
import type { FuelName } from '../gas/fuels.ts';

export interface Wanted {
  /** N. */
  thrust: number | null;
  /** How long one run must last and how long valves should live, s. */
  endurance: number | null;
  /** Greatest overall length and diameter, m; mass, kg. */
  maxLength: number | null;
  maxDiameter: number | null;
  maxMass: number | null;
  /** In the user's own currency unit. */
  maxCost: number | null;
  /** Greatest TSFC, kg/(N s). */
  maxTsfc: number | null;
}

/** Where fuel comes from. */
export type FuelSupply =
  | {
      kind: 'cylinder-vapour' | 'cylinder-liquid';
      fuel: 'propane';
      /** Fuel mass that one full cylinder holds, kg. */
      capacity: number;
      /** Fraction of that left, 0 to 1. */
      fill: number;
      cylinders: number;
      /** Gauge pressure set at the regulator, Pa; null: unregulated. */
      regulatorPressure: number | null;
      /** Liquid draw: heat that the vaporiser coil can give, W; null: not stated. */
      vaporiserDuty: number | null;
    }
  | {
      kind: 'carburettor';
      fuel: 'petrol';
      /** Rated air volume flow, m³/s, at the rating depression, Pa. */
      ratedFlow: number;
      ratingDepression: number;
      /** Fuel on board, kg. */
      capacity: number;
    }
  | {
      kind: 'pressure-injection';
      fuel: FuelName;
      /** Gauge pressure at the nozzle, Pa. */
      pressure: number;
      capacity: number;
    };

/** What blows through the intake at the start. */
export interface StartingAir {
  /** Blower: free-air flow m³/s at gauge pressure Pa; null: none. */
  blower: { flow: number; pressure: number } | null;
  /** Compressor tank: volume m³, gauge pressure Pa, free-air delivery m³/s; null: none. */
  tank: { volume: number; pressure: number; delivery: number } | null;
}

export interface SheetStock {
  material: SheetMaterialId;
  thickness: number;
  /** Sheet size, m. */
  width: number;
  length: number;
  sheets: number | null;
  /** Price of one sheet in the user's currency; null: unknown. */
  price: number | null;
}

export interface StripStock {
  material: ValveMaterialId;
  thickness: number;
  price: number | null;
}

export interface Tools {
  /** Smallest diameter the rolls can form, m; widest sheet they take, m. */
  smallestRoll: number | null;
  rollWidth: number | null;
  /** Thickest sheet that can be cut or rolled, m. */
  thickestCut: number | null;
  welding: ('gas' | 'TIG' | 'MIG' | 'spot')[];
}

export interface Limits {
  /** Fraction by which a value must clear its limit before a caution turns into a pass. */
  cautionMargin: number;
  /** Smallest chance of self-sustaining a ranked candidate may have. */
  minSustainChance: number;
  /** Largest share of hot yield that shell stress may use. */
  maxShellUtilisation: number;
  /** m/s at the seat. */
  maxImpactSpeed: number;
  /** dB(A) at the operator. */
  maxExposureMinutes: number | null;
  /** Distance of the operator, m. */
  operatorDistance: number;
}

export interface Brief {
  wanted: Wanted;
  supply: FuelSupply | null;
  startingAir: StartingAir;
  sheets: SheetStock[];
  strips: StripStock[];
  tools: Tools;
  limits: Limits;
  /** Currency label used beside prices, e.g. "EUR". */
  currency: string;
  /** Price per kg of fuel, welding, hardware by item name; the user's own. */
  prices: { perHourLabour: number | null; hardware: Record<string, number> };
}
