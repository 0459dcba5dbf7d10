/** Engines of our own, invented for tests: one of each intake, straight and U-bent. */
import type { Engine } from '../../shared/engine/engine.ts';

const site = { pressure: 101325, temperature: 288.15 };

export function reedEngine(): Engine {
  return {
    name: 'Invented reed engine',
    sections: [
      { role: 'chamber', length: 0.12, startDiameter: 0.065, endDiameter: 0.065 },
      { role: 'chamber-cone', length: 0.06, startDiameter: 0.065, endDiameter: 0.032 },
      { role: 'tailpipe', length: 0.3, startDiameter: 0.032, endDiameter: 0.032 },
      { role: 'exit-flare', length: 0.04, startDiameter: 0.032, endDiameter: 0.038 },
    ],
    intake: {
      kind: 'reed',
      petals: 10,
      length: 0.019,
      width: 0.009,
      thickness: 0.00015,
      material: 'AISI-1095',
      stopLift: 0.003,
      portArea: 55e-6,
    },
    feed: { fuel: 'propane', mode: 'premixed', equivalenceRatio: 1 },
    shell: { material: '304', thickness: 0.0008 },
    augmenter: null,
    site,
  };
}

export function poppetEngine(): Engine {
  return {
    ...reedEngine(),
    name: 'Invented poppet engine',
    intake: {
      kind: 'poppet',
      valves: 7,
      headDiameter: 0.016,
      portDiameter: 0.013,
      lift: 0.003,
      mass: 0.0035,
      stemDiameter: 0.003,
      springMass: 0.0008,
      springRate: 900,
      preload: 0.5,
      material: 'Ti-6Al-4V',
      stemJoint: 'welded',
      axis: 'horizontal',
    },
    augmenter: { diameter: 0.09, length: 0.4, gap: 0.04, taper: 1.15 },
  };
}

export function uBentEngine(): Engine {
  return {
    ...reedEngine(),
    name: 'Invented U-bent <valveless> & "loud" engine',
    sections: [
      { role: 'intake', length: 0.2, startDiameter: 0.045, endDiameter: 0.045 },
      { role: 'intake-cone', length: 0.05, startDiameter: 0.045, endDiameter: 0.1 },
      { role: 'chamber', length: 0.2, startDiameter: 0.1, endDiameter: 0.1 },
      { role: 'chamber-cone', length: 0.12, startDiameter: 0.1, endDiameter: 0.06 },
      { role: 'tailpipe', length: 0.2, startDiameter: 0.06, endDiameter: 0.06 },
      {
        role: 'bend',
        length: Math.PI * 0.11,
        startDiameter: 0.06,
        endDiameter: 0.06,
        bend: { angle: Math.PI, radius: 0.11 },
      },
      { role: 'tailpipe', length: 0.5, startDiameter: 0.06, endDiameter: 0.06 },
      { role: 'exit-flare', length: 0.2, startDiameter: 0.06, endDiameter: 0.085 },
    ],
    intake: { kind: 'valveless', lip: 'flared', mouth: 'aft' },
    feed: { fuel: 'propane', mode: 'steady-injection', equivalenceRatio: 1 },
    shell: { material: '321', thickness: 0.001 },
  };
}

/** A large reed engine whose petals need wedge panels. */
export function bigReedEngine(): Engine {
  return {
    ...reedEngine(),
    name: 'Invented large reed engine',
    sections: [
      { role: 'chamber', length: 0.5, startDiameter: 0.23, endDiameter: 0.23 },
      { role: 'chamber-cone', length: 0.3, startDiameter: 0.23, endDiameter: 0.165 },
      { role: 'tailpipe', length: 1.3, startDiameter: 0.165, endDiameter: 0.165 },
    ],
    intake: {
      kind: 'reed',
      petals: 48,
      length: 0.035,
      width: 0.02,
      thickness: 0.00025,
      material: 'AISI-301-full-hard',
      stopLift: 0.008,
      portArea: 260e-6,
    },
  };
}
