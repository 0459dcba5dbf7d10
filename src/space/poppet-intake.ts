/** Poppet valves: variables, and head, stem, spring and mass that follow from them. */
import { VALVE_MATERIALS } from '../../shared/durability/valve-materials.ts';
import type { Engine, PoppetIntake } from '../../shared/engine/engine.ts';
import { poppetLayout, poppetLengths } from '../../shared/fabrication/poppet-layout.ts';
import type { PoppetRanges } from '../config/study.ts';
import type { Coordinates, Values } from './coordinates.ts';
import { excess, type Objection } from './refusal.ts';
import { toTenthMillimetre, toThreeDigits } from './rounding.ts';
import { areaWords, lengthWords, millimetres } from './wording.ts';

/** Width of the seat: a twenty-fifth of the port, at least 1 mm. Stem: 0.15 of the head, 3 to 10 mm. Common practice, no source. */
const SEAT_SHARE = 0.04;
const LEAST_SEAT = 0.001;
const STEM_SHARE = 0.15;
/** Spring wound over three stem diameters with six active coils; shear modulus 81.5 GPa, ρ 7850 kg/m³ (EN 13906-1; memory, high). */
const COIL_OVER_STEM = 3;
const ACTIVE_COILS = 6;
const SHEAR_MODULUS = 81.5e9;
const WIRE_DENSITY = 7850;
/** Least ratio of coil to wire that can be wound (EN 13906-1 gives 4 to 20; memory, high). */
const LEAST_SPRING_INDEX = 4;
/** Spring force when shut over spring rate times lift; common practice, no source. */
const PRELOAD_SHARE = 0.1;

export function addPoppetVariables(coordinates: Coordinates, ranges: PoppetRanges): void {
  const poppet = (engine: Engine | null) => (engine?.intake.kind === 'poppet' ? engine.intake : null);
  coordinates.integer('valves', 'number of poppets', ranges.valves);
  coordinates.real('port-ratio', 'port area over tailpipe area', ranges.portRatio, '', (value, engine) => {
    const intake = poppet(engine);
    return intake === null
      ? value.toFixed(2)
      : `${value.toFixed(2)}: ${areaWords((intake.valves * Math.PI * intake.portDiameter ** 2) / 4)}`;
  });
  coordinates.real('lift-ratio', 'lift over head diameter', ranges.liftRatio, '', (value, engine) => {
    const intake = poppet(engine);
    return intake === null ? value.toFixed(2) : `${value.toFixed(2)}: ${lengthWords(intake.lift)}`;
  });
  coordinates.real(
    'spring-frequency',
    'natural frequency of valve and spring',
    ranges.springFrequency,
    'Hz',
    (value, engine) => {
      const intake = poppet(engine);
      return intake === null
        ? `${value.toFixed(0)} Hz`
        : `${value.toFixed(0)} Hz: ${(intake.springRate / 1000).toPrecision(3)} N/mm`;
    },
  );
  coordinates.real('head-thickness', 'thickness of the head', ranges.headThickness, 'm', (value) =>
    lengthWords(toTenthMillimetre(value)),
  );
  coordinates.choice('valve-material', 'valve material', ranges.materials);
  coordinates.choice('stem-joint', 'stem to head', ranges.stemJoints);
}

/** The intake for that port area; mass and spring follow from the sizes, k = (2π f)² (m + m_spring/3). */
export function poppetIntake(
  values: Values,
  ranges: PoppetRanges,
  tailDiameter: number,
  chamberDiameter: number,
): PoppetIntake {
  const valves = values('valves');
  const material = ranges.materials[values('valve-material')];
  const portDiameter = toTenthMillimetre(tailDiameter * Math.sqrt(values('port-ratio') / valves));
  const headDiameter = toTenthMillimetre(portDiameter + 2 * Math.max(LEAST_SEAT, SEAT_SHARE * portDiameter));
  const stemDiameter = Math.round(Math.min(0.01, Math.max(0.003, STEM_SHARE * headDiameter)) * 2000) / 2000;
  const lift = Math.max(0.0005, toTenthMillimetre(values('lift-ratio') * headDiameter));
  const headThickness = toTenthMillimetre(values('head-thickness'));
  const headMass = VALVE_MATERIALS[material].density * (Math.PI / 4) * headDiameter ** 2 * headThickness;
  const omega = 2 * Math.PI * values('spring-frequency');
  const intake: PoppetIntake = {
    kind: 'poppet',
    valves,
    headDiameter,
    portDiameter,
    lift,
    mass: headMass,
    stemDiameter,
    springMass: 0.1 * headMass,
    springRate: omega ** 2 * headMass,
    preload: 0,
    material,
    stemJoint: ranges.stemJoints[values('stem-joint')],
    axis: 'horizontal',
  };
  settleMassAndSpring(intake, headMass, omega, chamberDiameter);
  return intake;
}

/** Stem length depends on the spring and the spring on the moving mass: a few rounds settle both. */
function settleMassAndSpring(intake: PoppetIntake, headMass: number, omega: number, chamberDiameter: number): void {
  const coil = COIL_OVER_STEM * intake.stemDiameter;
  for (let round = 0; round < 12; round++) {
    const rate = omega ** 2 * (intake.mass + intake.springMass / 3);
    intake.springRate = toThreeDigits(rate);
    const wire = ((8 * coil ** 3 * ACTIVE_COILS * rate) / SHEAR_MODULUS) ** 0.25;
    intake.springMass = toThreeDigits((WIRE_DENSITY * Math.PI ** 2 * wire ** 2 * coil * ACTIVE_COILS) / 4);
    intake.preload = toThreeDigits(PRELOAD_SHARE * rate * intake.lift);
    // A generous mass in the question makes stem and retainer come out solid; the head's own mass is ours to say.
    const { stemMass, retainerMass } = poppetLengths(plateOnly(chamberDiameter), {
      ...intake,
      mass: 100 * headMass + 1,
    });
    intake.mass = toThreeDigits(headMass + stemMass + retainerMass);
  }
}

/** The lengths of a valve ask only for the plate that it sits in. */
function plateOnly(chamberDiameter: number): Engine {
  return { sections: [{ startDiameter: chamberDiameter }] } as Engine;
}

/** Heads that do not fit on the plate, or springs that cannot be wound. */
export function poppetFit(engine: Engine, intake: PoppetIntake): (Objection | null)[] {
  const plate = engine.sections[0].startDiameter;
  const { enclosingRadius } = poppetLayout(engine, intake);
  const room = plate / 2 - 0.001;
  const coil = COIL_OVER_STEM * intake.stemDiameter;
  const wire = ((8 * coil ** 3 * ACTIVE_COILS * intake.springRate) / SHEAR_MODULUS) ** 0.25;
  return [
    excess(
      'poppets-fit-plate',
      enclosingRadius,
      room,
      () =>
        `${intake.valves} heads of ${millimetres(intake.headDiameter)} mm need a plate of ${millimetres(2 * enclosingRadius)} mm and the chamber offers ${millimetres(2 * room)} mm; take less port area or a wider chamber.`,
    ),
    excess(
      'spring-can-be-wound',
      wire,
      coil / LEAST_SPRING_INDEX,
      () =>
        `The spring would need ${millimetres(wire)} mm wire on a ${millimetres(coil)} mm coil, too stiff to wind; take a lower natural frequency or a lighter valve.`,
    ),
  ];
}
