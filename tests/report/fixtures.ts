/**
 * Invented results with sensible sizes, made by hand and not by the model: they test how the report shows figures,
 * and say nothing about any engine.
 */
import type { Assessment, Band, Check } from '../../shared/checks/check.ts';
import type { Engine, Intake } from '../../shared/engine/engine.ts';
import type { Performance, RunningPerformance, ValveMotion } from '../../shared/engine/performance.ts';
import type { Study } from '../../src/config/study.ts';
import type { ArchitectureResult, Candidate, RunFacts, StudyResults, TradePoint } from '../../src/ranking/results.ts';
import type { Architecture } from '../../src/space/architecture.ts';

export const FACTS: RunFacts = {
  startedAt: '2026-03-14T20:15:00Z',
  wallTimeSeconds: 9134,
  workers: 2,
  node: 'v20.19.0',
  platform: 'linux x64',
};

export function architecture(
  intake: Architecture['intake'],
  augmenter: boolean,
  mode: Architecture['feed']['mode'] = 'premixed',
): Architecture {
  const words = {
    reed: 'reed valves',
    poppet: 'poppet valves',
    'valveless-straight': 'valveless, straight',
    'valveless-u': 'valveless, U-bent',
  }[intake];
  return {
    id: `${intake}_${augmenter ? 'augmented' : 'plain'}_${mode}-propane`,
    label: `${words}, ${augmenter ? 'augmenter' : 'no augmenter'}, ${mode.replace('-', ' ')} propane`,
    intake,
    augmenter,
    feed: { fuel: 'propane', mode },
  };
}

export function band(median: number, spread: number): Band {
  return { low: median / (1 + spread), median, high: median * (1 + spread) };
}

function intakeOf(a: Architecture): Intake {
  if (a.intake === 'reed')
    return {
      kind: 'reed',
      petals: 14,
      length: 0.034,
      width: 0.019,
      thickness: 2.5e-4,
      material: 'AISI-1095',
      stopLift: 0.0062,
      portArea: 3.1e-4,
    };
  if (a.intake === 'poppet')
    return {
      kind: 'poppet',
      valves: 1,
      headDiameter: 0.09,
      portDiameter: 0.082,
      lift: 0.02,
      mass: 0.12,
      stemDiameter: 0.008,
      springMass: 0.02,
      springRate: 2400,
      preload: 8,
      material: 'valve-steel-21-4N',
      stemJoint: 'one-piece',
      axis: 'horizontal',
    };
  return { kind: 'valveless', lip: 'flared', mouth: 'aft' };
}

export function engine(a: Architecture, scale = 1): Engine {
  const d = 0.2 * scale;
  return {
    name: a.label,
    sections: [
      ...(a.intake === 'valveless-u'
        ? [{ role: 'intake' as const, length: 0.9 * d, startDiameter: 0.45 * d, endDiameter: 0.45 * d }]
        : []),
      { role: 'chamber', length: 1.6 * d, startDiameter: d, endDiameter: d },
      { role: 'chamber-cone', length: 1.1 * d, startDiameter: d, endDiameter: 0.55 * d },
      { role: 'tailpipe', length: 4.2 * d, startDiameter: 0.55 * d, endDiameter: 0.55 * d },
      ...(a.intake === 'valveless-u'
        ? [
            {
              role: 'bend' as const,
              length: Math.PI * 0.8 * d,
              startDiameter: 0.55 * d,
              endDiameter: 0.55 * d,
              bend: { angle: Math.PI, radius: 0.8 * d },
            },
          ]
        : []),
      { role: 'exit-flare', length: 0.3 * d, startDiameter: 0.55 * d, endDiameter: 0.68 * d },
    ],
    intake: intakeOf(a),
    feed: { fuel: a.feed.fuel, mode: a.feed.mode, equivalenceRatio: 0.95 },
    shell: { material: '304', thickness: 9.1e-4 },
    augmenter: a.augmenter ? { diameter: 0.31 * scale, length: 1.9 * scale, gap: 0.13 * scale, taper: 1.12 } : null,
    site: { pressure: 98.2e3, temperature: 288.15 },
  };
}

