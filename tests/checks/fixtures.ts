/** Hand-made engines, performances and briefs for the checks. Invented figures of plausible size; not a simulation. */
import type { CheckInput } from '../../shared/checks/check.ts';
import type { Brief } from '../../shared/engine/brief.ts';
import type { Engine, PoppetIntake, ReedIntake } from '../../shared/engine/engine.ts';
import type { Performance, RunningPerformance, ValveMotion } from '../../shared/engine/performance.ts';

export const REED: ReedIntake = {
  kind: 'reed',
  petals: 12,
  length: 0.04,
  width: 0.02,
  thickness: 0.25e-3,
  material: 'AISI-1095',
  stopLift: 0.006,
  portArea: 3.2e-4,
};

export const POPPET: PoppetIntake = {
  kind: 'poppet',
  valves: 7,
  headDiameter: 0.03,
  portDiameter: 0.027,
  lift: 0.005,
  mass: 0.02,
  stemDiameter: 0.005,
  springMass: 0.003,
  springRate: 2500,
  preload: 2,
  material: 'valve-steel-21-4N',
  stemJoint: 'one-piece',
  axis: 'horizontal',
};

export function reedEngine(): Engine {
  return {
    name: 'Invented bench engine',
    sections: [
      { role: 'chamber', length: 0.3, startDiameter: 0.16, endDiameter: 0.16 },
      { role: 'chamber-cone', length: 0.2, startDiameter: 0.16, endDiameter: 0.1 },
      { role: 'tailpipe', length: 0.8, startDiameter: 0.1, endDiameter: 0.1 },
    ],
    intake: { ...REED },
    feed: { fuel: 'propane', mode: 'premixed', equivalenceRatio: 1 },
    shell: { material: '304', thickness: 1.2e-3 },
    augmenter: null,
    site: { pressure: 101325, temperature: 288.15 },
  };
}

export function poppetEngine(): Engine {
  return { ...reedEngine(), intake: { ...POPPET } };
}

export function bentEngine(): Engine {
  return {
    ...reedEngine(),
    sections: [
      { role: 'intake', length: 0.3, startDiameter: 0.07, endDiameter: 0.07 },
      { role: 'intake-cone', length: 0.12, startDiameter: 0.07, endDiameter: 0.16 },
      { role: 'chamber', length: 0.3, startDiameter: 0.16, endDiameter: 0.16 },
      { role: 'chamber-cone', length: 0.2, startDiameter: 0.16, endDiameter: 0.1 },
      {
        role: 'bend',
        length: Math.PI * 0.2,
        startDiameter: 0.1,
        endDiameter: 0.1,
        bend: { angle: Math.PI, radius: 0.2 },
      },
      { role: 'tailpipe', length: 0.9, startDiameter: 0.1, endDiameter: 0.1 },
    ],
    intake: { kind: 'valveless', lip: 'flared', mouth: 'aft' },
    feed: { fuel: 'propane', mode: 'steady-injection', equivalenceRatio: 0.95 },
  };
}

export function briefOf(): Brief {
  return {
    wanted: { thrust: 100, endurance: 600, maxLength: 2, maxDiameter: 0.6, maxMass: 25, maxCost: null, maxTsfc: null },
    supply: {
      kind: 'cylinder-liquid',
      fuel: 'propane',
      capacity: 45,
      fill: 0.8,
      cylinders: 1,
      regulatorPressure: 2.5e5,
      vaporiserDuty: 10e3,
    },
    startingAir: { blower: { flow: 0.2, pressure: 6e3 }, tank: { volume: 0.3, pressure: 8e5, delivery: 5e-3 } },
    sheets: [{ material: '304', thickness: 1.2e-3, width: 1, length: 2, sheets: 2, price: 60 }],
    strips: [{ material: 'AISI-1095', thickness: 0.25e-3, price: 15 }],
    tools: { smallestRoll: 0.05, rollWidth: 1, thickestCut: 1.6e-3, welding: ['TIG', 'spot'] },
    limits: {
      cautionMargin: 0.1,
      minSustainChance: 0.8,
      maxShellUtilisation: 0.5,
      maxImpactSpeed: 10,
      maxExposureMinutes: null,
      operatorDistance: 8,
    },
    currency: 'EUR',
    prices: { perHourLabour: null, hardware: {} },
  };
}

export function valveMotion(): ValveMotion {
  return {
    peakLift: 0.006,
    stopLift: 0.006,
    openFraction: 0.7,
    openingDelay: 1e-3,
    suctionWindow: 5e-3,
    seatImpactSpeed: 4,
    stopImpactSpeed: 4,
    forceOffered: 4,
    forceNeeded: 2,
    followRatio: 2,
    peakSeatPressure: 0.6e5,
    naturalFrequency: 130,
    movingMass: 0.4e-3,
    cures: null,
  };
}

