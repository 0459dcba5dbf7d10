/**
 * One start attempt: starting air and spark, then neither, until the engine dies or repeats itself. As a builder does, the start
 * is ended when the engine has fired for some cycles; one that does not fire has air and spark for the time the attempt allows.
 *
 * A cycle ends when the chamber pressure rises through ambient after having been below it. The run is over when pairs or groups
 * of cycles agree (limit cycle), when the engine has died, or when the cycles allowed are spent.
 */
import { applyCellSources } from '../combustion/cell-sources.ts';
import { addJets, carryJet, drawBack, type InflowTotals } from '../combustion/inflow.ts';
import { recoverPrimitives } from '../duct/primitives.ts';
import { advanceFlow, makeStepBook, type StepBook, stepWithMixing } from '../duct/step.ts';
import { jetSpeed, orificeFlow } from '../intake/orifice.ts';
import { CycleWatch } from './cycle-watch.ts';
import { hottestGas, noteHeld } from './held.ts';
import { L, Ledger } from './ledger.ts';
import type { Machine } from './machine.ts';
import type { StartAttempt } from './performance.ts';
import { drift } from './periodicity.ts';
import { bookThrust } from './thrust-book.ts';
import { NEVER_LIT } from './verdict.ts';
import { warmWalls } from './wall-temperature.ts';

export interface RunSettings {
  /** Cycles in each of the two groups that are compared; those of half as many are, too (see periodicity.ts). Divisible by four. */
  group: number;
  /** Relative agreement that counts as a limit cycle. */
  tolerance: number;
  /** Cycles after the start before groups are compared, and the most that are run. */
  minCycles: number;
  maxCycles: number;
}

export type RunEnd = 'limit cycle' | 'cycles spent' | 'died' | 'not finite';

/** What an observer is told after each step, for traces. */
export interface StepReport {
  time: number;
  dt: number;
  intakeFlow: number;
  exitFlow: number;
  heatRelease: number;
  thrust: number;
  lift: number;
  chamberPressure: number;
  exitPressure: number;
}

/** Peak gauge pressure, share of ambient, below which a cycle counts as weak. */
const WEAK = 0.05;
const WEAK_CYCLES = 4;
/** Weak cycles in a row that tell death when each is weaker than the one before: of 1000 random engines, three come back. */
const FADING_CYCLES = 2;
/** Gas nowhere this much hotter than outside, K, when the spark goes off, has nothing to light a charge with. */
const COLD = 150;
/**
 * Acoustic periods for which air and spark go on after gas has been lit. Against the whole time, five of 350 random engines with
 * valves that run are won and seven lost, of 270 without 26 and five: what another grid changes, too.
 */
const LIT_PERIODS = 5;
/** Acoustic periods without a cycle after which the engine has stopped. */
const SILENCE = 3.5;

/** A machine while it runs. */
export class Run {
  readonly ledger: Ledger;
  readonly report: StepReport = {
    time: 0,
    dt: 0,
    intakeFlow: 0,
    exitFlow: 0,
    heatRelease: 0,
    thrust: 0,
    lift: 0,
    chamberPressure: 0,
    exitPressure: 0,
  };
  time = 0;
  steps = 0;
  /** Copies in the ledger when starting air and spark went off. */
  cyclesWhenLeftAlone = -1;
  hottest = 0;
  /** While its figures are being taken, the valve's extremes are kept. */
  measured = false;
  /** kg of air blown in during the start. */
  startAir = 0;
  /** How long air and spark are given, s. */
  startLength: number;
  private readonly book: StepBook = makeStepBook();
  private readonly inflow: InflowTotals = { mass: 0, air: 0, fuel: 0, energy: 0, momentum: 0 };
  private watch: CycleWatch;
  private weak = 0;
  /** Peak gauge pressure of the cycle before, Pa. */
  private peakBefore = 0;
  /** Whether gas has been lit. */
  private lit = false;
  /** When a run that goes on from a coarser grid began, s. */
  private began = 0;
  /** Slow means that injection pumps follow: kg/s of air, and share of time that suction lasts. */
  private meanAir = 0;
  private meanSuction = 0.4;

  private readonly machine: Machine;
  private readonly start: StartAttempt;
  private readonly settings: RunSettings;

  constructor(machine: Machine, start: StartAttempt, settings: RunSettings) {
    this.machine = machine;
    this.start = start;
    this.settings = settings;
    this.startLength = start.duration;
    this.watch = new CycleWatch(machine.period);
    this.ledger = new Ledger(settings.maxCycles + 80);
    const { flow, engine } = machine;
    const volume = flow.grid.volume.reduce((a, b) => a + b, 0);
    // Fill fraction about 0.1 a cycle (AIAA 2005-0228) until the engine says better.
    this.meanAir = (0.1 * volume * engine.site.pressure) / (287 * engine.site.temperature * machine.period);
    this.ledger.now[L.lowestPressure] = this.ledger.now[L.peakPressure] = engine.site.pressure;
    this.setStartingAir(start.airPressure);
  }