const VALVE: ValveMotion = {
  peakLift: 0.0061,
  stopLift: 0.0062,
  openFraction: 0.71,
  openingDelay: 6.3e-4,
  suctionWindow: 3.4e-3,
  seatImpactSpeed: 5.8,
  stopImpactSpeed: 7.1,
  forceOffered: 5.2,
  forceNeeded: 2.6,
  followRatio: 2.0,
  peakSeatPressure: 1.21e5,
  naturalFrequency: 174,
  movingMass: 3.1e-4,
  cures: null,
};

function wave(n: number, f: (phase: number) => number): number[] {
  return Array.from({ length: n }, (_, i) => f((2 * Math.PI * i) / (n - 1)));
}

export function running(a: Architecture, thrust: number, tsfc: number, frequency: number): RunningPerformance {
  const n = 200;
  const ambient = 98.2e3;
  const period = 1 / frequency;
  const valved = a.intake === 'reed' || a.intake === 'poppet';
  const fuelFlow = thrust * tsfc;
  const airFlow = (fuelFlow * 15.68) / 0.95;
  const cells = 80;
  const length = 1.44;
  const position = Array.from({ length: cells }, (_, i) => ((i + 0.5) / cells) * length);
  return {
    frequency,
    bareThrust: a.augmenter ? thrust / 1.62 : thrust,
    thrust,
    augmentation: a.augmenter ? 1.62 : 1,
    augmenterNote: null,
    airFlow,
    fuelFlow,
    tsfc,
    combustionEfficiency: 0.91,
    equivalenceRatio: 0.95,
    peakPressure: 2.17e5,
    meanPressure: 1.06e5,
    lowestPressure: 0.71e5,
    cycleVariation: 0.012,
    specificThrust: thrust / airFlow,
    thrustSplit: valved ? { intake: 0, exhaust: thrust } : { intake: 0.38 * thrust, exhaust: 0.62 * thrust },
    heatReleasePhase: -14,
    peakAirFlow: airFlow * 4.1,
    meanSuction: 1.35e4,
    valve: valved ? VALVE : null,
    traces: {
      time: wave(n, (p) => (p / (2 * Math.PI)) * period),
      headPressure: wave(
        n,
        (p) =>
          ambient +
          4.6e4 * Math.cos(p) +
          3.5e4 * Math.exp(-((p / 0.7) ** 2)) +
          3e4 * Math.exp(-(((p - 2 * Math.PI) / 0.7) ** 2)),
      ),
      exitPressure: wave(n, (p) => ambient + 6e3 * Math.sin(p) + 2.2e3 * Math.sin(3 * p)),
      valveLift: wave(n, (p) => (valved && p > 2 && p < 4.4 ? 0.0061 * Math.sin(((p - 2) / 2.4) * Math.PI) ** 0.5 : 0)),
      intakeFlow: wave(n, (p) =>
        p > 1.9 && p < 4.5 ? airFlow * 4.1 * Math.sin(((p - 1.9) / 2.6) * Math.PI) : -0.02 * airFlow,
      ),
      exitFlow: wave(n, (p) => airFlow * (1.05 + 2.6 * Math.sin(p + 0.4))),
      heatRelease: wave(
        n,
        (p) => fuelFlow * 46e6 * (0.15 + 4.2 * Math.exp(-(((p - 5.9) / 0.5) ** 2)) + 2.4 * Math.exp(-((p / 0.6) ** 2))),
      ),
      thrust: wave(n, (p) => thrust * (1 + 2.9 * Math.cos(p - 0.4))),
    },
    profile: {
      position,
      diameter: position.map((x) =>
        x < 0.32 ? 0.2 : x < 0.54 ? 0.2 - (0.09 * (x - 0.32)) / 0.22 : x < 1.38 ? 0.11 : 0.11 + 0.4 * (x - 1.38),
      ),
      gasTemperature: position.map((x) => 1500 - 300 * x),
      effectiveGasTemperature: position.map((x) => 1650 - 320 * x),
      filmCoefficient: position.map(() => 110),
      wallTemperature: position.map((x) => 720 + 330 * Math.exp(-(((x - 0.5) / 0.35) ** 2)) - 40 * x),
      peakPressure: position.map((x) => 2.17e5 - 0.7e5 * x),
      lowestPressure: position.map((x) => 0.71e5 + 0.15e5 * x),
    },
    field: {
      position,
      time: Array.from({ length: 120 }, (_, i) => (i / 119) * period),
      pressure: Array.from({ length: 120 }, (_, t) =>
        position.map(
          (x) =>
            ambient +
            6.5e4 * Math.cos((Math.PI * x) / (2 * length)) * Math.cos((2 * Math.PI * t) / 119 - x) +
            6e3 * Math.sin(9 * x - t / 6),
        ),
      ),
    },
    audits: {
      massError: 4e-4,
      energyError: 6e-4,
      thrustError: 5e-3,
      periodicityError: 3e-3,
      limitCycleReached: true,
      closed: true,
    },
  };
}

