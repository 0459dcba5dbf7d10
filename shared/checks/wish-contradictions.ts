/**
 * Wishes of a brief that no engine can meet, whatever its shape: from the brief and the air alone, before any design is run.
 * Bounds are generous: best figures that published engines reach, so that a sentence here is never a matter of taste.
 */
import { fatigueCycles } from '../durability/basquin.ts';
import { EDGE_FACTOR, groundSurfaceFactor } from '../durability/fatigue-factors.ts';
import { stripImpactStress } from '../durability/impact-stress.ts';
import { valueAt } from '../durability/property-table.ts';
import { VALVE_MATERIALS } from '../durability/valve-materials.ts';
import type { Brief } from '../engine/brief.ts';
import type { Site } from '../engine/engine.ts';
import { FUELS } from '../gas/fuels.ts';
import { greatestDraw } from '../supply/cylinder-evaporation.ts';
import { cylinderGeometry } from '../supply/cylinder-geometry.ts';
import { vapourPressure } from '../supply/propane.ts';
import { isCylinder } from './fuel-line.ts';
import { bar, celsius, duration, litresPerSecond, metres, newtons, perHour } from './say.ts';

/** Thriftiest published pulsejets with augmenter, 1.5 lb/(lbf·h), in kg/(N s). From common practice 1.75, with room. */
const BEST_TSFC = 4.25e-5;
/** Thrust over exit area of published engines is 20–25 kPa; the best augmenters give 1.8 (NASA/TM-2002-211711). Pa. */
const MOST_THRUST_PER_AREA = 25e3 * 1.8;
/**
 * Blow on the seat below which no petal of a running engine stays, m/s: what compressor practice calls safe (from memory,
 * confidence medium-low). And the slowest cycle of published engines, Hz. Edges are stoned, strip is cold: all in favour.
 */
const GENTLEST_IMPACT = 5;
const SLOWEST = 40;
const ROOM = 293.15;
const AIR_GAS_CONSTANT = 287.05;
const RICHEST = 1.2;

/** Sentences; empty when nothing contradicts. Pure; throws nothing. */
export function wishContradictions(brief: Brief, site: Site): string[] {
  return [
    ...thrustInDiameter(brief),
    ...longerThanAnyStrip(brief),
    ...regulatorAboveCylinder(brief, site),
    ...lessVapourThanThrustNeeds(brief, site),
    ...lessAirThanStoichiometryNeeds(brief, site),
  ];
}

function thrustInDiameter({ wanted: { thrust, maxDiameter } }: Brief): string[] {
  if (thrust === null || maxDiameter === null) return [];
  const most = (MOST_THRUST_PER_AREA * Math.PI * maxDiameter ** 2) / 4;
  if (thrust <= most) return [];
  return [
    `${newtons(thrust)} does not come out of ${metres(maxDiameter)}: the best published engines with the best augmenters would give ${newtons(most)} from that circle.`,
  ];
}

function longerThanAnyStrip({ wanted: { endurance }, strips }: Brief): string[] {
  if (endurance === null || strips.length === 0) return [];
  const lives = strips.map(({ material: id }) => {
    const material = VALVE_MATERIALS[id];
    const stress = stripImpactStress(valueAt(material.modulus, ROOM), material.density, GENTLEST_IMPACT);
    const reduction = groundSurfaceFactor(valueAt(material.ultimate, ROOM)) * EDGE_FACTOR.stoned;
    return fatigueCycles(material.fatigue, stress, reduction) / SLOWEST;
  });
  const longest = Math.max(...lives);
  if (endurance <= longest) return [];
  return [
    `${duration(endurance)} is longer than any strip in stock can give: at ${SLOWEST} Hz and a gentle ${GENTLEST_IMPACT} m/s on the seat the best lasts about ${duration(longest)}. Plan to change valves, or go valveless.`,
  ];
}

function regulatorAboveCylinder({ supply }: Brief, site: Site): string[] {
  if (!isCylinder(supply) || supply.regulatorPressure === null) return [];
  const inside = vapourPressure(site.temperature) - site.pressure;
  if (supply.regulatorPressure <= inside) return [];
  return [
    `The regulator is set to ${bar(supply.regulatorPressure)}, but propane at ${celsius(site.temperature)} stands at ${bar(inside)} gauge.`,
  ];
}

function lessVapourThanThrustNeeds({ supply, wanted: { thrust, endurance } }: Brief, site: Site): string[] {
  if (thrust === null || endurance === null || !isCylinder(supply) || supply.kind !== 'cylinder-vapour') return [];
  const least = (supply.regulatorPressure ?? 0.5e5) + site.pressure;
  const each = greatestDraw(
    cylinderGeometry(supply.capacity),
    supply.capacity,
    supply.fill,
    site.temperature,
    endurance,
    least,
  );
  const most = each * supply.cylinders;
  const need = thrust * BEST_TSFC;
  if (need <= most) return [];
  return [
    `${newtons(thrust)} takes at least ${perHour(need)} of propane, and ${supply.cylinders} cylinder(s) at ${celsius(site.temperature)} boil off ${perHour(most)} for ${duration(endurance)}: draw liquid, or couple more.`,
  ];
}

function lessAirThanStoichiometryNeeds({ supply, wanted: { thrust } }: Brief, site: Site): string[] {
  if (thrust === null || supply?.kind !== 'carburettor') return [];
  const density = site.pressure / (AIR_GAS_CONSTANT * site.temperature);
  const need = (thrust * BEST_TSFC * FUELS[supply.fuel].stoichiometricAirFuelRatio) / RICHEST / density;
  if (need <= supply.ratedFlow) return [];
  return [
    `${newtons(thrust)} takes at least ${litresPerSecond(need)} of air to burn its petrol, and the carburettor is rated ${litresPerSecond(supply.ratedFlow)}.`,
  ];
}
