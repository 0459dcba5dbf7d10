/** What the duct holds, for the books, and how hot. */
import type { Flow } from '../duct/flow.ts';
import { L } from './ledger.ts';

/** Temperature of the hottest gas in the duct, K. */
export function hottestGas(flow: Flow): number {
  let hottest = 0;
  for (let i = 0; i < flow.grid.cells; i++) if (flow.temperature[i] > hottest) hottest = flow.temperature[i];
  return hottest;
}

/** Writes mass, energy and axial momentum of the gas into the running totals `now`; returns its highest temperature, K. */
export function noteHeld(flow: Flow, now: Float64Array): number {
  let mass = 0;
  let energy = 0;
  let momentum = 0;
  for (let i = 0; i < flow.grid.cells; i++) {
    const v = flow.grid.volume[i];
    mass += flow.mass[i] * v;
    energy += flow.energy[i] * v;
    momentum += flow.momentum[i] * v;
  }
  now[L.heldMass] = mass;
  now[L.heldEnergy] = energy;
  now[L.heldMomentum] = momentum;
  return hottestGas(flow);
}
