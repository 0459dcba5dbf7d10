/** What the gas-dynamic model finds out about one engine. SI units throughout. */

/** Starting air and spark, given for a while and then both taken away. */
export interface StartAttempt {
  /** Gauge pressure of the starting air at the intake, Pa. */
  airPressure: number;
  /** How long air and spark are given at most, s; in an outcome or a verdict, how long they were. */
  duration: number;
}

export type DeathCause =
  | 'no ignition'
  | 'blow-out'
  | 'intake does not follow'
  | 'over-rich'
  | 'over-lean'
  | 'burns without pulsing';

export type Verdict =
  | { kind: 'self-sustaining'; start: StartAttempt; message: string }
  | { kind: 'runs only with starting air'; cause: DeathCause; diedAtCycle: number; message: string }
  | { kind: 'dies'; cause: DeathCause; diedAtCycle: number; message: string }
  | { kind: 'model failure'; message: string };

/** What became of each start that was tried, in order. */
export interface StartOutcome extends StartAttempt {
  outcome: Verdict['kind'];
  cause: DeathCause | null;
  /** Starting air that flowed in on average while it was on, kg/s. */
  airFlow: number;
}

/** How well the books balance over the averaged cycles; fractions of the throughput. */
export interface Audits {
  massError: number;
  energyError: number;
  /** |momentum-flux thrust − wall-pressure thrust| / thrust. */
  thrustError: number;
  /** Relative change of impulse, air, period and peak pressure between successive groups of cycles (drift in periodicity.ts). */
  periodicityError: number;
  limitCycleReached: boolean;
  /** True when mass and energy close to 0.1 % and thrust to 1 %. */
  closed: boolean;
}

/** What the intake valve was asked to do and did; null for valveless. */
export interface ValveMotion {
  /** Greatest lift reached, m, and the stop's lift, m. */
  peakLift: number;
  stopLift: number;
  /** Mean opening area while chamber suction lasts, over the area at full lift. */
  openFraction: number;
  /** From the start of suction to a tenth of full lift, s; null when it never gets there. */
  openingDelay: number | null;
  /** How long suction lasts each cycle, s. */
  suctionWindow: number;
  /** Fastest arrivals, m/s. */
  seatImpactSpeed: number;
  stopImpactSpeed: number;
  /** Mean over the suction window of the force that suction offers one valve, N. */
  forceOffered: number;
  /** Force that moves one valve's mass to full lift within half of the suction window, against its spring, N. */
  forceNeeded: number;
  /** forceOffered / forceNeeded; below 1 the valve does not follow. */
  followRatio: number;
  /** Largest pressure difference that presses the shut valve on its seat, Pa. */
  peakSeatPressure: number;
  /** Natural frequency, Hz. */
  naturalFrequency: number;
  /** Moving mass of one valve (effective for a petal), kg. */
  movingMass: number;
  /** For a valve that does not follow: the mass, kg, lift, m, stiffness, N/m and number of valves at which each alone would cure it (null: cannot). */
  cures: { mass: number | null; lift: number | null; stiffness: number | null; valves: number | null } | null;
}

/** One limit cycle, resampled at equal times; every array has the same length. */
export interface CycleTraces {
  /** s, from 0 to one period. */
  time: number[];
  /** Head (chamber) pressure, Pa absolute. */
  headPressure: number[];
  /** Pa absolute, just inside the exit. */
  exitPressure: number[];
  /** Lift of the valve, m; all zero for valveless. */
  valveLift: number[];
  /** kg/s through the intake, inwards positive. */
  intakeFlow: number[];
  /** kg/s through the exit, outwards positive. */
  exitFlow: number[];
  /** W. */
  heatRelease: number[];
  /** N. */
  thrust: number[];
}

/** Time-averaged state along the duct; every array has one entry a cell. */
export interface AxialProfile {
  /** Cell centre from the head, m. */
  position: number[];
  diameter: number[];
  /** K, mean of the gas. */
  gasTemperature: number[];
  /** K, recovery temperature weighted by film coefficient. */
  effectiveGasTemperature: number[];
  /** W/(m² K), mean inside film coefficient. */
  filmCoefficient: number[];
  /** K, steady wall temperature. */
  wallTemperature: number[];
  /** Pa absolute. */
  peakPressure: number[];
  lowestPressure: number[];
}

/** Pressure over position and time, for pictures. pressure[t][x], Pa absolute. */
export interface PressureField {
  position: number[];
  time: number[];
  pressure: number[][];
}

/** Figures of a running engine, averaged over whole cycles. */
export interface RunningPerformance {
  /** Hz. */
  frequency: number;
  /** N, engine alone, without augmenter. */
  bareThrust: number;
  /** N, with augmenter when fitted; equals bareThrust without. */
  thrust: number;
  /** thrust / bareThrust. */
  augmentation: number;
  /** What the augmenter model says of its proportions; null without augmenter. */
  augmenterNote: string | null;
  /** kg/s. */
  airFlow: number;
  fuelFlow: number;
  /** kg/(N s); convert at the edges: ×3600 gives kg/(N h), ×35303.9 gives lb/(lbf h). */
  tsfc: number;
  /** Heat released / heat of all the fuel used. */
  combustionEfficiency: number;
  /** Overall φ: fuel used × AFR / air taken in. */
  equivalenceRatio: number;
  /** Pa absolute at the head (chamber for valveless). */
  peakPressure: number;
  meanPressure: number;
  lowestPressure: number;
  /** Standard deviation of the cycles' peak gauge pressure over its mean. */
  cycleVariation: number;
  /** N s/kg of air. */
  specificThrust: number;
  /** Thrust at each open end, N, before augmentation; intake is 0 with valves. */
  thrustSplit: { intake: number; exhaust: number };
  /** Phase of the heat-release centroid before (−) or after (+) the pressure peak, degrees. */
  heatReleasePhase: number;
  /** kg/s, largest instantaneous inflow of air. */
  peakAirFlow: number;
  /** Mean static pressure difference that draws air in while it flows, Pa. */
  meanSuction: number;
  valve: ValveMotion | null;
  traces: CycleTraces;
  profile: AxialProfile;
  /** Present when the caller asked for it. */
  field: PressureField | null;
  audits: Audits;
}

/** How often the engine ran when mixture, air and start were changed a little. */
export interface EdgeProbe {
  tried: number;
  running: number;
}

export interface Performance {
  verdict: Verdict;
  /** Present when the caller asked for detail. */
  edge: EdgeProbe | null;
  starts: StartOutcome[];
  /** Figures of the running engine; null unless self-sustaining. */
  running: RunningPerformance | null;
  /** What the valve did or could not do in the best failed start; null when running or valveless. */
  failedValve: ValveMotion | null;
  /** Cell updates spent, for budgets and benchmarks. */
  cellUpdates: number;
}
