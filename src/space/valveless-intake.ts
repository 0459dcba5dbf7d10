/** Valveless engines: the intake pipe before the chamber, and the U bend that turns the tail back. */
import type { Engine, Section, ValvelessIntake } from '../../shared/engine/engine.ts';
import type { IntakeChoice, ValvelessRanges } from '../config/study.ts';
import type { Coordinates, Values } from './coordinates.ts';
import type { DuctDimensions } from './duct.ts';
import type { Objection } from './refusal.ts';
import { toHalfMillimetre, upToHalfMillimetre } from './rounding.ts';
import { lengthWords, millimetres } from './wording.ts';

/** Half-angle of the cone between intake pipe and chamber, rad; common practice, no source. */
const INTAKE_CONE_ANGLE = Math.PI / 6;
/** Air between the two legs of a U, m, and tightest centreline radius over pipe diameter for mitred bends; common practice, no source. */
const LEG_CLEARANCE = 0.02;
const TIGHTEST_BEND = 1;

export function addValvelessVariables(coordinates: Coordinates, ranges: ValvelessRanges): void {
  const intake = (engine: Engine | null) => engine?.sections[0];
  coordinates.real(
    'intake-ratio',
    'intake diameter over tailpipe diameter',
    ranges.intakeRatio,
    '',
    (value, engine) => {
      const pipe = intake(engine);
      return pipe ? `${value.toFixed(2)}: ${lengthWords(pipe.startDiameter)}` : value.toFixed(2);
    },
  );
  coordinates.real('intake-aspect', 'intake length over diameter', ranges.intakeAspect, '', (value, engine) => {
    const pipe = intake(engine);
    return pipe ? `${value.toFixed(2)}: ${lengthWords(pipe.length)}` : value.toFixed(2);
  });
  coordinates.choice('lip', 'lip of the intake', ranges.lips);
}

export function valvelessIntake(values: Values, ranges: ValvelessRanges, choice: IntakeChoice): ValvelessIntake {
  return { kind: 'valveless', lip: ranges.lips[values('lip')], mouth: choice === 'valveless-u' ? 'aft' : 'forward' };
}

/** Intake pipe and its cone, or why there can be none. */
export function intakeSections(values: Values, duct: DuctDimensions): Section[] | Objection {
  const diameter = toHalfMillimetre(values('intake-ratio') * duct.tailDiameter);
  const step = (duct.chamberDiameter - diameter) / 2;
  if (step < 0.001) {
    return {
      constraint: 'intake-narrower-than-chamber',
      violation: (0.001 - step) / duct.chamberDiameter,
      sentence: `The intake pipe (${millimetres(diameter)} mm) is as wide as the chamber (${millimetres(duct.chamberDiameter)} mm) or wider; choose a smaller one.`,
    };
  }
  const length = toHalfMillimetre(values('intake-aspect') * diameter);
  const coneLength = Math.max(0.005, toHalfMillimetre(step / Math.tan(INTAKE_CONE_ANGLE)));
  return [
    { role: 'intake', length, startDiameter: diameter, endDiameter: diameter },
    { role: 'intake-cone', length: coneLength, startDiameter: diameter, endDiameter: duct.chamberDiameter },
  ];
}

/** Smallest centreline radius at which the tail clears the chamber, m. */
export function bendRadius(duct: DuctDimensions, shellThickness: number): number {
  const legs = (duct.chamberDiameter + duct.exitDiameter) / 2 + 2 * shellThickness + LEG_CLEARANCE;
  return upToHalfMillimetre(Math.max(TIGHTEST_BEND * duct.tailDiameter, legs / 2));
}