function performance(a: Architecture, thrust: number, tsfc: number, frequency: number): Performance {
  const start = { airPressure: 12e3, duration: 0.25 };
  return {
    verdict: { kind: 'self-sustaining', start, message: 'Runs by itself after starting air of 12 kPa for 0.25 s.' },
    starts: [
      { airPressure: 6e3, duration: 0.15, outcome: 'dies', cause: 'no ignition', airFlow: 0.02 },
      { ...start, outcome: 'self-sustaining', cause: null, airFlow: 0.03 },
    ],
    running: running(a, thrust, tsfc, frequency),
    failedValve: null,
    edge: null,
    cellUpdates: 1_200_000,
  };
}

export function checks(): Check[] {
  return [
    {
      id: 'valve-follows',
      title: 'Valve follows the suction',
      verdict: 'pass',
      value: 2.0,
      limit: 1,
      unit: '',
      margin: 1.0,
      sentence: 'Suction offers twice the force that the petal needs.',
      source: 'Newton’s second law over the calculated suction window',
      binding: true,
    },
    {
      id: 'shell-oxidation',
      title: 'Scaling limit of the sheet',
      verdict: 'caution',
      value: 1046,
      limit: 1143,
      unit: 'K',
      margin: 0.085,
      sentence: 'The cone runs close to the scaling limit of 304; 310 sheet there would clear it.',
      source: 'ASM scaling limits in service, from memory, high confidence',
      binding: true,
    },
    {
      id: 'shell-stress',
      title: 'Hoop stress against hot strength',
      verdict: 'pass',
      value: 0.31,
      limit: 0.6,
      unit: '',
      margin: 0.48,
      sentence: 'The shell uses a third of its hot strength.',
      source: 'EN 1993-1-2 table 3.1 for steel; stainless design data',
      binding: true,
    },
    {
      id: 'seat-impact',
      title: 'Impact at the seat',
      verdict: 'pass',
      value: 5.8,
      limit: 8,
      unit: 'm/s',
      margin: 0.28,
      sentence: 'The petal lands at a speed that such strip bears.',
      source: 'compressor practice, from memory, medium-low confidence',
      binding: false,
    },
    {
      id: 'cylinder-draw',
      title: 'Cylinder keeps up',
      verdict: 'fail',
      value: 0.0119,
      limit: 0.0079,
      unit: 'kg/s',
      margin: -0.51,
      sentence:
        'One cylinder cannot evaporate this much at 15 °C; draw liquid through a vaporiser or join two cylinders.',
      source: 'cylinder makers’ draw tables',
      binding: false,
    },
    {
      id: 'overall-length',
      title: 'Overall length',
      verdict: 'pass',
      value: 1.44,
      limit: 1.6,
      unit: 'm',
      margin: 0.1,
      sentence: 'It fits the envelope.',
      source: 'the brief',
      binding: true,
    },
    {
      id: 'augmenter-gap',
      title: 'Augmenter gap',
      verdict: 'not applicable',
      value: null,
      limit: null,
      unit: 'm',
      margin: null,
      sentence: 'No augmenter.',
      source: '',
      binding: false,
    },
  ];
}

