/** Supply, start, shop, people and brief: an input that passes each check and one that trips it. */
import { POPPET } from './fixtures.ts';
import { bent, carburettor, cylinder, onPetrol, poppet, reed, type Scenario, walls } from './scenario-kit.ts';

export const SUPPLY_AND_SHOP_SCENARIOS: Record<string, Scenario> = {
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
