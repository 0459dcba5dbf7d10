/** A check held against a figure from outside the project. */
import { assess } from '../../../shared/checks/assess.ts';
import type { Check, CheckInput } from '../../../shared/checks/check.ts';
import type { Change } from '../scenario-kit.ts';

export interface Handbook {
  /** Where the expected figure comes from. */
  source: string;
  /** What the check answers, made comparable with the figure. */
  found: () => number;
  low: number;
  high: number;
}

/** Within a relative `tolerance` of a figure. */
export function near(source: string, expected: number, found: () => number, tolerance = 1e-6): Handbook {
  const room = Math.abs(expected) * tolerance;
  return { source, found, low: expected - room, high: expected + room };
}

export function between(source: string, low: number, high: number, found: () => number): Handbook {
  return { source, found, low, high };
}

export function checkOf(input: CheckInput, id: string): Check {
  const check = assess(input).checks.find((c) => c.id === id);
  if (check === undefined || check.value === null || check.limit === null) {
    throw new Error(`${id} was not judged: ${check?.sentence}`);
  }
  return check;
}

export const figureOf = (input: CheckInput, id: string): number => checkOf(input, id).value!;
export const limitOf = (input: CheckInput, id: string): number => checkOf(input, id).limit!;

export const STANDARD_AIR = 101325;

/** Every wall at one temperature, K, and the same pressures everywhere, Pa gauge. */
export const shellAt =
  (kelvin: number, peakGauge: number, suction = 0): Change =>
  (input, { profile }) => {
    const { pressure } = input.engine.site;
    profile.wallTemperature = profile.wallTemperature.map(() => kelvin);
    profile.peakPressure = profile.peakPressure.map(() => pressure + peakGauge);
    profile.lowestPressure = profile.lowestPressure.map(() => pressure - suction);
  };

/** A plain tube, so that a textbook formula holds all along. m. */
export const tube =
  (diameter: number, length: number, thickness: number): Change =>
  (input, { profile }) => {
    input.engine.sections = [{ role: 'chamber', length, startDiameter: diameter, endDiameter: diameter }];
    input.engine.shell.thickness = thickness;
    const cells = profile.position.length;
    profile.position = profile.position.map((_, i) => ((i + 0.5) * length) / cells);
    profile.diameter = profile.diameter.map(() => diameter);
  };

export const all =
  (...changes: Change[]): Change =>
  (input, running) => {
    for (const change of changes) change(input, running);
  };
