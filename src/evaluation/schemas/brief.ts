/** Schema of the builder's circumstances in canonical form (SI units), as a queue carries them. */
import { z } from 'zod';
import { SHEET_MATERIAL_IDS, VALVE_MATERIAL_IDS } from '../../../shared/durability/material-ids.ts';
import type { Brief } from '../../../shared/engine/brief.ts';

const number = z.number();
const stated = number.nullable();

const cylinder = {
  fuel: z.literal('propane'),
  capacity: number,
  fill: number,
  cylinders: number,
  regulatorPressure: stated,
  vaporiserDuty: stated,
};

const supply = z.discriminatedUnion('kind', [
  z.object({ kind: z.enum(['cylinder-vapour', 'cylinder-liquid']), ...cylinder }),
  z.object({
    kind: z.literal('carburettor'),
    fuel: z.literal('petrol'),
    ratedFlow: number,
    ratingDepression: number,
    capacity: number,
  }),
  z.object({
    kind: z.literal('pressure-injection'),
    fuel: z.enum(['propane', 'petrol']),
    pressure: number,
    capacity: number,
  }),
]);

const sheet = z.object({
  material: z.enum(SHEET_MATERIAL_IDS),
  thickness: number,
  width: number,
  length: number,
  sheets: stated,
  price: stated,
});

export const briefSchema = z.object({
  wanted: z.object({
    thrust: stated,
    endurance: stated,
    maxLength: stated,
    maxDiameter: stated,
    maxMass: stated,
    maxCost: stated,
    maxTsfc: stated,
  }),
  supply: supply.nullable(),
  startingAir: z.object({
    blower: z.object({ flow: number, pressure: number }).nullable(),
    tank: z.object({ volume: number, pressure: number, delivery: number }).nullable(),
  }),
  sheets: z.array(sheet),
  strips: z.array(z.object({ material: z.enum(VALVE_MATERIAL_IDS), thickness: number, price: stated })),
  tools: z.object({
    smallestRoll: stated,
    rollWidth: stated,
    thickestCut: stated,
    welding: z.array(z.enum(['gas', 'TIG', 'MIG', 'spot'])),
  }),
  limits: z.object({
    cautionMargin: number,
    minSustainChance: number,
    maxShellUtilisation: number,
    maxImpactSpeed: number,
    maxExposureMinutes: stated,
    operatorDistance: number,
  }),
  currency: z.string(),
  prices: z.object({ perHourLabour: stated, hardware: z.record(z.string(), number) }),
}) satisfies z.ZodType<Brief>;
