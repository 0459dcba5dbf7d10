/** Running, valve life and shell: an input that passes each check and one that trips it. */
import { deadPerformance, inputOf, POPPET, REED, reedEngine } from './fixtures.ts';
import { poppet, reed, type Scenario, walls } from './scenario-kit.ts';

export const RUNNING_SCENARIOS: Record<string, Scenario> = {
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
};
