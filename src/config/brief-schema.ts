/** The builder's circumstances as written in a file: what is wanted, supply, starting air, stock, tools, limits, money. */
import { z } from 'zod';
import { SHEET_MATERIAL_IDS, VALVE_MATERIAL_IDS } from '../../shared/durability/material-ids.ts';
import type { Brief, FuelSupply } from '../../shared/engine/brief.ts';
import { choice, choices, lineOfText, optionalQuantity, plainNumber, quantity } from './fields.ts';

const price = (about: string) =>
  plainNumber(`${about}, in your own currency`, { low: 0, high: 1e9 }).nullable().default(null);

/** Everything may be left out: what is not stated is not asked of the engine. */
const wantedSchema = z
  .strictObject({
    thrust: optionalQuantity('force', 'Static thrust that the engine must give'),
    endurance: optionalQuantity('time', 'How long one run must last and valves should live'),
    'max-length': optionalQuantity('length', 'Greatest overall length'),
    'max-diameter': optionalQuantity('length', 'Greatest overall diameter or height'),
    'max-mass': optionalQuantity('mass', 'Greatest mass'),
    'max-cost': price('Greatest cost of material'),
    'max-tsfc': optionalQuantity('tsfc', 'Greatest thrust-specific fuel consumption'),
  })
  .transform((wanted) => ({
    thrust: wanted.thrust,
    endurance: wanted.endurance,
    maxLength: wanted['max-length'],
    maxDiameter: wanted['max-diameter'],
    maxMass: wanted['max-mass'],
    maxCost: wanted['max-cost'],
    maxTsfc: wanted['max-tsfc'],
  }))
  .describe('What the engine must do')
  .prefault({});

const cylinder = {
  fuel: choice(['propane'], 'Fuel in the cylinder').prefault('propane'),
  capacity: quantity('mass', 'Fuel that one full cylinder holds'),
  fill: plainNumber('Share of that which is left, 0 to 1', { low: 0, high: 1 }).default(0.8),
  cylinders: plainNumber('Number of cylinders coupled together', { low: 1, high: 100, integer: true }).default(1),
  'regulator-pressure': optionalQuantity('gauge pressure', 'Set at the regulator; left out: no regulator'),
  'vaporiser-duty': optionalQuantity('power', 'Heat that the vaporiser coil can give, for liquid draw'),
};

const supplySchema = z
  .discriminatedUnion(
    'kind',
    [
      z.strictObject({ kind: z.literal('cylinder-vapour'), ...cylinder }),
      z.strictObject({ kind: z.literal('cylinder-liquid'), ...cylinder }),
      z.strictObject({
        kind: z.literal('carburettor'),
        fuel: choice(['petrol'], 'Fuel').prefault('petrol'),
        'rated-flow': quantity('volume flow', 'Rated air flow'),
        'rating-depression': quantity(
          'gauge pressure',
          'Depression of the rating: by convention 3.0 inHg for 1 and 2 barrels, 1.5 inHg for 4',
        ).prefault('3 inHg'),
        capacity: quantity('mass', 'Fuel on board'),
      }),
      z.strictObject({
        kind: z.literal('pressure-injection'),
        fuel: choice(['propane', 'petrol'], 'Fuel'),
        pressure: quantity('gauge pressure', 'At the nozzle'),
        capacity: quantity('mass', 'Fuel on board'),
      }),
    ],
    { error: 'a kind of supply: cylinder-vapour, cylinder-liquid, carburettor or pressure-injection' },
  )
  .transform((supply): FuelSupply => {
    switch (supply.kind) {
      case 'carburettor':
        return {
          kind: supply.kind,
          fuel: supply.fuel,
          ratedFlow: supply['rated-flow'],
          ratingDepression: supply['rating-depression'],
          capacity: supply.capacity,
        };
      case 'pressure-injection':
        return supply;
      default:
        return {
          kind: supply.kind,
          fuel: supply.fuel,
          capacity: supply.capacity,
          fill: supply.fill,
          cylinders: supply.cylinders,
          regulatorPressure: supply['regulator-pressure'],
          vaporiserDuty: supply['vaporiser-duty'],
        };
    }
  })
  .nullable()
  .describe('Where the fuel comes from')
  .prefault(null);

const startingAirSchema = z
  .strictObject({
    blower: z
      .strictObject({ flow: quantity('volume flow', 'Free air'), pressure: quantity('gauge pressure', 'At that flow') })
      .nullable()
      .default(null),
    tank: z
      .strictObject({
        volume: quantity('volume', 'Of the tank'),
        pressure: quantity('gauge pressure', 'When full'),
        delivery: quantity('volume flow', 'Free air that the compressor delivers'),
      })
      .nullable()
      .default(null),
  })
  .describe('What blows through the intake at the start')
  .prefault({});

