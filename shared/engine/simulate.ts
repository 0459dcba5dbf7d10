/**
 * The gas-dynamic model's door: an engine in, its performance out. Pure: same input, same bits.
 *
 * Every start of the fixed set is tried until one leads to self-sustained running.
 */
import { augmentation } from '../augmenter/augmentation.ts';
import { releaseFlow } from '../duct/flow.ts';
import { calibratedConstants, type ModelConstants } from './constants.ts';
import { edgeSentence, edgeVariants } from './edge.ts';
import type { Engine } from './engine.ts';
import { type Machine, makeMachine } from './machine.ts';
import type {
  Audits,
  Performance,
  RunningPerformance,
  StartAttempt,
  StartOutcome,
  ValveMotion,
} from './performance.ts';
import { heatReleasePhase, openingDelay, Recorder } from './recorder.ts';
import { refineMachine } from './refine.ts';
import { Run, type RunEnd, type RunSettings } from './run.ts';
import { startAttempts } from './start.ts';
import { valveMotion } from './valve-motion.ts';
import { deathCause, deathMessage } from './verdict.ts';

export type ModelFidelity = 'screen' | 'full' | 'detailed';

export interface SimulateOptions {
  /**
   * screen: half the cells and an early stop; full: shipped resolution; detailed: full, with the x–t field. Default full. All
   * come to their limit cycle from that of a still coarser grid.
   */
  fidelity?: ModelFidelity;
  constants?: ModelConstants;
  /** Cells along the duct; default by fidelity. For grid studies. */
  cells?: number;
  /** Repeat the verdict under small changes of mixture, air and start: six more runs on the coarse grid. */
  probeEdge?: boolean;
  /** Starts to try instead of the fixed set. */
  starts?: StartAttempt[];
}

/** Cells of the shipped resolution, and of an engine that breathes through a pipe: its intake's few diameters need them. */
export const SHIPPED_CELLS = 96;
export const SHIPPED_CELLS_VALVELESS = 144;
/** Cells of the screening run, and of the way to the limit cycle. */
export const SCREEN_CELLS = 48;
export const APPROACH_CELLS = 32;

// Groups are even, so that an engine which alternates between two cycles still has a limit cycle.
const APPROACH: RunSettings = { group: 4, tolerance: 0.02, minCycles: 10, maxCycles: 24 };
const SETTINGS: Record<ModelFidelity, RunSettings> = {
  screen: { group: 4, tolerance: 0.02, minCycles: 8, maxCycles: 16 },
  full: { group: 4, tolerance: 0.01, minCycles: 8, maxCycles: 50 },
  detailed: { group: 4, tolerance: 0.01, minCycles: 8, maxCycles: 50 },
};

/** Cells along the duct of a full run. */
export function shippedCells(engine: Engine): number {
  return engine.intake.kind === 'valveless' ? SHIPPED_CELLS_VALVELESS : SHIPPED_CELLS;
}

/** A failed start that fired this strongly ran on starting air: peak gauge pressure, share of ambient. */
const FIRED = 0.08;

interface Attempt {
  start: StartAttempt;
  machine: Machine;
  run: Run;
  end: RunEnd;
  /** Cycles that it went on for on the fine grid before it stopped there. */
  cyclesMore?: number;
}

/**
 * Simulates one engine. Never throws for a physical reason; an engine that cannot be gridded throws RangeError. With
 * `probeEdge` the verdict is repeated under small changes, so that a design at the edge is found to be there.
 */
export function simulate(engine: Engine, options: SimulateOptions = {}): Performance {
  const performance = tryStarts(engine, options);
  if (!options.probeEdge || performance.verdict.kind === 'model failure') return performance;
  const starts = options.starts ?? startAttempts(engine.sections, engine.intake.kind !== 'valveless');
  const runs = performance.running !== null;
  const edge = { tried: 0, running: 0 };
  let { cellUpdates } = performance;
  for (const variant of edgeVariants(engine, starts)) {
    const trial = tryStarts(variant.engine, {
      ...options,
      fidelity: 'screen',
      cells: undefined,
      starts: variant.starts,
    });
    edge.tried++;
    if (trial.running) edge.running++;
    cellUpdates += trial.cellUpdates;
  }
  const verdict = { ...performance.verdict, message: performance.verdict.message + edgeSentence(edge, runs) };
  return { ...performance, verdict, edge, cellUpdates };
}