  private setStartingAir(gauge: number): void {
    const { left, engine } = this.machine;
    if (left.kind === 'open') left.ambient = { ...left.ambient, pressure: engine.site.pressure + gauge };
  }

  /**
   * Goes on with what a run on a coarser grid has reached: `machine` holds its gas (see refine.ts), the books begin anew with
   * the cycle that `coarse` has just ended. Its own length counts from here.
   */
  static goOn(coarse: Run, machine: Machine, settings: RunSettings): Run {
    const run = new Run(machine, coarse.start, settings);
    run.time = run.began = coarse.time;
    run.watch = CycleWatch.goOn(coarse.watch, coarse.time);
    run.ledger.now[L.time] = coarse.time;
    run.cyclesWhenLeftAlone = 0;
    run.startAir = coarse.startAir;
    run.startLength = coarse.startLength;
    run.meanAir = coarse.meanAir;
    run.meanSuction = coarse.meanSuction;
    run.setStartingAir(0);
    run.hottest = Math.max(coarse.hottest, noteHeld(machine.flow, run.ledger.now));
    run.ledger.close(machine.flow.pressure[machine.monitor]);
    return run;
  }

  get starting(): boolean {
    return this.time < this.startLength;
  }

  /** Runs to an end. */
  toEnd(): RunEnd {
    for (;;) {
      const state = this.step();
      if (state) return state;
    }
  }

  /** One step; null while the run goes on. */
  step(): RunEnd | null {
    const m = this.machine;
    const { flow, engine, valve, constants } = m;
    const now = this.ledger.now;
    recoverPrimitives(flow);
    if (!(flow.fastest < 6000)) return 'not finite';
    const dt = Math.min(stepWithMixing(flow), m.period / 40);
    const ambient = engine.site.pressure;
    const chamber = flow.pressure[m.monitor];
    const starting = this.starting;
    if (!starting && this.cyclesWhenLeftAlone < 0) {
      this.cyclesWhenLeftAlone = this.ledger.count;
      this.watch.last = this.time;
      this.weak = 0;
      this.setStartingAir(0);
      valve?.resetExtremes();
      if (hottestGas(flow) < engine.site.temperature + COLD) return 'died';
    }
    // During a start the blower's delivery rises to its pressure only as far as the intake lets it; taken as constant.
    const outside = ambient + (starting ? this.start.airPressure : 0);

    // What the valve lets through, from the state before the flow step.
    let jet = 0;
    let massRate = 0;
    if (valve) {
      const head = chamber;
      valve.advance(dt, outside - head);
      const area = valve.effectiveArea();
      if (outside >= head) {
        massRate = orificeFlow(area, outside, engine.site.temperature, head, m.inflowGasConstant, m.inflowGamma);
        jet = jetSpeed(outside, engine.site.temperature, head, m.inflowGasConstant, m.inflowGamma);
        if (valve.lift() <= 0.01 * valve.stopLift) jet = 0;
      } else {
        const gamma = 1 + flow.pressure[0] / (flow.density[0] * flow.temperature[0]) / flow.heatCapacity[0];
        massRate = -orificeFlow(
          area,
          head,
          flow.temperature[0],
          outside,
          head / (flow.density[0] * flow.temperature[0]),
          gamma,
        );
      }
    } else {
      // Where the intake pipe opens into the chamber, its inflow is the jet.
      const face = m.jets.first;
      jet = Math.max(0, flow.massFlux[face] / (flow.grid.faceArea[face] * flow.density[face - 1]));
    }

    const headPressureBefore = chamber;
    const b = this.book;
    b.dt = dt;
    advanceFlow(flow, m.left, m.right, b);
    let airIn = 0;
    let fuelIn = 0;
    let intakeMass: number;
    let jetMomentum = 0;
    if (valve) {
      const t = this.inflow;
      if (massRate >= 0)
        addJets(flow, m.jets, massRate * dt, m.inflowEnthalpy, m.premixed, jet, constants.jetTurbulence, t);
      else drawBack(flow, m.jets, -massRate * dt, t);
      airIn += t.air;
      fuelIn += t.fuel;
      intakeMass = t.mass;
      jetMomentum = t.momentum;
      if (t.mass >= 0) {
        now[L.massIn] += t.mass;
        now[L.energyIn] += t.energy;
      } else {
        now[L.massOut] -= t.mass;
        now[L.energyOut] -= t.energy;
      }
    } else {
      carryJet(flow, m.jets, dt);
      intakeMass = b.leftMass;
      airIn += b.leftMass - b.leftFuel - b.leftProduct;
      if (b.leftMass >= 0) {
        now[L.massIn] += b.leftMass;
        now[L.energyIn] += b.leftEnergy;
      } else {
        now[L.massOut] -= b.leftMass;
        now[L.energyOut] -= b.leftEnergy;
      }
    }
    if (b.rightMass >= 0) {
      now[L.massOut] += b.rightMass;
      now[L.energyOut] += b.rightEnergy;
    } else {
      now[L.massIn] -= b.rightMass;
      now[L.energyIn] -= b.rightEnergy;
    }

    // Injected fuel follows the air taken in, slowly, as a jet set for this φ would.
    const suction = headPressureBefore < ambient;
    const memory = dt / (4 * m.period);
    this.meanAir += memory * (airIn / dt - this.meanAir);
    this.meanSuction += memory * ((suction ? 1 : 0) - this.meanSuction);
    if (engine.feed.mode !== 'premixed') {
      // A start is fed by hand: the timed window needs an engine that already breathes.
      const timed = engine.feed.mode === 'timed-injection' && !starting;
      const wanted = (engine.feed.equivalenceRatio * Math.max(0, this.meanAir)) / m.fuel.stoichiometricAirFuelRatio;
      const rate = timed ? (suction ? wanted / Math.max(0.1, this.meanSuction) : 0) : wanted;
      if (rate > 0) {
        const t = this.inflow;
        addJets(flow, m.jets, rate * dt, m.fuelEnthalpy, 1, 0, 0, t);
        fuelIn += t.fuel;
        now[L.massIn] += t.mass;
        now[L.energyIn] += t.energy;
      }
    }

    const s = m.sources;
    applyCellSources(flow, s, dt, jet, starting);

    // Books.
    const thrustStep = bookThrust(m, this.book, now, dt, jetMomentum);
    this.time += dt;
    this.steps++;
    now[L.time] = this.time;
    now[L.airIn] += airIn;
    now[L.fuelIn] += fuelIn;
    now[L.heatReleased] += s.heatReleased;
    now[L.wallHeat] += s.wallHeat;
    now[L.pressureIntegral] += chamber * dt;
    if (starting) this.noteStart(airIn);
    const rate = airIn / dt;
    if (rate > now[L.peakAirFlow]) now[L.peakAirFlow] = rate;
    if (chamber > now[L.peakPressure]) now[L.peakPressure] = chamber;
    if (chamber < now[L.lowestPressure]) now[L.lowestPressure] = chamber;
    if (suction) {
      now[L.suctionTime] += dt;
      now[L.suctionIntegral] += (ambient - chamber) * dt;
      if (valve) {
        now[L.openIntegral] += valve.openArea() * dt;
        now[L.offeredIntegral] += (outside - chamber) * dt;
      }
    }
    const r = this.report;
    r.time = this.time;
    r.dt = dt;
    r.intakeFlow = intakeMass / dt;
    r.exitFlow = b.rightMass / dt;
    r.heatRelease = s.heatReleased / dt;
    r.thrust = thrustStep / dt;
    r.lift = valve ? valve.lift() : 0;
    r.chamberPressure = chamber;
    r.exitPressure = flow.pressure[flow.grid.cells - 1];
    return this.judge(chamber, ambient);
  }