const stockSchema = z
  .strictObject({
    sheets: z
      .array(
        z.strictObject({
          material: choice(SHEET_MATERIAL_IDS, 'Sheet material'),
          thickness: quantity('thickness', 'Of the sheet'),
          width: quantity('length', 'Of one sheet').prefault('1 m'),
          length: quantity('length', 'Of one sheet').prefault('2 m'),
          sheets: plainNumber('Number at hand', { low: 0, high: 10000, integer: true }).nullable().default(null),
          price: price('Price of one sheet'),
        }),
        { error: 'a list of sheets' },
      )
      .max(64, { error: 'at most 64 sheets' })
      .default([]),
    strips: z
      .array(
        z.strictObject({
          material: choice(VALVE_MATERIAL_IDS, 'Strip or bar material'),
          thickness: quantity('thickness', 'Of the strip'),
          price: price('Price of one metre'),
        }),
        { error: 'a list of strips' },
      )
      .max(64, { error: 'at most 64 strips' })
      .default([]),
  })
  .describe('Sheet and strip at hand')
  .prefault({});

const toolsSchema = z
  .strictObject({
    'smallest-roll': optionalQuantity('length', 'Smallest diameter that the rolls form'),
    'roll-width': optionalQuantity('length', 'Widest sheet that the rolls take'),
    'thickest-cut': optionalQuantity('thickness', 'Thickest sheet that can be cut and rolled'),
    welding: choices(['gas', 'TIG', 'MIG', 'spot'], 'Welding that is at hand').prefault(['TIG']),
  })
  .transform((tools) => ({
    smallestRoll: tools['smallest-roll'],
    rollWidth: tools['roll-width'],
    thickestCut: tools['thickest-cut'],
    welding: tools.welding,
  }))
  .describe('Tools at hand')
  .prefault({});

const limitsSchema = z
  .strictObject({
    'caution-margin': plainNumber('Clearance from a limit below which a pass becomes a caution', {
      low: 0,
      high: 1,
    }).default(0.1),
    'min-sustain-chance': plainNumber('Least chance to run by itself that a ranked candidate may have', {
      low: 0,
      high: 1,
    }).default(0.8),
    'max-shell-utilisation': plainNumber('Greatest share of hot yield that the shell may use', {
      low: 0.01,
      high: 1,
    }).default(0.5),
    'max-impact-speed': quantity(
      'speed',
      'Of a valve on its seat; compressor practice, 6 to 10 m/s for ten million cycles',
    ).prefault('10 m/s'),
    'max-exposure': optionalQuantity('time', 'Time that the operator stands beside the running engine in a day'),
    'operator-distance': quantity('length', 'From the engine to the operator').prefault('5 m'),
  })
  .transform((limits) => ({
    cautionMargin: limits['caution-margin'],
    minSustainChance: limits['min-sustain-chance'],
    maxShellUtilisation: limits['max-shell-utilisation'],
    maxImpactSpeed: limits['max-impact-speed'],
    maxExposureMinutes: limits['max-exposure'] === null ? null : limits['max-exposure'] / 60,
    operatorDistance: limits['operator-distance'],
  }))
  .describe('Limits and margins of the checks')
  .prefault({});

const moneySchema = z
  .strictObject({
    currency: lineOfText('Label beside prices', 12).default('EUR'),
    'labour-per-hour': price('Price of an hour of work'),
    hardware: z
      .record(
        z.string().max(80),
        z.number({ error: 'a price, as a number' }).min(0, { error: 'a price, not below 0' }).max(1e9),
        { error: 'item: price' },
      )
      .default({})
      .describe('Your own prices of spark plugs, fittings, valves, by item'),
  })
  .describe('Prices, in your own currency')
  .prefault({});

/** The keys of a file that make up the brief; shared by studies and engine files. */
export const briefShape = {
  wanted: wantedSchema,
  supply: supplySchema,
  'starting-air': startingAirSchema,
  stock: stockSchema,
  tools: toolsSchema,
  limits: limitsSchema,
  money: moneySchema,
};

const briefObject = z.strictObject(briefShape);

/** What briefShape yields → the brief. */
export function toBrief(file: z.output<typeof briefObject>): Brief {
  return {
    wanted: file.wanted,
    supply: file.supply,
    startingAir: file['starting-air'],
    sheets: file.stock.sheets,
    strips: file.stock.strips,
    tools: file.tools,
    limits: file.limits,
    currency: file.money.currency,
    prices: { perHourLabour: file.money['labour-per-hour'], hardware: file.money.hardware },
  };
}
