/** What the duct holds, for the books. */
import type { Flow } from '../duct/flow.ts';
import { L } from './ledger.ts';

/** Writes mass, energy and axial momentum of the gas into the running totals `now`; returns its highest temperature, K. */
export function noteHeld(flow: Flow, now: Float64Array): number {
  let mass = 0;
  let energy = 0;
  let momentum = 0;
  let hottest = 0;
  for (let i = 0; i < flow.grid.cells; i++) {
    const v = flow.grid.volume[i];
    mass += flow.mass[i] * v;
    energy += flow.energy[i] * v;
    momentum += flow.momentum[i] * v;
    if (flow.temperature[i] > hottest) hottest = flow.temperature[i];
  }
  now[L.heldMass] = mass;
  now[L.heldEnergy] = energy;
  now[L.heldMomentum] = momentum;
  return hottest;
}