function assessment(a: Architecture, tsfc: number, thrust: number, life: number): Assessment {
  const valved = a.intake === 'reed' || a.intake === 'poppet';
  return {
    checks: checks(),
    valveLife: { low: life / 2.6, median: life, high: life * 2.7 },
    valveLifeCycles: { low: (life * 95) / 2.6, median: life * 95, high: life * 95 * 2.7 },
    lifeLimiter: valved ? 'petal root in bending' : 'scaling of the cone',
    overallLength: 1.44,
    overallDiameter: 0.2,
    mass: a.augmenter ? 9.4 : 5.7,
    cost: 143,
    parts: [{ part: 'chamber shell', mass: 1.5, area: 0.21, material: '304', cost: 31 }],
    noise: { level: 128, uncertainty: 4, distance: 5, exposureMinutes: 0.023 },
    needs: [
      { id: 'fuel-flow', label: 'Fuel flow', value: thrust * tsfc, unit: 'kg/s', note: 'mean over the cycle' },
      {
        id: 'vaporiser',
        label: 'Heat for the vaporiser',
        value: thrust * tsfc * 4.2e5,
        unit: 'W',
        note: 'liquid draw',
      },
      { id: 'starting-air', label: 'Starting air, gauge', value: 12e3, unit: 'Pa', note: 'for a quarter of a second' },
      { id: 'jet', label: 'Jet diameter', value: 0.00185, unit: 'm', note: 'at 1.5 bar gauge' },
    ],
  };
}

export interface CandidateSpec {
  a: Architecture;
  thrust: number;
  tsfc: number;
  life: number;
  frequency: number;
}

export function candidate(rank: number, spec: CandidateSpec): Candidate {
  const { a, thrust, tsfc, life, frequency } = spec;
  return {
    id: `C${rank}`,
    rank,
    architecture: a,
    variables: [{ name: 'chamberDiameter', label: 'Chamber diameter', value: '200 mm' }],
    x: [0.2],
    engine: engine(a),
    performance: performance(a, thrust, tsfc, frequency),
    assessment: assessment(a, tsfc, thrust, life),
    robustness: {
      draws: 64,
      sustainChance: rank === 1 ? 1 : 0.89,
      feasibleChance: 0.78,
      tsfc: band(tsfc, 0.09),
      thrust: band(thrust, 0.07),
      frequency: band(frequency, 0.04),
      valveLife: { low: life / 3, median: life, high: life * 3.1 },
      fuelFlow: band(thrust * tsfc, 0.08),
    },
    sensitivities: [
      {
        variable: 'tailpipeAspect',
        label: 'Tailpipe length over diameter',
        step: '+1 % (8.4 mm)',
        tsfc: 0.004,
        thrust: -0.011,
        valveLife: 0.02,
        stops: false,
      },
      {
        variable: 'stopLift',
        label: 'Lift at the stop',
        step: '+2 % (0.12 mm)',
        tsfc: -0.018,
        thrust: 0.026,
        valveLife: -0.091,
        stops: false,
      },
      {
        variable: 'chamberDiameter',
        label: 'Chamber diameter',
        step: '+1 % (2.0 mm)',
        tsfc: 0.009,
        thrust: 0.031,
        valveLife: -0.012,
        stops: false,
      },
      {
        variable: 'petals',
        label: 'Number of petals',
        step: '+1',
        tsfc: 0.002,
        thrust: 0.006,
        valveLife: null,
        stops: false,
      },
      {
        variable: 'equivalenceRatio',
        label: 'Equivalence ratio',
        step: '−2 %',
        tsfc: null,
        thrust: null,
        valveLife: null,
        stops: true,
      },
    ],
    feasible: true,
    nonDominated: rank <= 3,
    score: rank / 10,
    why:
      rank === 1
        ? 'Knee of the line: each per cent of TSFC saved beyond it costs four per cent of valve life.'
        : 'On the way from the knee to the longest life.',
  };
}

