/** For each check: an input that passes it and one that trips it (fail or caution). */
import type { CheckInput } from '../../shared/checks/check.ts';
import type { FuelSupply } from '../../shared/engine/brief.ts';
import type { RunningPerformance } from '../../shared/engine/performance.ts';
import { bentEngine, deadPerformance, inputOf, POPPET, poppetEngine, REED, reedEngine } from './fixtures.ts';

export interface Scenario {
  pass: () => CheckInput;
  trip: () => CheckInput;
  tripped: 'fail' | 'caution';
}

type Change = (input: CheckInput, running: RunningPerformance) => void;
const reed = (change?: Change) => () => inputOf(reedEngine(), change);
const poppet = (change?: Change) => () => inputOf(poppetEngine(), change);
const bent = (change?: Change) => () => inputOf(bentEngine(), change);

const cylinder = (over: Partial<Extract<FuelSupply, { kind: 'cylinder-liquid' | 'cylinder-vapour' }>>): FuelSupply => ({
  kind: 'cylinder-vapour',
  fuel: 'propane',
  capacity: 45,
  fill: 0.8,
  cylinders: 1,
  regulatorPressure: 1e5,
  vaporiserDuty: null,
  ...over,
});
const carburettor = (ratedFlow: number): FuelSupply => ({
  kind: 'carburettor',
  fuel: 'petrol',
  ratedFlow,
  ratingDepression: 10159,
  capacity: 20,
});
const onPetrol =
  (ratedFlow: number): Change =>
  (input) => {
    input.engine.feed = { fuel: 'petrol', mode: 'premixed', equivalenceRatio: 1 };
    input.brief.supply = carburettor(ratedFlow);
  };
const walls =
  (kelvin: number): Change =>
  (_, running) => {
    running.profile.wallTemperature = running.profile.wallTemperature.map(() => kelvin);
  };

