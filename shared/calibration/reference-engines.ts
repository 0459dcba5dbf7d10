/**
 * The reference engines: published engines as far as their geometry is known, for fitting and checking the model constants.
 *
 * What no source gives (petal counts, stop lifts, port areas, mixture) is set to common proportions and marked; the
 * validation sweeps it and shows the spread, instead of tuning it.
 */
import type { Engine, Feed, ReedIntake, Section, SectionRole } from '../engine/engine.ts';

const INCH = 0.0254;
/** Standard sea-level air, ISO 2533. */
const SEA_LEVEL = { pressure: 101325, temperature: 288.15 };
const SHELL = { material: '304', thickness: 0.001 } as const;

function duct(...parts: [SectionRole, number, number, number][]): Section[] {
  return parts.map(([role, length, startDiameter, endDiameter]) => ({ role, length, startDiameter, endDiameter }));
}

function reeds(
  petals: number,
  length: number,
  width: number,
  thickness: number,
  stopLift: number,
  totalPort: number,
): ReedIntake {
  return {
    kind: 'reed',
    petals,
    length,
    width,
    thickness,
    material: 'AISI-1095',
    stopLift,
    portArea: totalPort / petals,
  };
}

function feed(fuel: Feed['fuel'], mode: Feed['mode'], equivalenceRatio: number): Feed {
  return { fuel, mode, equivalenceRatio };
}

function circle(diameter: number): number {
  return 0.25 * Math.PI * diameter ** 2;
}

/** Overall proportions of an engine whose details are swept. */
export interface SweptDetails {
  /** Port area over tailpipe area, and stop lift over petal length. */
  portRatio: number;
  stopRatio: number;
  equivalenceRatio: number;
}

/** Details that no source gives, as they are assumed where nobody sweeps them. */
export const ASSUMED = {
  drone: { portRatio: 0.6, stopRatio: 0.18, equivalenceRatio: 1.1 },
  inch22: { portRatio: 0.6, stopRatio: 0.2, equivalenceRatio: 1.25 },
  cm50: { portRatio: 0.8, stopRatio: 0.25, equivalenceRatio: 1.1 },
} as const satisfies Record<string, SweptDetails>;

/**
 * The 6.5-inch-tailpipe drone engine: 72 in long (NASA/TM-2006-214224, memory high); chamber 9 in and its share of the
 * length scaled guesses (memory low); valve area about 0.6 of the tailpipe.
 */
export function droneEngine(swept: SweptDetails = ASSUMED.drone): Engine {
  const length = 72 * INCH;
  const tail = 6.5 * INCH;
  const chamber = 9 * INCH;
  return {
    name: 'drone engine, 100 lbf class',
    sections: duct(
      ['chamber', 0.28 * length, chamber, chamber],
      ['chamber-cone', 0.16 * length, chamber, tail],
      ['tailpipe', 0.56 * length, tail, tail],
    ),
    intake: reeds(60, 0.04, 0.02, 0.00025, 0.04 * swept.stopRatio, swept.portRatio * circle(tail)),
    feed: feed('petrol', 'premixed', swept.equivalenceRatio),
    shell: SHELL,
    augmenter: null,
    site: SEA_LEVEL,
  };
}

/**
 * The 22-inch engine (NACA MR E5J02, E5J03): 3.5 m long, chamber 0.55 m, tailpipe 0.40 m (memory medium); chamber and cone
 * lengths and 0.25 mm reeds (memory low). Remembered valve areas go from 0.057 to 0.10 m² (memory low); 0.6 of the tailpipe, the
 * share that the drone engine is guessed to have, is 0.075 m².
 */
export function engine22Inch(swept: SweptDetails = ASSUMED.inch22): Engine {
  return {
    name: '22-inch engine',
    sections: duct(['chamber', 0.9, 0.55, 0.55], ['chamber-cone', 0.5, 0.55, 0.4], ['tailpipe', 2.1, 0.4, 0.4]),
    intake: reeds(500, 0.04, 0.02, 0.00025, 0.04 * swept.stopRatio, swept.portRatio * circle(0.4)),
    feed: feed('petrol', 'premixed', swept.equivalenceRatio),
    shell: SHELL,
    augmenter: null,
    site: SEA_LEVEL,
  };
}