/** kg/(N s) from kg/(N h). */
const perHour = (v: number) => v / 3600;

const REED = architecture('reed', false);
const REED_AUGMENTED = architecture('reed', true);
const VALVELESS_U = architecture('valveless-u', false, 'steady-injection');
const POPPET = architecture('poppet', false, 'timed-injection');

const SPECS: CandidateSpec[] = [
  { a: REED_AUGMENTED, thrust: 186, tsfc: perHour(0.192), life: 2400, frequency: 94 },
  { a: REED_AUGMENTED, thrust: 181, tsfc: perHour(0.181), life: 1500, frequency: 97 },
  { a: VALVELESS_U, thrust: 178, tsfc: perHour(0.402), life: 90e3, frequency: 81 },
  { a: REED, thrust: 183, tsfc: perHour(0.271), life: 2900, frequency: 95 },
  { a: REED, thrust: 190, tsfc: perHour(0.263), life: 1900, frequency: 99 },
];

export function study(changes: Partial<Study['report']> = {}): Study {
  return {
    slug: 'barn-sled',
    brief: {
      wanted: {
        thrust: 178,
        endurance: 300,
        maxLength: 1.6,
        maxDiameter: 0.35,
        maxMass: 12,
        maxCost: null,
        maxTsfc: null,
      },
      supply: {
        kind: 'cylinder-vapour',
        fuel: 'propane',
        capacity: 45,
        fill: 0.6,
        cylinders: 1,
        regulatorPressure: 2e5,
        vaporiserDuty: null,
      },
      startingAir: { blower: { flow: 0.05, pressure: 15e3 }, tank: null },
      sheets: [{ material: '304', thickness: 9.1e-4, width: 1, length: 2, sheets: 2, price: 96 }],
      strips: [{ material: 'AISI-1095', thickness: 2.5e-4, price: null }],
      tools: { smallestRoll: 0.05, rollWidth: 0.9, thickestCut: 0.002, welding: ['TIG'] },
      limits: {
        cautionMargin: 0.1,
        minSustainChance: 0.7,
        maxShellUtilisation: 0.6,
        maxImpactSpeed: 8,
        maxExposureMinutes: null,
        operatorDistance: 5,
      },
      currency: 'EUR',
      prices: { perHourLabour: null, hardware: {} },
    },
    site: { pressure: 98.2e3, temperature: 288.15 },
    space: {
      intakes: ['reed', 'poppet', 'valveless-u'],
      augmenter: ['without', 'with'],
      feeds: [{ fuel: 'propane', mode: 'premixed' }],
      equivalenceRatio: { low: 0.8, high: 1.1 },
      shells: [{ material: '304', thickness: 9.1e-4 }],
      geometry: {
        chamberDiameter: { low: 0.15, high: 0.25 },
        chamberAspect: { low: 1, high: 2 },
        coneAngle: { low: 0.2, high: 0.5 },
        tailpipeRatio: { low: 0.4, high: 0.7 },
        tailpipeAspect: { low: 5, high: 12 },
        exitFlare: { low: 1, high: 1.3 },
      },
      reed: null,
      poppet: null,
      valveless: null,
      augmenterRanges: null,
    },
    ranking: { tsfcWeight: 0.5, lifeWeight: 0.5, method: 'knee', tsfcBound: null },
    search: {
      evaluations: 4000,
      population: 40,
      seed: 'barn',
      stallGenerations: 20,
      timeLimit: null,
      finalists: 5,
      draws: 64,
    },
    report: {
      title: 'Engine for the barn sled',
      question: 'Which engine pushes the sled with 40 lbf for five minutes, and why not a poppet?',
      notes: 'Second study after the tailpipe stock changed.',
      paper: 'A4',
      invented: true,
      ...changes,
    },
    delivery: null,
  };
}

