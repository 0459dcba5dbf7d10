/**
 * A running engine carried over to a finer grid: the way to the limit cycle is computed coarsely, the cycle itself finely.
 *
 * The gas of each fine cell is read off the coarse cells' limited linear profiles of density, volume flow, pressure and
 * composition. The valve goes over as it moves, and the walls keep their temperature. What the coarse grid left out then grows
 * in by itself: the fine run goes on until its own cycles agree, and every audited figure is counted on the fine grid alone.
 */
import { type Flow, mixtureEnergy, mixtureGasConstant } from '../duct/flow.ts';
import { cellAt } from '../duct/grid.ts';
import { limitSlopes } from '../duct/limiter.ts';
import { recoverPrimitives, settleTemperatures } from '../duct/primitives.ts';
import { type Machine, makeMachine } from './machine.ts';

/**
 * A machine of the same engine with `cells` cells in the state of `coarse`, whose valve it takes: the coarse machine must not
 * run any more. The primitives of `coarse` are refreshed.
 */
export function refineMachine(coarse: Machine, cells: number): Machine {
  const fine = makeMachine(coarse.engine, coarse.constants, cells);
  recoverPrimitives(coarse.flow);
  carryGas(coarse.flow, fine.flow);
  carryWalls(coarse, fine);
  return { ...fine, valve: coarse.valve };
}

function carryGas(from: Flow, to: Flow): void {
  const n = from.grid.cells;
  const profiles = [from.density, from.pressure, from.volumeFlow, from.fuel, from.product, from.k, from.z].map(
    (values) => {
      const slopes = new Float64Array(n);
      limitSlopes(values, slopes, n);
      return { values, slopes };
    },
  );
  for (let i = 0; i < to.grid.cells; i++) {
    const { cell, offset } = place(from, to.grid.position[i]);
    const [density, pressure, flow, fuel, product, k, z] = profiles.map(
      ({ values, slopes }) => values[cell] + offset * slopes[cell],
    );
    const temperature = pressure / (density * mixtureGasConstant(to.gas, fuel, product));
    const velocity = (flow * to.grid.width[i]) / to.grid.volume[i];
    to.mass[i] = density;
    to.momentum[i] = density * velocity;
    to.energy[i] = density * (mixtureEnergy(to.gas, temperature, fuel, product) + 0.5 * velocity * velocity);
    to.fuelMass[i] = density * fuel;
    to.productMass[i] = density * product;
    to.turbulence[i] = density * k;
    to.progress[i] = density * z;
    to.temperature[i] = temperature;
  }
  settleTemperatures(to);
}

function carryWalls(from: Machine, to: Machine): void {
  for (let i = 0; i < to.flow.grid.cells; i++) {
    const { cell } = place(from.flow, to.flow.grid.position[i]);
    to.sources.wallTemperature[i] = from.sources.wallTemperature[cell];
  }
}

/** The cell of a flow at x, m, and how far from its middle that is, in cells. */
function place(flow: Flow, x: number): { cell: number; offset: number } {
  const { position, width } = flow.grid;
  const cell = cellAt(flow.grid, x);
  return { cell, offset: (x - position[cell]) / width[cell] };
}
