/** One engine made ready to run: grid, gas, ends, valve, fuel and regions of the duct. */
import { type CellSources, makeCellSources } from '../combustion/cell-sources.ts';
import { type InflowRegion, makeInflowRegion } from '../combustion/inflow.ts';
import { type End, openEnd, wall } from '../duct/boundary.ts';
import {
  type Flow,
  makeFlow,
  makeGasClosure,
  mixtureEnergy,
  mixtureGasConstant,
  mixtureHeatCapacity,
} from '../duct/flow.ts';
import { sectionStations } from '../duct/geometry.ts';
import { cellAt, makeGrid } from '../duct/grid.ts';
import { settleTemperatures } from '../duct/primitives.ts';
import { FUELS, type Fuel } from '../gas/fuels.ts';
import { type GasTable, makeGasTable } from '../gas/gas-table.ts';
import { makePoppetValve } from '../intake/poppet.ts';
import { makeReedValve } from '../intake/reed.ts';
import type { IntakeValve } from '../intake/valve.ts';
import type { ModelConstants } from './constants.ts';
import type { Engine } from './engine.ts';
import { spacing } from './resolution.ts';
import { acousticPeriod } from './start.ts';

/** Entry loss of a flared lip, dynamic heads (0.05–0.2; hydraulics handbooks). */
const FLARED_LIP_LOSS = 0.1;
/** Share of the inflow's dynamic head that enters an open end as turbulence energy (from memory, low confidence). */
const LIP_TURBULENCE = 0.05;

export interface Machine {
  engine: Engine;
  constants: ModelConstants;
  flow: Flow;
  sources: CellSources;
  left: End;
  right: End;
  valve: IntakeValve | null;
  /** Where inflow jets end. Fuel is injected there too: a nozzle sprays into the incoming air, which carries and mixes it. */
  jets: InflowRegion;
  fuel: Fuel;
  /** Fuel fraction of the inflow when premixed, else 0. */
  premixed: number;
  /** Enthalpy of the premixed inflow and of injected fuel, J/kg. */
  inflowEnthalpy: number;
  fuelEnthalpy: number;
  inflowGasConstant: number;
  inflowGamma: number;
  /** Cell whose pressure stands for the chamber. */
  monitor: number;
  /** s; only sets time scales. */
  period: number;
}

const tables = new Map<string, GasTable>();
function gasTable(fuel: Fuel['name']): GasTable {
  let t = tables.get(fuel);
  if (!t) {
    t = makeGasTable(fuel);
    tables.set(fuel, t);
  }
  return t;
}

/** Builds a machine with still ambient air in it. `cells` sets the resolution. */
export function makeMachine(engine: Engine, constants: ModelConstants, cells: number): Machine {
  const { intake, feed, site, sections } = engine;
  const valveless = intake.kind === 'valveless';
  const fuel = FUELS[feed.fuel];
  const gas = makeGasClosure(gasTable(feed.fuel));
  const stations = sectionStations(sections);
  const chamber = sections.findIndex((s) => s.role === 'chamber');
  const chamberFrom = stations[chamber];
  const chamberTo = stations[chamber + 1];
  const grid = makeGrid(sections, cells, valveless, true, spacing(engine));
  const flow = makeFlow(grid, gas, site.pressure, site.temperature);
  settleTemperatures(flow);

  const airR = mixtureGasConstant(gas, 0, 0);
  const airCv = mixtureHeatCapacity(gas, site.temperature, 0, 0);
  const ambient = {
    pressure: site.pressure,
    temperature: site.temperature,
    gasConstant: airR,
    gamma: 1 + airR / airCv,
    enthalpy: mixtureEnergy(gas, site.temperature, 0, 0) + airR * site.temperature,
  };
  const lip = (flared: boolean) => (flared ? FLARED_LIP_LOSS : constants.thinLipLoss);
  const flaredExit = sections[sections.length - 1].role === 'exit-flare';

  const fuelShare =
    feed.mode === 'premixed' ? feed.equivalenceRatio / (feed.equivalenceRatio + fuel.stoichiometricAirFuelRatio) : 0;
  const inflowR = mixtureGasConstant(gas, fuelShare, 0);
  const inflowCv = mixtureHeatCapacity(gas, site.temperature, fuelShare, 0);
  const fuelR = mixtureGasConstant(gas, 1, 0);

  const sources = makeCellSources(flow, constants, fuel, site.temperature);
  sources.chamberStart = cellAt(grid, chamberFrom + 1e-9);
  sources.chamberEnd = cellAt(grid, chamberTo - 1e-9) + 1;
  sources.sparkEnd = cellAt(grid, chamberFrom + 0.6 * (chamberTo - chamberFrom)) + 1;

  return {
    engine,
    constants,
    flow,
    sources,
    left: valveless ? openEnd(ambient, lip(intake.lip === 'flared'), LIP_TURBULENCE) : wall(),
    right: openEnd(ambient, lip(flaredExit), LIP_TURBULENCE),
    valve:
      intake.kind === 'reed'
        ? makeReedValve(intake, constants.reedDischarge)
        : intake.kind === 'poppet'
          ? makePoppetValve(intake)
          : null,
    jets: makeInflowRegion(flow, chamberFrom, constants.jetReach * sections[chamber].startDiameter),
    fuel,
    premixed: fuelShare,
    inflowEnthalpy: mixtureEnergy(gas, site.temperature, fuelShare, 0) + inflowR * site.temperature,
    fuelEnthalpy: mixtureEnergy(gas, site.temperature, 1, 0) + fuelR * site.temperature,
    inflowGasConstant: inflowR,
    inflowGamma: 1 + inflowR / inflowCv,
    monitor: valveless ? cellAt(grid, 0.5 * (chamberFrom + chamberTo)) : 0,
    period: acousticPeriod(sections, !valveless),
  };
}