  /** Books the air of a step of the start, and ends the start in time once gas burns. */
  private noteStart(airIn: number): void {
    const { flow, sources, period } = this.machine;
    if (airIn > 0) this.startAir += airIn;
    if (this.lit || sources.heatReleased <= 0 || hottestGas(flow) < NEVER_LIT) return;
    this.lit = true;
    this.startLength = Math.min(this.startLength, this.time + LIT_PERIODS * period);
  }

  private judge(chamber: number, ambient: number): RunEnd | null {
    const m = this.machine;
    if (this.watch.ends(chamber, ambient, this.time, this.report.dt)) {
      const end = this.closeCycle(ambient);
      if (end) return end;
    }
    if (!this.starting && this.time - this.watch.last > SILENCE * m.period) return 'died';
    if (this.time > Math.max(this.began, this.startLength) + (this.settings.maxCycles + 4) * 2 * m.period)
      return 'cycles spent';
    return null;
  }

  private closeCycle(ambient: number): RunEnd | null {
    const m = this.machine;
    const { flow } = m;
    const peak = this.ledger.now[L.peakPressure] - ambient;
    this.hottest = Math.max(this.hottest, noteHeld(flow, this.ledger.now));
    this.ledger.close(flow.pressure[m.monitor]);
    if (this.ledger.full) return 'cycles spent';
    if (this.starting) return null;
    const last = this.ledger.count - 1;
    warmWalls(m, last > 0 ? this.ledger.between(last - 1, last, 'time') : 0);
    this.weak = peak < WEAK * ambient ? this.weak + 1 : 0;
    const fading = peak < this.peakBefore;
    this.peakBefore = peak;
    if (this.weak >= (fading ? FADING_CYCLES : WEAK_CYCLES)) return 'died';
    const alone = this.ledger.count - this.cyclesWhenLeftAlone;
    const { group, tolerance, minCycles, maxCycles } = this.settings;
    // Engines that alternate between two kinds of cycle are judged after both; the valve's extremes are those of the last two or three.
    if (alone % 2 === 0 && !this.measured) m.valve?.resetExtremes();
    else if (alone >= minCycles && drift(this.ledger, this.cyclesWhenLeftAlone, group, ambient) < tolerance)
      return 'limit cycle';
    return alone >= maxCycles ? 'cycles spent' : null;
  }
}
