/**
 * Stress cycles of a poppet valve from its computed motion.
 *
 * A valve that meets seat or stop at speed v stores its energy in a soft disc and a stiff stem in series, so the force
 * that passes the stem is P = v √(m/c), with
 *   c_disc = (3+ν)/(1+ν) a²/(16 π D),  D = E t³/(12 (1−ν²))     centre load, edge resting on the seat (Timoshenko, Plates and Shells)
 *   c_stem = L/(E A)
 * and the disc bends at the stem's foot by σ = 3P/(2π t²) [(1+ν) ln(a/r) + 1].
 */
import type { PoppetIntake } from '../engine/engine.ts';
import type { ValveMotion } from '../engine/performance.ts';
import { machinedSurfaceFactor, WELDED_STEM_FACTOR } from './fatigue-factors.ts';
import { type FatigueSite, fatigueSite } from './fatigue-site.ts';
import { circularPlateStress } from './plate-bending.ts';
import { valueAt } from './property-table.ts';
import { VALVE_MATERIALS } from './valve-materials.ts';

/** What the drawing implies of the valve: head thickness and stem length, m; masses of head, stem and retainer, kg. */
export interface PoppetShape {
  headThickness: number;
  stemLength: number;
  headMass: number;
  stemMass: number;
  retainerMass: number;
}

/** Stress concentration of the fillet under the head, radius about a third of the stem (Peterson; from memory, medium). */
const FILLET = 1.4;

/** Compliance of a disc that rests on its edge and is loaded in the middle, m/N. */
export function discCompliance(modulus: number, poisson: number, radius: number, thickness: number): number {
  const stiffness = (modulus * thickness ** 3) / (12 * (1 - poisson * poisson));
  return (((3 + poisson) / (1 + poisson)) * (radius * radius)) / (16 * Math.PI * stiffness);
}

/** Force, N, of `mass` stopped from `speed` by a spring of `compliance`: energy balance. */
export function impactForce(speed: number, mass: number, compliance: number): number {
  return speed * Math.sqrt(mass / compliance);
}

/** Bending stress of the disc at the foot of a stem of `stemRadius` under centre force, Pa. */
export function discFootStress(
  force: number,
  poisson: number,
  radius: number,
  stemRadius: number,
  thickness: number,
): number {
  return ((3 * force) / (2 * Math.PI * thickness * thickness)) * ((1 + poisson) * Math.log(radius / stemRadius) + 1);
}

/** @param temperature of the head, K; the stem is taken as hot as the head, which is pessimistic. */
export function poppetSites(
  poppet: PoppetIntake,
  shape: PoppetShape,
  motion: ValveMotion,
  temperature: number,
): FatigueSite[] {
  const material = VALVE_MATERIALS[poppet.material];
  const modulus = valueAt(material.modulus, temperature);
  const { poisson } = material;
  const area = (Math.PI / 4) * poppet.stemDiameter ** 2;
  const radius = poppet.portDiameter / 2;
  const compliance =
    discCompliance(modulus, poisson, radius, shape.headThickness) + shape.stemLength / (modulus * area);
  const tail = shape.stemMass + shape.retainerMass + poppet.springMass / 3;
  const force = Math.max(
    impactForce(motion.seatImpactSpeed, tail, compliance),
    impactForce(motion.stopImpactSpeed, shape.headMass + shape.stemMass / 3, compliance),
  );
  const surface = machinedSurfaceFactor(valueAt(material.ultimate, 293.15));
  const joint = poppet.stemJoint === 'welded' ? WELDED_STEM_FACTOR : 1;
  const stem = (FILLET * force) / area;
  const foot = discFootStress(force, poisson, radius, poppet.stemDiameter / 2, shape.headThickness);
  const head = circularPlateStress(motion.peakSeatPressure, radius, shape.headThickness, poisson);
  const jointText = poppet.stemJoint === 'welded' ? ', at the weld' : '';
  const site = (id: string, where: string, maximum: number, minimum: number, reduction: number) =>
    fatigueSite(material, temperature, { id, where, maximum, minimum, reduction });
  return [
    site('stem', `in the stem under the head${jointText}`, stem, -stem, surface * joint),
    site('head', `in the head at the stem’s foot${jointText}`, foot, -foot, surface * joint),
    site('pressure', 'in the head under firing pressure', head, 0, surface),
  ];
}