/** A limit cycle of plausible size for any engine: 90 Hz, 150 N, walls between 400 and 600 °C. */
export function runningOf(engine: Engine): RunningPerformance {
  const steps = 64;
  const frequency = 90;
  const phase = Array.from({ length: steps }, (_, i) => (2 * Math.PI * i) / steps);
  const lift =
    engine.intake.kind === 'valveless'
      ? 0
      : engine.intake.kind === 'reed'
        ? engine.intake.stopLift
        : engine.intake.lift;
  const total = engine.sections.reduce((sum, s) => sum + s.length, 0);
  const cells = 40;
  const position = Array.from({ length: cells }, (_, i) => ((i + 0.5) * total) / cells);
  const site = engine.site.pressure;
  return {
    frequency,
    bareThrust: 150,
    thrust: 150,
    augmentation: 1,
    augmenterNote: null,
    airFlow: 0.11,
    fuelFlow: 0.007,
    tsfc: 0.007 / 150,
    combustionEfficiency: 0.9,
    equivalenceRatio: 1,
    peakPressure: site + 0.9e5,
    meanPressure: site + 0.08e5,
    lowestPressure: site - 0.3e5,
    cycleVariation: 0.03,
    specificThrust: 1360,
    thrustSplit: { intake: 0, exhaust: 150 },
    heatReleasePhase: 20,
    peakAirFlow: 0.35,
    meanSuction: 8e3,
    valve: engine.intake.kind === 'valveless' ? null : { ...valveMotion(), peakLift: lift, stopLift: lift },
    traces: {
      time: phase.map((p) => p / (2 * Math.PI * frequency)),
      headPressure: phase.map((p) => site + 0.08e5 + 0.5e5 * Math.cos(p)),
      exitPressure: phase.map(() => site),
      valveLift: phase.map((p) => lift * Math.max(0, -Math.cos(p))),
      intakeFlow: phase.map((p) => 0.35 * Math.max(0, -Math.cos(p))),
      exitFlow: phase.map((p) => 0.12 + 0.6 * Math.sin(p) + 0.2 * Math.sin(2 * p)),
      heatRelease: phase.map((p) => 3e5 * Math.max(0, Math.cos(p))),
      thrust: phase.map((p) => 150 + 400 * Math.sin(p)),
    },
    profile: {
      position,
      diameter: position.map((x) => diameterAt(engine, x)),
      gasTemperature: position.map(() => 1100),
      effectiveGasTemperature: position.map(() => 1200),
      filmCoefficient: position.map(() => 90),
      wallTemperature: position.map((_, i) => 680 + 200 * Math.sin((Math.PI * i) / cells)),
      peakPressure: position.map((_, i) => site + 0.9e5 * (1 - i / cells)),
      lowestPressure: position.map((_, i) => site - 0.3e5 * (1 - i / cells)),
    },
    field: null,
    audits: {
      massError: 2e-4,
      energyError: 3e-4,
      thrustError: 2e-3,
      periodicityError: 1e-3,
      limitCycleReached: true,
      closed: true,
    },
  };
}

function diameterAt(engine: Engine, x: number): number {
  let start = 0;
  for (const s of engine.sections) {
    if (x <= start + s.length) return s.startDiameter + ((s.endDiameter - s.startDiameter) * (x - start)) / s.length;
    start += s.length;
  }
  return engine.sections.at(-1)!.endDiameter;
}

export function performanceOf(engine: Engine): Performance {
  const start = { airPressure: 3e3, duration: 2 };
  return {
    verdict: { kind: 'self-sustaining', start, message: 'It runs by itself after 2 s of starting air.' },
    starts: [
      { airPressure: 1e3, duration: 1, outcome: 'dies', cause: 'no ignition', airFlow: 0.05 },
      { ...start, outcome: 'self-sustaining', cause: null, airFlow: 0.12 },
    ],
    running: runningOf(engine),
    failedValve: null,
    edge: null,
    cellUpdates: 1e6,
  };
}

export function deadPerformance(): Performance {
  const message = 'It died at cycle 12: the valve opened too late.';
  return {
    verdict: { kind: 'dies', cause: 'intake does not follow', diedAtCycle: 12, message },
    starts: [{ airPressure: 3e3, duration: 2, outcome: 'dies', cause: 'intake does not follow', airFlow: 0.12 }],
    running: null,
    failedValve: {
      ...valveMotion(),
      forceOffered: 3,
      forceNeeded: 12,
      followRatio: 0.25,
      cures: { mass: 0.005, lift: 0.0015, stiffness: null, valves: 9 },
    },
    edge: null,
    cellUpdates: 1e5,
  };
}

/** A whole input, changed in place by `change` before it is returned. */
export function inputOf(
  engine: Engine,
  change: (input: CheckInput, running: RunningPerformance) => void = () => {},
): CheckInput {
  const input: CheckInput = { engine, performance: performanceOf(engine), brief: briefOf() };
  change(input, input.performance.running!);
  return input;
}