export const SCENARIOS: Record<string, Scenario> = {
  'engine-runs': {
    pass: reed(),
    trip: () => ({ ...inputOf(reedEngine()), performance: deadPerformance() }),
    tripped: 'fail',
  },
  'valve-follows': {
    pass: reed(),
    trip: () => ({ ...inputOf(reedEngine()), performance: deadPerformance() }),
    tripped: 'fail',
  },
  'steady-running': {
    pass: reed(),
    trip: reed((_, r) => {
      r.cycleVariation = 0.4;
    }),
    tripped: 'fail',
  },
  mixture: {
    pass: reed(),
    trip: reed((_, r) => {
      r.equivalenceRatio = 1.6;
    }),
    tripped: 'fail',
  },
  'books-balance': {
    pass: reed(),
    trip: reed((_, r) => {
      r.audits.massError = 0.02;
    }),
    tripped: 'fail',
  },
  'valve-life': {
    pass: reed(),
    trip: reed((_, r) => {
      r.valve!.seatImpactSpeed = 16;
    }),
    tripped: 'fail',
  },
  'seat-impact': {
    pass: reed(),
    trip: reed((_, r) => {
      r.valve!.seatImpactSpeed = 16;
    }),
    tripped: 'fail',
  },
  'stop-impact': {
    pass: reed(),
    trip: reed((_, r) => {
      r.valve!.stopImpactSpeed = 16;
    }),
    tripped: 'fail',
  },
  'valve-temperature': {
    pass: reed(),
    trip: reed((_, r) => {
      r.profile.filmCoefficient[0] = 3000;
    }),
    tripped: 'fail',
  },
  'reed-root-stress': {
    pass: reed(),
    trip: reed((i, r) => {
      i.engine.intake = { ...REED, stopLift: 0.02, thickness: 0.6e-3 };
      r.valve!.peakLift = 0.02;
    }),
    tripped: 'fail',
  },
  'reed-stop-stress': {
    pass: reed(),
    trip: reed((_, r) => {
      r.valve!.stopImpactSpeed = 30;
    }),
    tripped: 'fail',
  },
  'reed-port-stress': {
    pass: reed(),
    trip: reed((i) => {
      i.engine.intake = { ...REED, thickness: 0.06e-3 };
    }),
    tripped: 'fail',
  },
  'reed-seat-stress': {
    pass: reed(),
    trip: reed((_, r) => {
      r.valve!.seatImpactSpeed = 16;
    }),
    tripped: 'fail',
  },
  'poppet-stem-stress': {
    pass: poppet((_, r) => {
      r.valve!.seatImpactSpeed = 1;
      r.valve!.stopImpactSpeed = 1;
    }),
    trip: poppet((_, r) => {
      r.valve!.seatImpactSpeed = 60;
    }),
    tripped: 'fail',
  },
  'poppet-head-stress': {
    pass: poppet((_, r) => {
      r.valve!.seatImpactSpeed = 0.5;
      r.valve!.stopImpactSpeed = 0.5;
    }),
    trip: poppet((_, r) => {
      r.valve!.seatImpactSpeed = 20;
    }),
    tripped: 'fail',
  },
  'poppet-firing-stress': {
    pass: poppet(),
    trip: poppet((i) => {
      i.engine.intake = { ...POPPET, headDiameter: 0.08, portDiameter: 0.076, mass: 0.018 };
    }),
    tripped: 'fail',
  },
  'poppet-weld': {
    pass: poppet((i, r) => {
      i.engine.intake = { ...POPPET, stemJoint: 'welded' };
      r.valve!.seatImpactSpeed = 0.3;
      r.valve!.stopImpactSpeed = 0.3;
    }),
    trip: poppet((i, r) => {
      i.engine.intake = { ...POPPET, stemJoint: 'welded' };
      r.valve!.seatImpactSpeed = 6;
    }),
    tripped: 'caution',
  },
  'poppet-guide-wear': {
    pass: poppet(),
    trip: poppet((i) => {
      i.engine.intake = { ...POPPET, mass: 0.5 };
      i.brief.wanted.endurance = 36000;
    }),
    tripped: 'caution',
  },
  'shell-hot-yield': { pass: reed(), trip: reed(walls(1500)), tripped: 'fail' },
  'shell-external-pressure': {
    pass: reed(),
    trip: reed((i) => {
      i.engine.shell.thickness = 0.15e-3;
    }),
    tripped: 'fail',
  },
  'shell-creep': { pass: reed(), trip: reed(walls(1500)), tripped: 'fail' },
  'shell-oxidation': { pass: reed(), trip: reed(walls(1200)), tripped: 'fail' },
  'shell-wastage': {
    pass: reed(),
    trip: reed((i, r) => {
      i.engine.shell = { material: 'low-carbon-steel', thickness: 0.5e-3 };
      walls(1500)(i, r);
    }),
    tripped: 'fail',
  },
  'thermal-growth': { pass: reed(walls(300)), trip: reed(), tripped: 'caution' },
  'fuel-match': {
    pass: reed(),
    trip: reed((i) => {
      i.brief.supply = carburettor(1);
    }),
    tripped: 'fail',
  },
  'cylinder-evaporation': {
    pass: reed((i) => {
      i.brief.supply = cylinder({ cylinders: 8 });
    }),
    trip: reed((i) => {
      i.brief.supply = cylinder({ capacity: 9, fill: 0.3 });
    }),
    tripped: 'fail',
  },
  'liquid-draw': {
    pass: reed(),
    trip: reed((i) => {
      i.brief.supply = cylinder({ kind: 'cylinder-liquid', vaporiserDuty: 800 });
    }),
    tripped: 'fail',
  },
  'fuel-regulator': {
    pass: reed(),
    trip: reed((i) => {
      i.brief.supply = cylinder({ regulatorPressure: null });
    }),
    tripped: 'caution',
  },
  'injection-pressure': {
    pass: reed(),
    trip: bent((i) => {
      i.brief.supply = { kind: 'pressure-injection', fuel: 'propane', pressure: 0.3e5, capacity: 20 };
    }),
    tripped: 'fail',
  },
  'fuel-jet': {
    pass: reed(),
    trip: reed((_, r) => {
      r.fuelFlow = 5e-5;
    }),
    tripped: 'fail',
  },
  'run-time': {
    pass: reed(),
    trip: reed((i) => {
      i.brief.supply = cylinder({ capacity: 3 });
    }),
    tripped: 'fail',
  },
  'carburettor-rating': { pass: reed(onPetrol(0.6)), trip: reed(onPetrol(0.05)), tripped: 'fail' },
  'carburettor-loss': { pass: reed(onPetrol(1.2)), trip: reed(onPetrol(0.1)), tripped: 'fail' },
  'starting-pressure': {
    pass: reed(),
    trip: reed((i) => {
      i.brief.startingAir = { blower: { flow: 0.3, pressure: 800 }, tank: null };
    }),
    tripped: 'fail',
  },
  'starting-flow': {
    pass: reed(),
    trip: reed((i) => {
      i.brief.startingAir = { blower: { flow: 0.01, pressure: 8e3 }, tank: null };
    }),
    tripped: 'fail',
  },
  'starting-tank': {
    pass: reed(),
    trip: reed((i) => {
      i.brief.startingAir.tank = { volume: 0.02, pressure: 6e5, delivery: 1e-3 };
    }),
    tripped: 'fail',
  },
  'smallest-roll': {
    pass: reed(),
    trip: reed((i) => {
      i.brief.tools.smallestRoll = 0.12;
    }),
    tripped: 'fail',
  },
  'widest-sheet': {
    pass: reed(),
    trip: reed((i) => {
      i.brief.tools.rollWidth = 0.15;
    }),
    tripped: 'fail',
  },
  'thickest-cut': {
    pass: reed(),
    trip: reed((i) => {
      i.brief.tools.thickestCut = 0.8e-3;
    }),
    tripped: 'fail',
  },
  'cone-angle': {
    pass: reed(),
    trip: reed((i) => {
      i.engine.sections[1].length = 0.02;
    }),
    tripped: 'fail',
  },
  'bend-radius': {
    pass: bent(),
    trip: bent((i) => {
      i.engine.sections[4] = {
        ...i.engine.sections[4],
        length: Math.PI * 0.06,
        bend: { angle: Math.PI, radius: 0.06 },
      };
    }),
    tripped: 'fail',
  },
  weldability: {
    pass: reed(),
    trip: reed((i) => {
      i.brief.tools.welding = ['gas'];
    }),
    tripped: 'fail',
  },
  'stock-sheet': {
    pass: reed(),
    trip: reed((i) => {
      i.brief.sheets[0].thickness = 2e-3;
    }),
    tripped: 'fail',
  },
  'stock-strip': {
    pass: reed(),
    trip: reed((i) => {
      i.brief.strips[0].thickness = 0.15e-3;
    }),
    tripped: 'fail',
  },
  'part-count': {
    pass: reed(),
    trip: poppet((i) => {
      i.engine.intake = { ...POPPET, valves: 40 };
    }),
    tripped: 'caution',
  },
  'noise-exposure': {
    pass: reed((i) => {
      i.brief.limits.operatorDistance = 60;
      i.brief.limits.maxExposureMinutes = 5;
    }),
    trip: reed((i) => {
      i.brief.limits.operatorDistance = 0.5;
      i.brief.limits.maxExposureMinutes = 300;
    }),
    tripped: 'fail',
  },
  'noise-stand-off': {
    pass: reed((i) => {
      i.brief.limits.operatorDistance = 2000;
    }),
    trip: reed(),
    tripped: 'caution',
  },
  'radiant-heat': {
    pass: reed(),
    trip: reed((i) => {
      i.brief.limits.operatorDistance = 0.4;
    }),
    tripped: 'fail',
  },
  'hot-surface': { pass: reed(walls(310)), trip: reed(), tripped: 'caution' },
  'carbon-monoxide': {
    pass: reed((_, r) => {
      r.fuelFlow = 1e-6;
    }),
    trip: reed(),
    tripped: 'caution',
  },
  thrust: {
    pass: reed(),
    trip: reed((i) => {
      i.brief.wanted.thrust = 400;
    }),
    tripped: 'fail',
  },
  tsfc: {
    pass: reed((i) => {
      i.brief.wanted.maxTsfc = 1e-4;
    }),
    trip: reed((i) => {
      i.brief.wanted.maxTsfc = 1e-5;
    }),
    tripped: 'fail',
  },
  length: {
    pass: reed(),
    trip: reed((i) => {
      i.brief.wanted.maxLength = 1;
    }),
    tripped: 'fail',
  },
  diameter: {
    pass: reed(),
    trip: reed((i) => {
      i.brief.wanted.maxDiameter = 0.1;
    }),
    tripped: 'fail',
  },
  mass: {
    pass: reed(),
    trip: reed((i) => {
      i.brief.wanted.maxMass = 1;
    }),
    tripped: 'fail',
  },
  budget: {
    pass: reed((i) => {
      i.brief.wanted.maxCost = 5000;
      i.brief.prices.hardware = new Proxy({}, { get: () => 5, ownKeys: () => [] });
      i.brief.sheets.push({ material: '304', thickness: 2.5e-3, width: 1, length: 2, sheets: 1, price: 100 });
      i.brief.sheets.push({
        material: 'low-carbon-steel',
        thickness: 4e-3,
        width: 1,
        length: 2,
        sheets: 1,
        price: 100,
      });
    }),
    trip: reed((i) => {
      i.brief.wanted.maxCost = 5;
    }),
    tripped: 'fail',
  },
};
