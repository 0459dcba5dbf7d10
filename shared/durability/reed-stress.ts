/** Stress cycles of a petal from its computed motion. */
import type { ReedIntake } from '../engine/engine.ts';
import type { ValveMotion } from '../engine/performance.ts';
import { EDGE_FACTOR, groundSurfaceFactor } from './fatigue-factors.ts';
import { type FatigueSite, fatigueSite } from './fatigue-site.ts';
import { stripImpactStress } from './impact-stress.ts';
import { rectangularPlateStress } from './plate-bending.ts';
import { valueAt } from './property-table.ts';
import { rootStressAgainstStop, stopRadius, wrapStress } from './stop-curvature.ts';
import { VALVE_MATERIALS } from './valve-materials.ts';

/** A petal rolls onto a curved stop: about half of the tip's speed is stopped at once. Common practice, no source. */
const STOP_SHARE = 0.5;
/**
 * The air film under a closing petal and its rolling contact soften the blow. Set so that a 1095 petal lives 10⁷ cycles at
 * about 8 m/s, the middle of the 6–10 m/s of compressor practice (from memory, confidence medium-low).
 */
const SEAT_SHARE = 0.8;
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
  const wrap = reachesStop ? wrapStress(modulus, t, stopRadius(length, stopLift)) : 0;
  const stopImpact = reachesStop
    ? STOP_SHARE * stripImpactStress(modulus, material.density, motion.stopImpactSpeed)
    : 0;
  const seatImpact = SEAT_SHARE * stripImpactStress(modulus, material.density, motion.seatImpactSpeed);
  const portWidth = PORT_SHARE * reed.width;
  return [
    site('root', 'at the root', rootStressAgainstStop(modulus, t, length, motion.peakLift, stopLift), 0),
    site('stop', 'over the stop', wrap + stopImpact, wrap - stopImpact),
    site(
      'port',
      'over the port',
      rectangularPlateStress(motion.peakSeatPressure, reed.portArea / portWidth, portWidth, t),
      0,
    ),
    site('seat', 'at the tip, striking the seat', seatImpact, -seatImpact),
  ];
}
