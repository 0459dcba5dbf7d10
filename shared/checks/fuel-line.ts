/** What stands between supply and nozzle: pressures that the fuel checks share. Pa absolute. */
import type { FuelSupply } from '../engine/brief.ts';
import type { Engine } from '../engine/engine.ts';
import type { RunningPerformance } from '../engine/performance.ts';
import { criticalRatio, jetDiameter, liquidJetDiameter, orificeFlux } from '../supply/orifice.ts';
import { compressibility, PROPANE, vapourPressure } from '../supply/propane.ts';

/** Petrol, kg/m³ at 15 °C (fuel tables). */
const PETROL_DENSITY = 740;
/** A regulator needs this much more than it gives. Common practice, no source. */
const REGULATOR_HEADROOM = 1.1;

export type Cylinder = Extract<FuelSupply, { kind: 'cylinder-vapour' | 'cylinder-liquid' }>;

export function isCylinder(supply: FuelSupply | null): supply is Cylinder {
  return supply !== null && (supply.kind === 'cylinder-vapour' || supply.kind === 'cylinder-liquid');
}

/** Pressure that the nozzle blows against: open air for premixed feeds, the mean inside the chamber otherwise. */
export function backPressure(engine: Engine, running: RunningPerformance): number {
  return engine.feed.mode === 'premixed' ? engine.site.pressure : running.meanPressure;
}

/** Pressure ahead of the jet with a full supply. */
export function jetPressure(supply: FuelSupply, engine: Engine): number {
  if (isCylinder(supply)) {
    const full = vapourPressure(engine.site.temperature);
    return supply.regulatorPressure === null ? full : Math.min(supply.regulatorPressure + engine.site.pressure, full);
  }
  return supply.kind === 'pressure-injection' ? supply.pressure + engine.site.pressure : engine.site.pressure;
}

/** Lowest cylinder pressure that still feeds the engine: the regulator's need, or a choked jet without a regulator. */
export function leastCylinderPressure(supply: Cylinder, engine: Engine, running: RunningPerformance): number {
  return supply.regulatorPressure === null
    ? backPressure(engine, running) / criticalRatio(PROPANE.gamma)
    : REGULATOR_HEADROOM * supply.regulatorPressure + engine.site.pressure;
}

/** Fuel on board, kg; null when the supply is not stated. */
export function fuelAboard(supply: FuelSupply | null): number | null {
  if (supply === null) return null;
  return isCylinder(supply) ? supply.capacity * supply.fill * supply.cylinders : supply.capacity;
}

/** Diameter of one drilled jet for the whole fuel flow, m; NaN when nothing drives it. */
export function jetFor(supply: FuelSupply, engine: Engine, running: RunningPerformance): number {
  const p0 = jetPressure(supply, engine);
  const back = backPressure(engine, running);
  if (supply.kind === 'carburettor' || p0 <= back) return Number.NaN;
  if (supply.fuel === 'petrol') return liquidJetDiameter(running.fuelFlow, p0 - back, PETROL_DENSITY);
  const t = engine.site.temperature;
  const flux = orificeFlux(p0, t, back, PROPANE.gamma, PROPANE.gasConstant, compressibility(p0, t));
  return jetDiameter(running.fuelFlow, flux);
}
