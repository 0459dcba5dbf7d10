/** Schema of what the gas-dynamic model finds out about an engine. */
import { z } from 'zod';
import type { Performance } from '../../../shared/engine/performance.ts';

const number = z.number();
const series = z.array(number);

const cause = z.enum([
  'no ignition',
  'blow-out',
  'intake does not follow',
  'over-rich',
  'over-lean',
  'burns without pulsing',
]);

const start = z.object({ airPressure: number.describe('gauge, Pa'), duration: number.describe('s') });

const verdict = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('self-sustaining'), start, message: z.string() }),
  z.object({ kind: z.literal('runs only with starting air'), cause, diedAtCycle: number, message: z.string() }),
  z.object({ kind: z.literal('dies'), cause, diedAtCycle: number, message: z.string() }),
  z.object({ kind: z.literal('model failure'), message: z.string() }),
]);

const startOutcome = start.extend({
  outcome: z.enum(['self-sustaining', 'runs only with starting air', 'dies', 'model failure']),
  cause: cause.nullable(),
  airFlow: number.describe('mean starting air, kg/s'),
});

const valveMotion = z.object({
  peakLift: number.describe('m'),
  stopLift: number.describe('m'),
  openFraction: number.describe('mean opening during suction over full opening'),
  openingDelay: number.nullable().describe('to a tenth of full lift, s; null: never gets there'),
  suctionWindow: number.describe('s'),
  seatImpactSpeed: number.describe('m/s'),
  stopImpactSpeed: number.describe('m/s'),
  forceOffered: number.describe('by suction to one valve, N'),
  forceNeeded: number.describe('by the mass of one valve, N'),
  followRatio: number.describe('offered over needed; below 1 the valve does not follow'),
  peakSeatPressure: number.describe('Pa'),
  naturalFrequency: number.describe('Hz'),
  movingMass: number.describe('kg'),
  cures: z
    .object({
      mass: number.nullable().describe('kg'),
      lift: number.nullable().describe('m'),
      stiffness: number.nullable().describe('N/m'),
      valves: number.nullable(),
    })
    .nullable()
    .describe('each alone would let the valve follow; null: cannot'),
});

const traces = z
  .object({
    time: series.describe('s'),
    headPressure: series.describe('Pa absolute'),
    exitPressure: series.describe('Pa absolute'),
    valveLift: series.describe('m'),
    intakeFlow: series.describe('kg/s, inwards positive'),
    exitFlow: series.describe('kg/s, outwards positive'),
    heatRelease: series.describe('W'),
    thrust: series.describe('N'),
  })
  .describe('one limit cycle at equal times');

const profile = z
  .object({
    position: series.describe('from the head, m'),
    diameter: series.describe('m'),
    gasTemperature: series.describe('K'),
    effectiveGasTemperature: series.describe('K'),
    filmCoefficient: series.describe('W/(m² K)'),
    wallTemperature: series.describe('K'),
    peakPressure: series.describe('Pa absolute'),
    lowestPressure: series.describe('Pa absolute'),
  })
  .describe('time-averaged state along the duct');

const running = z.object({
  frequency: number.describe('Hz'),
  bareThrust: number.describe('without augmenter, N'),
  thrust: number.describe('N'),
  augmentation: number,
  augmenterNote: z.string().nullable().describe('what the augmenter model says of its proportions'),
  airFlow: number.describe('kg/s'),
  fuelFlow: number.describe('kg/s'),
  tsfc: number.describe('kg/(N s); × 3600 gives kg/(N h), × 35303.9 gives lb/(lbf h)'),
  combustionEfficiency: number,
  equivalenceRatio: number,
  peakPressure: number.describe('Pa absolute'),
  meanPressure: number.describe('Pa absolute'),
  lowestPressure: number.describe('Pa absolute'),
  cycleVariation: number,
  specificThrust: number.describe('N s/kg of air'),
  thrustSplit: z.object({ intake: number, exhaust: number }).describe('N'),
  heatReleasePhase: number.describe('degrees after the pressure peak'),
  peakAirFlow: number.describe('kg/s'),
  meanSuction: number.describe('Pa'),
  valve: valveMotion.nullable(),
  traces,
  profile,
  field: z.object({ position: series, time: series, pressure: z.array(series) }).nullable(),
  audits: z.object({
    massError: number,
    energyError: number,
    thrustError: number,
    periodicityError: number,
    limitCycleReached: z.boolean(),
    closed: z.boolean(),
  }),
});

export const performanceSchema = z.object({
  verdict,
  edge: z
    .object({ tried: number, running: number })
    .nullable()
    .describe('trials with small changes of mixture, air and start, and how many ran; null: not asked'),
  starts: z.array(startOutcome),
  running: running.nullable().describe('null unless self-sustaining'),
  failedValve: valveMotion.nullable(),
  cellUpdates: number,
}) satisfies z.ZodType<Performance>;
