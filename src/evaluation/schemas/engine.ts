/** Schema of an engine in canonical form (SI units), as it stands in results. */
import { z } from 'zod';
import { SHEET_MATERIAL_IDS, VALVE_MATERIAL_IDS } from '../../../shared/durability/material-ids.ts';
import type { Engine } from '../../../shared/engine/engine.ts';

const number = z.number();

const section = z.object({
  role: z.enum(['intake', 'intake-cone', 'chamber', 'chamber-cone', 'tailpipe', 'bend', 'exit-flare']),
  length: number.describe('along the centreline, m'),
  startDiameter: number.describe('inside, upstream, m'),
  endDiameter: number.describe('inside, downstream, m'),
  bend: z.object({ angle: number.describe('rad'), radius: number.describe('of the centreline, m') }).optional(),
});

const reed = z.object({
  kind: z.literal('reed'),
  petals: number,
  length: number.describe('free, m'),
  width: number.describe('m'),
  thickness: number.describe('m'),
  material: z.enum(VALVE_MATERIAL_IDS),
  stopLift: number.describe('m'),
  portArea: number.describe('under one petal, m²'),
});

const poppet = z.object({
  kind: z.literal('poppet'),
  valves: number,
  headDiameter: number.describe('m'),
  portDiameter: number.describe('m'),
  lift: number.describe('at the stop, m'),
  mass: number.describe('of one valve without its spring, kg'),
  stemDiameter: number.describe('m'),
  springMass: number.describe('kg'),
  springRate: number.describe('N/m'),
  preload: number.describe('N'),
  material: z.enum(VALVE_MATERIAL_IDS),
  stemJoint: z.enum(['one-piece', 'welded']),
  axis: z.enum(['horizontal', 'vertical']),
});

const valveless = z.object({
  kind: z.literal('valveless'),
  lip: z.enum(['thin', 'flared']),
  mouth: z.enum(['aft', 'forward']),
});

export const engineSchema = z
  .object({
    name: z.string(),
    sections: z.array(section).describe('from the valve plate or intake mouth to the exit'),
    intake: z.discriminatedUnion('kind', [reed, poppet, valveless]),
    feed: z.object({
      fuel: z.enum(['propane', 'petrol']),
      mode: z.enum(['premixed', 'steady-injection', 'timed-injection']),
      equivalenceRatio: number,
    }),
    shell: z.object({ material: z.enum(SHEET_MATERIAL_IDS), thickness: number.describe('m') }),
    augmenter: z
      .object({
        diameter: number.describe('throat, m'),
        length: number.describe('m'),
        gap: number.describe('from the engine’s exit, m'),
        taper: number.describe('exit over throat diameter'),
      })
      .nullable(),
    site: z.object({ pressure: number.describe('Pa absolute'), temperature: number.describe('K') }),
  })
  .describe('one engine, SI units') satisfies z.ZodType<Engine>;
