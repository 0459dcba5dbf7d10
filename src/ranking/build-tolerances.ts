/** What a home workshop does to a drawing: an engine as built, drawn within stated tolerances. */
import type { Augmenter, Engine, Intake, Section } from '../../shared/engine/engine.ts';
import { normal, type Random } from '../search/random.ts';

/**
 * Standard deviations: half of the tolerance named, so that nineteen builds in twenty stay within it. Absolute ones in m.
 * Common practice, no source, unless a source stands beside the value.
 */
export const BUILD_TOLERANCES = {
  /** Sheet lengths ±0.5 mm for each section. */
  sectionLength: 0.00025,
  /** Rolled diameters ±0.5 mm at each joint. */
  diameter: 0.00025,
  /** Sheet thickness ±6 % (EN ISO 9445 cold-rolled strip and sheet gives about ±5 to 8 %; memory, medium). */
  sheetThickness: 0.03,
  /** Valve strip ±4 % (EN 10140 fine tolerance; memory, medium). */
  stripThickness: 0.02,
  /** Free length of a petal ±0.3 mm: where the clamp really ends. */
  petalLength: 0.00015,
  petalWidth: 0.0001,
  /** Lift at the stop ±0.4 mm: hand-bent stops. */
  stopLift: 0.0002,
  portArea: 0.015,
  /** Lift of a poppet ±0.2 mm. */
  poppetLift: 0.0001,
  poppetDiameter: 0.00005,
  /** Mass ±3 %, spring rate ±4 %, preload ±10 %. */
  poppetMass: 0.015,
  springRate: 0.02,
  preload: 0.05,
  /** Gap to the augmenter ±3 mm, its length and diameter ±1 mm. */
  augmenterGap: 0.0015,
  augmenterSize: 0.0005,
  /** Mixture set by regulator, jet or needle: ±6 %. */
  mixture: 0.03,
} as const;

/** Draws beyond so many standard deviations are pulled back: such a part is made again. */
const REWORK = 2.5;

/** The engine as one workshop may build it. Joints keep meeting. Same generator state, same engine. */
export function asBuilt(engine: Engine, random: Random): Engine {
  const t = BUILD_TOLERANCES;
  const deviate = (): number => Math.max(-REWORK, Math.min(REWORK, normal(random)));
  const absolute = (value: number, deviation: number): number => Math.max(0.2 * value, value + deviation * deviate());
  const relative = (value: number, deviation: number): number => value * (1 + deviation * deviate());

  const sections = sectionsAsBuilt(engine.sections, absolute);
  const intake = intakeAsBuilt(engine.intake, absolute, relative);
  const augmenter: Augmenter | null = engine.augmenter && {
    diameter: absolute(engine.augmenter.diameter, t.augmenterSize),
    length: absolute(engine.augmenter.length, t.augmenterSize),
    gap: Math.max(0, engine.augmenter.gap + t.augmenterGap * deviate()),
    taper: engine.augmenter.taper,
  };
  return {
    ...engine,
    sections,
    intake,
    augmenter,
    feed: { ...engine.feed, equivalenceRatio: relative(engine.feed.equivalenceRatio, t.mixture) },
    shell: { ...engine.shell, thickness: relative(engine.shell.thickness, t.sheetThickness) },
  };
}

type Deviation = (value: number, deviation: number) => number;

function sectionsAsBuilt(sections: readonly Section[], absolute: Deviation): Section[] {
  const t = BUILD_TOLERANCES;
  const built: Section[] = [];
  for (const section of sections) {
    const before = built[built.length - 1];
    const startDiameter = before ? before.endDiameter : absolute(section.startDiameter, t.diameter);
    // A cylinder is rolled to one diameter; a cone ends where the next section is rolled to.
    const endDiameter =
      section.endDiameter === section.startDiameter ? startDiameter : absolute(section.endDiameter, t.diameter);
    if (section.bend) built.push({ ...section, startDiameter, endDiameter });
    else built.push({ ...section, length: absolute(section.length, t.sectionLength), startDiameter, endDiameter });
  }
  return built;
}

function intakeAsBuilt(intake: Intake, absolute: Deviation, relative: Deviation): Intake {
  const t = BUILD_TOLERANCES;
  switch (intake.kind) {
    case 'reed':
      return {
        ...intake,
        length: absolute(intake.length, t.petalLength),
        width: absolute(intake.width, t.petalWidth),
        thickness: relative(intake.thickness, t.stripThickness),
        stopLift: absolute(intake.stopLift, t.stopLift),
        portArea: relative(intake.portArea, t.portArea),
      };
    case 'poppet': {
      const portDiameter = absolute(intake.portDiameter, t.poppetDiameter);
      return {
        ...intake,
        portDiameter,
        headDiameter: portDiameter + (intake.headDiameter - intake.portDiameter),
        lift: absolute(intake.lift, t.poppetLift),
        mass: relative(intake.mass, t.poppetMass),
        springRate: relative(intake.springRate, t.springRate),
        preload: relative(intake.preload, t.preload),
      };
    }
    case 'valveless':
      return intake;
  }
}