function tryStarts(engine: Engine, options: SimulateOptions): Performance {
  const machines: Machine[] = [];
  try {
    return tryStartsOn(machines, engine, options);
  } finally {
    for (const machine of machines) releaseFlow(machine.flow);
  }
}

/** Notes each machine that it makes in `machines`. */
function tryStartsOn(machines: Machine[], engine: Engine, options: SimulateOptions): Performance {
  const fidelity = options.fidelity ?? 'full';
  const constants = options.constants ?? calibratedConstants();
  const settings = SETTINGS[fidelity];
  const cells = options.cells ?? (fidelity === 'screen' ? SCREEN_CELLS : shippedCells(engine));
  const attempts: Attempt[] = [];
  const starts: StartOutcome[] = [];
  let cellUpdates = 0;
  const spend = (attempt: Attempt) => {
    machines.push(attempt.machine);
    cellUpdates += attempt.run.steps * attempt.machine.flow.grid.cells;
    return attempt;
  };
  for (const start of options.starts ?? startAttempts(engine.sections, engine.intake.kind !== 'valveless')) {
    const approach = tryStart(engine, constants, start, Math.min(cells, APPROACH_CELLS), APPROACH);
    let attempt = approach;
    if (survived(approach) && cells > APPROACH_CELLS) {
      spend(approach);
      attempt = goOn(approach, cells, settings);
    }
    const running = survived(attempt) ? measure(attempt, settings, fidelity === 'detailed') : null;
    spend(attempt);
    if (running) {
      starts.push({
        ...start,
        outcome: 'self-sustaining',
        cause: null,
        airFlow: attempt.run.startAir / start.duration,
      });
      const message = `It runs by itself after ${(start.duration * 1e3).toFixed(0)} ms of starting air at ${(start.airPressure / 1e3).toFixed(1)} kPa.`;
      return {
        verdict: { kind: 'self-sustaining', start, message },
        edge: null,
        starts,
        running,
        failedValve: null,
        cellUpdates,
      };
    }
    const failed =
      attempt === approach || attempt.end === 'not finite' ? attempt : stoppedOnFineGrid(approach, attempt);
    attempts.push(failed);
    starts.push(failedOutcome(failed));
  }
  return failedPerformance(attempts, starts, cellUpdates);
}

function tryStart(
  engine: Engine,
  constants: ModelConstants,
  start: StartAttempt,
  cells: number,
  settings: RunSettings,
): Attempt {
  const machine = makeMachine(engine, constants, cells);
  const run = new Run(machine, start, settings);
  return { start, machine, run, end: run.toEnd() };
}

/** The running engine of a coarse attempt on a finer grid, until it repeats itself or dies there. */
function goOn(coarse: Attempt, cells: number, settings: RunSettings): Attempt {
  const machine = refineMachine(coarse.machine, cells);
  const run = Run.goOn(coarse.run, machine, settings);
  return { start: coarse.start, machine, run, end: run.toEnd() };
}

/**
 * An engine that stops on the fine grid, out of a coarse cycle that repeated itself, would not have got there from a start. The
 * coarse run tells why, since it holds the cycles with starting air.
 */
function stoppedOnFineGrid(approach: Attempt, fine: Attempt): Attempt {
  return { ...approach, end: 'died', cyclesMore: fine.run.ledger.count - 1 };
}

/** Whether the engine still fired when its run ended, air and spark long gone. */
function survived({ run, end }: Attempt): boolean {
  return (end === 'limit cycle' || end === 'cycles spent') && run.cyclesWhenLeftAlone >= 0;
}

function failedOutcome({ start, run, machine, end }: Attempt): StartOutcome {
  const airFlow = run.startAir / start.duration;
  if (end === 'not finite') return { ...start, outcome: 'model failure', cause: null, airFlow };
  const kind = strongest(run, machine) > FIRED ? 'runs only with starting air' : 'dies';
  return { ...start, outcome: kind, cause: causeOf(run, machine), airFlow };
}

