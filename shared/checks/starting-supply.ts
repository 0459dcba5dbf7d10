/** Starting air: what the start that worked took, in the terms of blowers and tanks. */
import { tankSeconds } from '../supply/air-tank.ts';
import type { Facts } from './facts.ts';

const AIR_GAS_CONSTANT = 287.05;
/** Free air of compressors is stated at about 20 °C and 1 atm, kg/m³. */
const FREE_AIR = 1.204;
/** A regulator and hose need this much above the pressure at the intake, Pa. Common practice, no source. */
export const HOSE_LOSS = 0.5e5;

/** Seconds that the stated tank blows at the start's flow; null when no tank is stated. */
export function secondsOfTank(facts: Facts): number | null {
  const { tank } = facts.brief.startingAir;
  if (tank === null || facts.start === null) return null;
  const { pressure, temperature } = facts.engine.site;
  const least = pressure + facts.start.airPressure + HOSE_LOSS;
  return tankSeconds(
    tank.volume,
    tank.pressure + pressure,
    least,
    temperature,
    facts.start.airFlow,
    tank.delivery * FREE_AIR,
  );
}

/** Free-air volume flow of the start, m³/s. */
export function freeAirFlow(airFlow: number, site: { pressure: number; temperature: number }): number {
  return airFlow / (site.pressure / (AIR_GAS_CONSTANT * site.temperature));
}