/** The 50-cm engine with a ten-petal disc (open theses, NC State 2006; memory medium): 0.53 m, chamber Ø62, tailpipe Ø32. */
export function engine50Cm(swept: SweptDetails = ASSUMED.cm50): Engine {
  return {
    name: '50-cm engine',
    sections: duct(
      ['chamber', 0.13, 0.062, 0.062],
      ['chamber-cone', 0.05, 0.062, 0.032],
      ['tailpipe', 0.35, 0.032, 0.032],
    ),
    intake: reeds(10, 0.02, 0.0115, 0.00015, 0.02 * swept.stopRatio, swept.portRatio * circle(0.032)),
    feed: feed('propane', 'premixed', swept.equivalenceRatio),
    shell: SHELL,
    augmenter: null,
    site: SEA_LEVEL,
  };
}

/** A U-bent valveless engine of common proportions (chamber 110 mm; common practice, no source). */
export function valvelessUTube(equivalenceRatio = 1.35): Engine {
  return {
    name: 'valveless U-tube',
    sections: duct(
      ['intake', 0.154, 0.044, 0.044],
      ['intake-cone', 0.04, 0.044, 0.11],
      ['chamber', 0.115, 0.11, 0.11],
      ['chamber-cone', 0.12, 0.11, 0.0505],
      ['tailpipe', 0.78, 0.0505, 0.06],
    ),
    intake: { kind: 'valveless', lip: 'flared', mouth: 'aft' },
    feed: feed('propane', 'steady-injection', equivalenceRatio),
    shell: SHELL,
    augmenter: null,
    site: SEA_LEVEL,
  };
}

/** A 0.2 m chamber with one large poppet: what must not run (common practice: one heavy poppet does not follow). */
export function oneLargePoppet(mass = 0.15): Engine {
  return {
    ...chamber20(),
    name: '0.2 m chamber, one large poppet',
    intake: {
      kind: 'poppet',
      valves: 1,
      headDiameter: 0.105,
      portDiameter: 0.1,
      lift: 0.025,
      mass,
      stemDiameter: 0.01,
      springMass: 0.02,
      springRate: 3000,
      preload: 3,
      material: 'Ti-6Al-4V',
      stemJoint: 'one-piece',
      axis: 'horizontal',
    },
  };
}

/** The same chamber with twelve small poppets of the same port area. */
export function twelveSmallPoppets(): Engine {
  return {
    ...chamber20(),
    name: '0.2 m chamber, twelve small poppets',
    intake: {
      kind: 'poppet',
      valves: 12,
      headDiameter: 0.033,
      portDiameter: 0.0289,
      lift: 0.0055,
      mass: 0.006,
      stemDiameter: 0.004,
      springMass: 0.002,
      springRate: 600,
      preload: 0.6,
      material: 'Ti-6Al-4V',
      stemJoint: 'one-piece',
      axis: 'horizontal',
    },
  };
}

/** A 0.2 m chamber with reeds, common proportions. */
export function chamber20(): Engine {
  return {
    name: '0.2 m chamber, reeds',
    sections: duct(['chamber', 0.5, 0.2, 0.2], ['chamber-cone', 0.25, 0.2, 0.13], ['tailpipe', 1.0, 0.13, 0.13]),
    intake: reeds(40, 0.04, 0.02, 0.00025, 0.007, 0.6 * circle(0.13)),
    feed: feed('propane', 'premixed', 1),
    shell: SHELL,
    augmenter: null,
    site: SEA_LEVEL,
  };
}

/** Every length of an engine times `factor`; petals and poppets scale alike. */
export function scaled(engine: Engine, factor: number): Engine {
  const f = factor;
  const intake = engine.intake;
  return {
    ...engine,
    name: `${engine.name} × ${f}`,
    sections: engine.sections.map((s) => ({
      ...s,
      length: s.length * f,
      startDiameter: s.startDiameter * f,
      endDiameter: s.endDiameter * f,
    })),
    intake:
      intake.kind === 'reed'
        ? {
            ...intake,
            length: intake.length * f,
            width: intake.width * f,
            thickness: intake.thickness * f,
            stopLift: intake.stopLift * f,
            portArea: intake.portArea * f * f,
          }
        : intake,
  };
}