function failedPerformance(attempts: Attempt[], starts: StartOutcome[], cellUpdates: number): Performance {
  const usable = attempts.filter((a) => a.end !== 'not finite');
  if (usable.length === 0) {
    const message =
      'The gas-dynamic model lost the solution in every start; the geometry is outside what it can compute.';
    return {
      verdict: { kind: 'model failure', message },
      edge: null,
      starts,
      running: null,
      failedValve: null,
      cellUpdates,
    };
  }
  const best = usable.reduce((a, b) => (strongest(b.run, b.machine) > strongest(a.run, a.machine) ? b : a));
  const valve = failedValve(best.run, best.machine);
  const cause = causeOf(best.run, best.machine);
  const diedAtCycle =
    best.run.cyclesWhenLeftAlone < 0
      ? 0
      : Math.max(0, best.run.ledger.count - best.run.cyclesWhenLeftAlone) + (best.cyclesMore ?? 0);
  const kind = strongest(best.run, best.machine) > FIRED ? 'runs only with starting air' : 'dies';
  return {
    verdict: { kind, cause, diedAtCycle, message: deathMessage(cause, valve, diedAtCycle) },
    edge: null,
    starts,
    running: null,
    failedValve: valve,
    cellUpdates,
  };
}

/** Peak gauge pressure of the strongest cycle, share of ambient. */
function strongest(run: Run, machine: Machine): number {
  const ambient = machine.engine.site.pressure;
  let peak = 0;
  for (let n = 0; n < run.ledger.count; n++) peak = Math.max(peak, run.ledger.at(n, 'peakPressure') / ambient - 1);
  return peak;
}

/** The valve over the cycles with starting air, when the engine fired best. */
function failedValve(run: Run, machine: Machine): ValveMotion | null {
  const to = Math.max(
    0,
    Math.min(run.ledger.count - 1, run.cyclesWhenLeftAlone < 0 ? run.ledger.count - 1 : run.cyclesWhenLeftAlone),
  );
  return valveMotion(run, machine, 0, to, null);
}

function causeOf(run: Run, machine: Machine) {
  const l = run.ledger;
  const last = l.count - 1;
  const from = Math.max(0, Math.min(last, run.cyclesWhenLeftAlone));
  const fuel = last > from ? l.between(from, last, 'fuelIn') : 0;
  const air = last > from ? l.between(from, last, 'airIn') : 0;
  const heat = last > from ? l.between(from, last, 'heatReleased') : 0;
  return deathCause({
    hottest: run.hottest,
    strongest: strongest(run, machine),
    burning: fuel > 0 ? heat / (fuel * machine.fuel.lowerHeatingValue) : 0,
    equivalenceRatio:
      air > 0 ? (fuel * machine.fuel.stoichiometricAirFuelRatio) / air : machine.engine.feed.equivalenceRatio,
    valve: failedValve(run, machine),
  });
}