function architectures(candidates: Candidate[]): ArchitectureResult[] {
  const best = (a: Architecture) => candidates.find((c) => c.architecture.id === a.id)?.id ?? null;
  const worked = (a: Architecture, evaluations: number, ran: number, feasible: number): ArchitectureResult => ({
    architecture: a,
    evaluations,
    running: ran,
    feasible,
    bestCandidate: best(a),
    leastViolating: null,
    reason: 'Runs over most of its space; valve life against TSFC is what it has to trade.',
    freedBy: '',
    forces: null,
    failures: [
      { reason: 'blow-out', count: 112 },
      { reason: 'over-rich', count: 31 },
    ],
  });
  return [
    worked(REED, 1120, 846, 402),
    worked(REED_AUGMENTED, 1210, 902, 377),
    worked(VALVELESS_U, 980, 310, 44),
    {
      architecture: POPPET,
      evaluations: 690,
      running: 0,
      feasible: 0,
      bestCandidate: null,
      leastViolating: {
        engine: engine(POPPET),
        summary: {
          status: 'dies',
          reason: 'intake does not follow',
          tsfc: null,
          valveLife: null,
          thrust: null,
          frequency: null,
          fuelFlow: null,
          mass: null,
          followRatio: 0.19,
          forceOffered: 71,
          forceNeeded: 372,
          violations: [{ id: 'valve-follows', violation: 0.81 }],
          flags: [],
        },
        bindingConstraint: 'the valve does not follow',
      },
      reason:
        'One head of 90 mm is too heavy for its travel: it reaches full lift long after the suction is over, so the chamber does not fill and the fire goes out in the second cycle.',
      freedBy:
        'Six valves of 34 mm with 9 g each would follow; so would the same valve with a lift of 4 mm, but then it no longer fills the chamber.',
      forces: { offered: 71, needed: 372, timeOffered: 3.3e-3, timeNeeded: 7.6e-3 },
      failures: [{ reason: 'intake does not follow', count: 690 }],
    },
  ];
}

function tradePoints(): TradePoint[] {
  const points: TradePoint[] = [];
  const families: [Architecture, number, number][] = [
    [REED, 0.3, 1800],
    [REED_AUGMENTED, 0.21, 1500],
    [VALVELESS_U, 0.46, 60e3],
  ];
  families.forEach(([a, tsfc, life], f) => {
    for (let i = 0; i < 160; i++) {
      // A fixed pattern that looks scattered; no random numbers in a fixture.
      const u = ((i * 37 + f * 11) % 101) / 101 - 0.4;
      const v = ((i * 61 + f * 29) % 97) / 97 - 0.6;
      const feasible = i % 3 !== 0;
      points.push({
        architecture: a.id,
        tsfc: perHour(tsfc * (1 + 0.35 * u)),
        valveLife: life * 4 ** v,
        thrust: 180,
        feasible,
        reason: feasible ? '' : i % 2 === 0 ? 'thrust below the wish' : 'shell too hot',
      });
    }
  });
  return points;
}

