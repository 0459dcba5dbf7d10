/** Flanges, bosses, brackets and stays. Sizes are common practice, no source. */
import type { Engine } from '../engine/engine.ts';
import { bellRadius } from './bell-pieces.ts';
import { centreline } from './centreline.ts';
import { densityOf } from './density.ts';
import type { Part } from './parts.ts';
import { flangeThickness, headFlange } from './proportions.ts';

/** Ring welded round the chamber's head, to which the valve plate is screwed. Valved engines only. */
export function flangeParts(engine: Engine): Part[] {
  if (engine.intake.kind === 'valveless') return [];
  const flange = headFlange(engine.sections[0].startDiameter, engine.shell.thickness);
  const area =
    (Math.PI / 4) * (flange.outerDiameter ** 2 - flange.innerDiameter ** 2 - flange.screws * flange.screw.hole ** 2);
  return [
    plate('head-flange', 'Head flange ring', engine.shell.material, 1, flange.thickness, {
      length: flange.outerDiameter,
      width: flange.outerDiameter,
      area,
    }),
  ];
}

/** Spark plug seat: M14 × 1.25 in a turned boss of 22 mm. Pressure tap: a boss of 12 mm. */
export const SPARK_BOSS = { diameter: 0.022, hole: 0.014, length: 0.012 };
export const TAP_BOSS = { diameter: 0.012, hole: 0.005, length: 0.015 };
/** Fuel lance or nozzle boss, for engines that inject into the duct. */
export const FUEL_BOSS = { diameter: 0.016, hole: 0.01, length: 0.015 };

/** Turned bosses that are welded into the chamber wall. */
export function bossParts(engine: Engine): Part[] {
  const parts = [
    bar('spark-boss', 'Spark plug boss', engine.shell.material, 1, SPARK_BOSS),
    bar('pressure-tap', 'Head pressure tap boss', engine.shell.material, 1, TAP_BOSS),
  ];
  if (engine.feed.mode !== 'premixed' || engine.intake.kind === 'valveless') {
    parts.push(bar('fuel-boss', 'Fuel nozzle boss', engine.shell.material, 1, FUEL_BOSS));
  }
  return parts;
}

/** Strap width, m, by the largest duct diameter. */
export function strapWidth(engine: Engine): number {
  return Math.min(0.04, Math.max(0.015, largestDiameter(engine) / 6));
}

export function largestDiameter(engine: Engine): number {
  return Math.max(...engine.sections.flatMap((s) => [s.startDiameter, s.endDiameter]));
}

/** Length of the flat blank of one mounting saddle: half the duct's girth and two feet. */
export function saddleLength(diameter: number, thickness: number, width: number): number {
  return (Math.PI / 2) * (diameter + 2 * thickness) + 2 * width;
}

/** Screw hole in the foot of a strap, and length of the sliding saddle's slots between arc centres over strap width, m. */
export const FOOT_HOLE = 0.0055;
const FOOT_AREA = (Math.PI / 4) * FOOT_HOLE ** 2;
export const SLOT_RATIO = 0.3;

/** Two saddles: one on the chamber, rigid; one on the tailpipe, sliding, so that the hot tube can grow. */
export function mountingParts(engine: Engine): Part[] {
  const width = strapWidth(engine);
  const thickness = flangeThickness(largestDiameter(engine));
  const tail = engine.sections.filter((s) => s.role === 'tailpipe').at(-1) ?? engine.sections.at(-1)!;
  return [
    strap('chamber-saddle', 'Chamber saddle, rigid', largestDiameter(engine), 0),
    strap(
      'tailpipe-saddle',
      'Tailpipe saddle, sliding',
      Math.max(tail.startDiameter, tail.endDiameter),
      SLOT_RATIO * width,
    ),
  ];

  function strap(id: string, name: string, diameter: number, slot: number): Part {
    const length = saddleLength(diameter, engine.shell.thickness, width);
    return flatStrap(id, name, 'low-carbon-steel', 1, thickness, length, width, 2 * (FOOT_AREA + slot * FOOT_HOLE));
  }
}

/** Distance between the two legs' centrelines of a U-bent engine, m; null for a straight one. */
export function legSpacing(engine: Engine): number | null {
  const path = centreline(engine);
  if (!path.some((p) => p.section.bend)) return null;
  return Math.abs(path.at(-1)!.end.y - path[0].start.y);
}

/** Two spacer straps between the legs of a U-bent engine. */
export function legBracketParts(engine: Engine): Part[] {
  const spacing = legSpacing(engine);
  if (spacing === null) return [];
  const width = strapWidth(engine);
  return [
    flatStrap(
      'leg-spacer',
      'Spacer between legs',
      engine.shell.material,
      2,
      flangeThickness(largestDiameter(engine)),
      spacing,
      width,
      0,
    ),
  ];
}

/** Three stays that hold the augmenter behind the exit, across gap and bell with a foot at each end. */
export function augmenterStayParts(engine: Engine): Part[] {
  if (!engine.augmenter) return [];
  const width = strapWidth(engine);
  const { gap, diameter } = engine.augmenter;
  const exit = engine.sections.at(-1)!.endDiameter;
  const reach = gap + bellRadius(diameter);
  const rise = Math.max(0, (diameter - exit) / 2);
  const length = Math.hypot(reach, rise) + 4 * width;
  return [
    flatStrap(
      'augmenter-stay',
      'Augmenter stay',
      engine.shell.material,
      3,
      flangeThickness(largestDiameter(engine)),
      length,
      width,
      2 * FOOT_AREA,
    ),
  ];
}

function flatStrap(
  id: string,
  name: string,
  material: string,
  count: number,
  thickness: number,
  length: number,
  width: number,
  openings: number,
): Part {
  return {
    ...plate(id, name, material, count, thickness, { length, width, area: length * width - openings }),
    kind: 'flat sheet',
  };
}

function plate(
  id: string,
  name: string,
  material: string,
  count: number,
  thickness: number,
  blank: { length: number; width: number; area: number },
): Part {
  return {
    id,
    name,
    kind: 'plate',
    material,
    count,
    thickness,
    blankLength: blank.length,
    blankWidth: blank.width,
    area: blank.area,
    mass: blank.area * thickness * densityOf(material),
  };
}

function bar(
  id: string,
  name: string,
  material: string,
  count: number,
  size: { diameter: number; hole: number; length: number },
): Part {
  return {
    id,
    name,
    kind: 'bar',
    material,
    count,
    thickness: size.diameter,
    blankLength: size.length,
    blankWidth: 0,
    area: 0,
    mass: (Math.PI / 4) * (size.diameter ** 2 - size.hole ** 2) * size.length * densityOf(material),
  };
}
