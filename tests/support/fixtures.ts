/** Hand-made results with figures of a plausible 140 N engine, for tests that must not wait for the model. */
import type { Assessment, Check } from '../../shared/checks/check.ts';
import type { Performance, RunningPerformance, ValveMotion } from '../../shared/engine/performance.ts';
import type { EvaluationResult, EvaluationSummary } from '../../src/evaluation/evaluation.ts';

export function valveMotion(over: Partial<ValveMotion> = {}): ValveMotion {
  return {
    peakLift: 0.006,
    stopLift: 0.006,
    openFraction: 0.6,
    openingDelay: 0.0006,
    suctionWindow: 0.004,
    seatImpactSpeed: 6,
    stopImpactSpeed: 7,
    forceOffered: 6,
    forceNeeded: 3,
    followRatio: 2,
    peakSeatPressure: 1.2e5,
    naturalFrequency: 110,
    movingMass: 0.0008,
    cures: null,
    ...over,
  };
}

/** One large poppet: 3.1 N of the 40 N that it needs. */
export function heavyValve(): ValveMotion {
  return valveMotion({
    peakLift: 0.001,
    stopLift: 0.025,
    openingDelay: null,
    suctionWindow: 0.004,
    forceOffered: 3.1,
    forceNeeded: 40,
    followRatio: 3.1 / 40,
    movingMass: 0.24,
    naturalFrequency: 46,
    cures: { mass: 0.019, lift: 0.002, stiffness: null, valves: 9 },
  });
}

export function running(over: Partial<RunningPerformance> = {}): RunningPerformance {
  const line = [0, 1, 2, 3];
  return {
    frequency: 95,
    bareThrust: 142,
    thrust: 142,
    augmentation: 1,
    augmenterNote: null,
    airFlow: 0.18,
    fuelFlow: 0.0106,
    tsfc: 7.5e-5,
    combustionEfficiency: 0.9,
    equivalenceRatio: 0.95,
    peakPressure: 2.1e5,
    meanPressure: 1.1e5,
    lowestPressure: 0.75e5,
    cycleVariation: 0.02,
    specificThrust: 790,
    thrustSplit: { intake: 0, exhaust: 142 },
    heatReleasePhase: 20,
    peakAirFlow: 0.7,
    meanSuction: 9000,
    valve: valveMotion(),
    traces: {
      time: line.map((i) => i * 0.0026),
      headPressure: [1e5, 2.1e5, 1.2e5, 0.8e5],
      exitPressure: [1e5, 1.2e5, 1e5, 0.95e5],
      valveLift: [0, 0, 0, 0.006],
      intakeFlow: [0, 0, 0, 0.7],
      exitFlow: [0.1, 0.9, 0.5, -0.1],
      heatRelease: [0, 9e5, 2e5, 0],
      thrust: [0, 500, 200, -100],
    },
    profile: {
      position: line.map((i) => 0.1 + 0.3 * i),
      diameter: [0.16, 0.16, 0.11, 0.11],
      gasTemperature: [1100, 1400, 1200, 1000],
      effectiveGasTemperature: [1150, 1450, 1250, 1050],
      filmCoefficient: [150, 160, 200, 180],
      wallTemperature: [700, 900, 950, 850],
      peakPressure: [2.1e5, 2e5, 1.5e5, 1.2e5],
      lowestPressure: [0.75e5, 0.76e5, 0.8e5, 0.9e5],
    },
    field: null,
    audits: {
      massError: 1e-4,
      energyError: 4e-4,
      thrustError: 4e-3,
      periodicityError: 1e-3,
      limitCycleReached: true,
      closed: true,
    },
    ...over,
  };
}

export function runs(over: Partial<RunningPerformance> = {}): Performance {
  const start = { airPressure: 4000, duration: 0.3 };
  return {
    verdict: { kind: 'self-sustaining', start, message: 'It runs by itself at 95 Hz.' },
    starts: [{ ...start, outcome: 'self-sustaining', cause: null, airFlow: 0.05 }],
    running: running(over),
    failedValve: null,
    edge: null,
    cellUpdates: 9e5,
  };
}

export function dies(failedValve: ValveMotion | null = heavyValve()): Performance {
  return {
    verdict: {
      kind: 'dies',
      cause: 'intake does not follow',
      diedAtCycle: 2,
      message: 'It dies after 2 cycles: the intake does not follow',
    },
    starts: [{ airPressure: 4000, duration: 0.3, outcome: 'dies', cause: 'intake does not follow', airFlow: 0.05 }],
    running: null,
    failedValve,
    edge: null,
    cellUpdates: 2e5,
  };
}

export function check(over: Partial<Check> = {}): Check {
  return {
    id: 'thrust',
    title: 'Thrust wanted',
    verdict: 'pass',
    value: 142,
    limit: 133,
    unit: 'N',
    margin: 0.07,
    sentence: 'It gives 142 N; 133 N is wanted.',
    source: 'the brief',
    binding: true,
    ...over,
  };
}

export function assessment(over: Partial<Assessment> = {}): Assessment {
  return {
    checks: [check()],
    valveLife: { low: 700, median: 2400, high: 8200 },
    valveLifeCycles: { low: 66500, median: 228000, high: 779000 },
    lifeLimiter: 'bending at the root',
    overallLength: 1.3,
    overallDiameter: 0.2,
    mass: 6.2,
    cost: 130,
    parts: [{ part: 'chamber shell', mass: 2.1, area: 0.17, material: '304', cost: 20 }],
    noise: { level: 118, uncertainty: 5, distance: 8, exposureMinutes: 0.4 },
    needs: [{ id: 'fuel-flow', label: 'Fuel flow', value: 0.0106, unit: 'kg/s', note: '' }],
    ...over,
  };
}

export function result(performance: Performance = runs(), assessed: Assessment = assessment()): EvaluationResult {
  return { performance, assessment: assessed };
}

export function summary(over: Partial<EvaluationSummary> = {}): EvaluationSummary {
  return {
    status: 'ok',
    reason: '',
    tsfc: 7.5e-5,
    valveLife: 2400,
    thrust: 142,
    frequency: 95,
    fuelFlow: 0.0106,
    mass: 6.2,
    followRatio: 2,
    forceOffered: 6,
    forceNeeded: 3,
    violations: [],
    flags: [],
    ...over,
  };
}
