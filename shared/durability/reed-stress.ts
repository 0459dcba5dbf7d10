/**
 * Stress cycles of a petal from its computed motion: once a period it is bent onto its stop and thrown back on its seat.
 *
 * Seat. The petal lands along its whole length; what lies over the port is held by the rim and goes on at its own speed, so
 * the velocity–stress relation counts in full. With the tumbled edges of compressor reeds this gives AISI 1095 10⁷ cycles
 * at 7 m/s, inside the 6–10 m/s of compressor practice (from memory, confidence medium-low); nothing is fitted.
 * Stop. The petal rolls onto the arc and its free tip arrives last: a free end bears `FREE_END_SHARE` of that relation.
 * Between. Bending waves from the seat run through the whole petal, so the place over the stop sees both ends of the period.
 */
import type { ReedIntake } from '../engine/engine.ts';
import type { ValveMotion } from '../engine/performance.ts';
import { EDGE_FACTOR, groundSurfaceFactor } from './fatigue-factors.ts';
import { type FatigueSite, fatigueSite } from './fatigue-site.ts';
import { FREE_END_SHARE, stripImpactStress } from './impact-stress.ts';
import { rectangularPlateStress } from './plate-bending.ts';
import { valueAt } from './property-table.ts';
import { rootStressAgainstStop, stopRadius, wrapStress } from './stop-curvature.ts';
import { VALVE_MATERIALS } from './valve-materials.ts';

/** Width of the port over width of the petal. Common practice, no source. */
const PORT_SHARE = 0.8;

/**
 * The four places where petals crack: at the root, over the stop, over the port, and at the tip that strikes the seat.
 * @param temperature of the petal, K
 */
export function reedSites(reed: ReedIntake, motion: ValveMotion, temperature: number): FatigueSite[] {
  const material = VALVE_MATERIALS[reed.material];
  const modulus = valueAt(material.modulus, temperature);
  const { thickness: t, length, stopLift } = reed;
  const reduction = groundSurfaceFactor(valueAt(material.ultimate, 293.15)) * EDGE_FACTOR.stoned;
  const site = (id: string, where: string, maximum: number, minimum: number) =>
    fatigueSite(material, temperature, { id, where, maximum, minimum, reduction });
  const reachesStop = motion.peakLift >= 0.98 * stopLift;
  const seatImpact = stripImpactStress(modulus, material.density, motion.seatImpactSpeed);
  const wrap = reachesStop ? wrapStress(modulus, t, stopRadius(length, stopLift)) : 0;
  const stopImpact = reachesStop
    ? FREE_END_SHARE * stripImpactStress(modulus, material.density, motion.stopImpactSpeed)
    : 0;
  const overStop = reachesStop
    ? { maximum: Math.max(wrap + stopImpact, seatImpact), minimum: Math.min(wrap - stopImpact, -seatImpact) }
    : { maximum: 0, minimum: 0 };
  const portWidth = PORT_SHARE * reed.width;
  return [
    site('root', 'at the root', rootStressAgainstStop(modulus, t, length, motion.peakLift, stopLift), 0),
    site('stop', 'over the stop', overStop.maximum, overStop.minimum),
    site(
      'port',
      'over the port',
      rectangularPlateStress(motion.peakSeatPressure, reed.portArea / portWidth, portWidth, t),
      0,
    ),
    site('seat', 'at the tip, striking the seat', seatImpact, -seatImpact),
  ];
}
