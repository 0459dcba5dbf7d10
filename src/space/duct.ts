/** Chamber, cone and tailpipe: their variables and the sections that follow. Shared by every architecture. */
import type { Engine, Section } from '../../shared/engine/engine.ts';
import type { GeometryRanges } from '../config/study.ts';
import type { Coordinates, Values } from './coordinates.ts';
import type { Objection } from './refusal.ts';
import { toHalfMillimetre } from './rounding.ts';
import { angleWords, lengthWords, millimetres } from './wording.ts';

/** Half-angle of an exit flare, rad; common practice, no source. */
const FLARE_ANGLE = (5 * Math.PI) / 180;
/** A flare that widens the exit by less is left away, m. */
const LEAST_FLARE = 0.002;
/** Shortest stretch that is worth a seam, m. */
const SHORTEST_STRETCH = 0.01;

/** Dimensions of the duct behind the head, rounded, m. */
export interface DuctDimensions {
  chamberDiameter: number;
  chamberLength: number;
  coneLength: number;
  tailDiameter: number;
  /** Along the centreline from cone to exit, with bend and flare. */
  tailLength: number;
  exitDiameter: number;
  /** 0: no flare. */
  flareLength: number;
}

export function addDuctVariables(coordinates: Coordinates, ranges: GeometryRanges): void {
  const role = (name: Section['role']) => (engine: Engine | null) =>
    engine?.sections.find((section) => section.role === name);
  const chamber = role('chamber');
  const cone = role('chamber-cone');
  const tail = role('tailpipe');
  const ratioWith = (words: (engine: Engine) => string) => (value: number, engine: Engine | null) =>
    engine === null ? value.toFixed(2) : `${value.toFixed(2)}: ${words(engine)}`;

  coordinates.real('chamber-diameter', 'chamber diameter', ranges.chamberDiameter, 'm', (value) =>
    lengthWords(toHalfMillimetre(value)),
  );
  coordinates.real(
    'chamber-aspect',
    'chamber length over diameter',
    ranges.chamberAspect,
    '',
    ratioWith((engine) => lengthWords(chamber(engine)?.length ?? 0)),
  );
  coordinates.real('cone-angle', 'half-angle of the cone', ranges.coneAngle, 'rad', (value, engine) => {
    const length = cone(engine)?.length;
    return length === undefined ? angleWords(value) : `${angleWords(value)}: ${lengthWords(length)} long`;
  });
  coordinates.real(
    'tailpipe-ratio',
    'tailpipe diameter over chamber diameter',
    ranges.tailpipeRatio,
    '',
    ratioWith((engine) => lengthWords(tail(engine)?.startDiameter ?? 0)),
  );
  coordinates.real(
    'tailpipe-aspect',
    'tailpipe length over diameter',
    ranges.tailpipeAspect,
    '',
    ratioWith((engine) => lengthWords(tailLengthOf(engine))),
  );
  coordinates.real(
    'exit-flare',
    'exit diameter over tailpipe diameter',
    ranges.exitFlare,
    '',
    ratioWith((engine) => lengthWords(engine.sections[engine.sections.length - 1].endDiameter)),
  );
}

/** Rounded dimensions, or why there can be none. */
export function ductDimensions(values: Values): DuctDimensions | Objection {
  const chamberDiameter = toHalfMillimetre(values('chamber-diameter'));
  const tailDiameter = toHalfMillimetre(values('tailpipe-ratio') * chamberDiameter);
  const step = (chamberDiameter - tailDiameter) / 2;
  if (step < 0.001) {
    return {
      constraint: 'tailpipe-narrower-than-chamber',
      violation: (0.001 - step) / chamberDiameter,
      sentence: `The tailpipe (${millimetres(tailDiameter)} mm) is as wide as the chamber (${millimetres(chamberDiameter)} mm) or wider; choose a smaller tailpipe.`,
    };
  }
  const wantedExit = toHalfMillimetre(values('exit-flare') * tailDiameter);
  const exitDiameter = wantedExit - tailDiameter < LEAST_FLARE ? tailDiameter : wantedExit;
  return {
    chamberDiameter,
    chamberLength: toHalfMillimetre(values('chamber-aspect') * chamberDiameter),
    coneLength: Math.max(SHORTEST_STRETCH, toHalfMillimetre(step / Math.tan(values('cone-angle')))),
    tailDiameter,
    tailLength: toHalfMillimetre(values('tailpipe-aspect') * tailDiameter),
    exitDiameter,
    flareLength: toHalfMillimetre((exitDiameter - tailDiameter) / 2 / Math.tan(FLARE_ANGLE)),
  };
}

/** Chamber and cone. */
export function chamberSections({
  chamberDiameter,
  chamberLength,
  coneLength,
  tailDiameter,
}: DuctDimensions): Section[] {
  return [
    { role: 'chamber', length: chamberLength, startDiameter: chamberDiameter, endDiameter: chamberDiameter },
    { role: 'chamber-cone', length: coneLength, startDiameter: chamberDiameter, endDiameter: tailDiameter },
  ];
}

/** Tailpipe with its bend (U) and flare; `bendRadius` null: straight. */
export function tailSections(duct: DuctDimensions, bendRadius: number | null): Section[] | Objection {
  const { tailDiameter: d, tailLength, exitDiameter, flareLength } = duct;
  const stretch = (length: number): Section => ({
    role: 'tailpipe',
    length: toHalfMillimetre(length),
    startDiameter: d,
    endDiameter: d,
  });
  const flare: Section[] =
    flareLength > 0 ? [{ role: 'exit-flare', length: flareLength, startDiameter: d, endDiameter: exitDiameter }] : [];
  const bendLength = bendRadius === null ? 0 : Math.PI * bendRadius;
  const beforeBend = bendRadius === null ? 0 : Math.max(SHORTEST_STRETCH, toHalfMillimetre(d / 2));
  const last = tailLength - flareLength - bendLength - beforeBend;
  const least = Math.max(SHORTEST_STRETCH, d / 2);
  if (last < least) {
    const needed = tailLength - last + least;
    return {
      constraint: 'tailpipe-length',
      violation: needed / tailLength - 1,
      sentence: `A tailpipe of ${millimetres(tailLength)} mm is too short for its ${bendRadius === null ? 'flare' : 'bend and flare'}, which need ${millimetres(needed)} mm; lengthen it.`,
    };
  }
  if (bendRadius === null) return [stretch(last), ...flare];
  const bend: Section = {
    role: 'bend',
    length: bendLength,
    startDiameter: d,
    endDiameter: d,
    bend: { angle: Math.PI, radius: bendRadius },
  };
  return [stretch(beforeBend), bend, stretch(last), ...flare];
}

/** Length of the tail behind the cone, m. */
function tailLengthOf(engine: Engine): number {
  const cone = engine.sections.findIndex((section) => section.role === 'chamber-cone');
  return engine.sections.slice(cone + 1).reduce((sum, section) => sum + section.length, 0);
}

export function isObjection(value: object): value is Objection {
  return 'constraint' in value;
}