/** Runs one more cycle with a recorder and averages the last groups; null when the engine dies meanwhile. */
function measure({ run, machine, end }: Attempt, settings: RunSettings, withField: boolean): RunningPerformance | null {
  const l = run.ledger;
  const from = Math.max(0, l.count - 1 - settings.group * (end === 'limit cycle' ? 1 : 2));
  const meanPeriod = l.between(from, l.count - 1, 'time') / (l.count - 1 - from);
  machine.valve?.resetExtremes();
  const recorder = new Recorder(run, machine, meanPeriod);
  const before = l.count;
  while (l.count === before) {
    const state = run.step();
    if (state === 'died' || state === 'not finite') return null;
    recorder.note();
    if (l.full) break;
  }
  const to = l.count - 1;
  const span = l.between(from, to, 'time');
  const cycles = to - from;
  const { engine, fuel } = machine;
  const rate = (c: Parameters<typeof l.between>[2]) => l.between(from, to, c) / span;
  const exhaust = rate('exhaustImpulse');
  const intake = rate('intakeImpulse');
  const bareThrust = exhaust + intake;
  const fuelFlow = rate('fuelIn');
  const airFlow = rate('airIn');
  if (!(bareThrust > 0 && fuelFlow > 0 && airFlow > 0)) return null;
  const exitDiameter = engine.sections[engine.sections.length - 1].endDiameter;
  const density = jetDensityRatio(l.between(from, to, 'energyOut') / l.between(from, to, 'massOut'), engine);
  const augmented = engine.augmenter ? augmentation(engine.augmenter, exitDiameter, density) : null;
  const gain = augmented?.ratio ?? 1;
  // Only what leaves the exhaust passes the augmenter.
  const thrust = intake + exhaust * gain;
  const peaks = Array.from({ length: cycles }, (_, n) => l.at(from + 1 + n, 'peakPressure'));
  const meanPeak = peaks.reduce((a, b) => a + b, 0) / cycles;
  const spread = Math.sqrt(peaks.reduce((a, b) => a + (b - meanPeak) ** 2, 0) / cycles);
  const traces = recorder.traces();
  const ambient = engine.site.pressure;
  const delay = machine.valve ? openingDelay(traces, ambient, machine.valve.stopLift) : null;
  let lowest = Number.POSITIVE_INFINITY;
  let peakAir = 0;
  for (let n = from + 1; n <= to; n++) {
    lowest = Math.min(lowest, l.at(n, 'lowestPressure'));
    peakAir = Math.max(peakAir, l.at(n, 'peakAirFlow'));
  }
  const suctionTime = l.between(from, to, 'suctionTime');
  return {
    frequency: cycles / span,
    bareThrust,
    thrust,
    augmentation: thrust / bareThrust,
    augmenterNote: augmented?.note ?? null,
    airFlow,
    fuelFlow,
    tsfc: fuelFlow / thrust,
    combustionEfficiency: rate('heatReleased') / (fuelFlow * fuel.lowerHeatingValue),
    equivalenceRatio: (fuelFlow * fuel.stoichiometricAirFuelRatio) / airFlow,
    peakPressure: meanPeak,
    meanPressure: rate('pressureIntegral'),
    lowestPressure: lowest,
    cycleVariation: spread / Math.max(1e-9, meanPeak - ambient),
    specificThrust: thrust / airFlow,
    thrustSplit: { intake, exhaust },
    heatReleasePhase: heatReleasePhase(traces),
    peakAirFlow: peakAir,
    meanSuction: suctionTime > 0 ? l.between(from, to, 'suctionIntegral') / suctionTime : 0,
    valve: valveMotion(run, machine, from, to, delay),
    traces,
    profile: recorder.profile(),
    field: withField ? recorder.field() : null,
    audits: audit(run, from, to, bareThrust, run.disagreement(settings.group), settings, end),
  };
}

/** Mean heat capacity of exhaust gas between 25 °C and its temperature, J/(kg K), and its gas constant over that of air. */
const EXHAUST_HEAT_CAPACITY = 1250;
const EXHAUST_GAS_CONSTANT = 1.015;

/** Density of the exhaust jet over that of the outside air, from the mean total enthalpy (zero at 25 °C) of what leaves, J/kg. */
function jetDensityRatio(enthalpy: number, engine: Engine): number {
  const temperature = Math.max(engine.site.temperature, 298.15 + enthalpy / EXHAUST_HEAT_CAPACITY);
  return engine.site.temperature / (EXHAUST_GAS_CONSTANT * temperature);
}

function audit(
  run: Run,
  from: number,
  to: number,
  thrust: number,
  disagreement: number,
  settings: RunSettings,
  end: RunEnd,
): Audits {
  const l = run.ledger;
  const d = (c: Parameters<typeof l.between>[2]) => l.between(from, to, c);
  const mass = Math.abs(d('massIn') - d('massOut') - d('heldMass')) / d('massIn');
  const energy =
    Math.abs(d('energyIn') - d('energyOut') + d('heatReleased') - d('wallHeat') - d('heldEnergy')) /
    Math.abs(d('heatReleased'));
  // Like mass and energy, the axial momentum that the gas in the duct has gained or lost belongs to the balance.
  const walls = d('wallImpulse') + d('lipImpulse') - d('heldMomentum');
  const thrustError = Math.abs(walls / d('time') - thrust) / Math.abs(thrust);
  return {
    massError: mass,
    energyError: energy,
    thrustError,
    periodicityError: disagreement,
    limitCycleReached: end === 'limit cycle' && disagreement < 2 * settings.tolerance,
    closed: mass < 1e-3 && energy < 1e-3 && thrustError < 1e-2,
  };
}