export function results(report: Partial<Study['report']> = {}): StudyResults {
  const candidates = SPECS.map((spec, i) => candidate(i + 1, spec));
  return {
    formatVersion: 1,
    study: study(report),
    configurationDigest: 'b2f1c0d98a7e64530f1e2d3c4b5a69788796a5b4c3d2e1f00f1e2d3c4b5a6978',
    modelVersion: '3f6c1d0e5a',
    toolVersion: '0.1.0',
    answer: [
      'Build the reed-valved engine with augmenter, C1: it gives 186 N at a TSFC of 0.19 kg/(N·h), and its petals last about 40 minutes (13 to 120).',
      'Where valves must outlast everything, the U-bent valveless engine C3 lives for hours but burns twice the fuel.',
    ],
    contradictions: [
      'One cylinder of vapour cannot feed 178 N for five minutes at 15 °C: it keeps up for about 70 seconds.',
    ],
    candidates,
    tradePoints: tradePoints(),
    front: ['C2', 'C1', 'C4', 'C3'],
    architectures: architectures(candidates),
    evaluations: { total: 4000, screen: 3300, full: 420, refused: 215, robustness: 320 },
    stoppedBecause: 'the evaluations of the budget were used up',
    convergence: Array.from({ length: 25 }, (_, i) => ({
      evaluations: 160 * (i + 1),
      hypervolume: 0.82 * (1 - Math.exp(-(i + 1) / 6)),
    })),
    constants: [
      {
        name: 'C_R',
        value: 0.62,
        standardError: 0.09,
        meaning: 'rate of burning by turbulence',
        source: 'fitted, see the validation table',
      },
      {
        name: 'u_q',
        value: 38,
        standardError: 7,
        meaning: 'jet speed that holds ignition back, m/s',
        source: 'fitted',
      },
    ],
    validation: [
      {
        engine: 'Drone engine, 6.5 in tailpipe',
        quantity: 'thrust',
        unit: 'N',
        measuredLow: 445,
        measuredHigh: 463,
        computed: 471,
        acceptLow: 400,
        acceptHigh: 510,
        within: true,
        role: 'checked',
        source: 'AIAA 2005-0228',
      },
      {
        engine: 'Drone engine, 6.5 in tailpipe',
        quantity: 'peak pressure',
        unit: 'bar',
        measuredLow: 2.39,
        measuredHigh: 2.39,
        computed: 2.31,
        acceptLow: 2.1,
        acceptHigh: 2.7,
        within: true,
        role: 'checked',
        source: 'AIAA 2005-0228',
      },
      {
        engine: '22-inch engine',
        quantity: 'frequency',
        unit: 'Hz',
        measuredLow: 43,
        measuredHigh: 47,
        computed: 40.2,
        acceptLow: 41,
        acceptHigh: 49,
        within: false,
        role: 'checked',
        source: 'NACA MR E5J02',
      },
      {
        engine: '50-cm engine',
        quantity: 'thrust',
        unit: 'N',
        measuredLow: 18,
        measuredHigh: 20,
        computed: 19.1,
        acceptLow: 15,
        acceptHigh: 24,
        within: true,
        role: 'fitted',
        source: 'NC State thesis 2006',
      },
    ],
  };
}

/** Nothing ran well enough: the report must still be useful. */
export function noCandidates(): StudyResults {
  const base = results();
  return {
    ...base,
    answer: ['No design of this study satisfies the brief; the poppet engines do not run at all.'],
    candidates: [],
    front: [],
    tradePoints: base.tradePoints.map((p) => ({ ...p, feasible: false, reason: 'longer than the envelope' })),
    architectures: base.architectures.map((a) => ({
      ...a,
      feasible: 0,
      bestCandidate: null,
      reason: a.reason,
      freedBy: a.freedBy || 'Two hundred millimetres more length would free it.',
    })),
  };
}

/** Many finalists, spread along the trade. */
export function many(count: number): StudyResults {
  const base = results();
  const candidates = Array.from({ length: count }, (_, i) => {
    const spec = SPECS[i % SPECS.length];
    return candidate(i + 1, {
      ...spec,
      tsfc: spec.tsfc * (1 + 0.003 * i),
      life: spec.life * (1 + 0.02 * i),
      thrust: spec.thrust + i / 10,
    });
  });
  return { ...base, candidates, architectures: architectures(candidates) };
}
