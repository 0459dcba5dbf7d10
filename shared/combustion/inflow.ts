/**
 * Air and fuel that enter the chamber as jets, spread over the length that the jets reach.
 *
 * Each kilogram brings its total enthalpy, its axial momentum and part of its kinetic energy as turbulence; gas that flows
 * back through open valves leaves with what the cells hold.
 */
import type { Flow } from '../duct/flow.ts';
import { cellAt } from '../duct/grid.ts';

/** Share of the jets' momentum that points along the axis (petals and heads deflect the rest; common practice, no source). */
const AXIAL_SHARE = 0.5;

export interface InflowRegion {
  /** First cell and share of the source in each following cell; shares add to 1. */
  first: number;
  share: Float64Array;
}

/** Equal source per metre from x = `from` over `reach` metres (at least one cell). */
export function makeInflowRegion(flow: Flow, from: number, reach: number): InflowRegion {
  const { cells, face } = flow.grid;
  const share: number[] = [];
  const to = from + Math.max(reach, flow.grid.width[cellAt(flow.grid, from)]);
  let first = -1;
  for (let i = 0; i < cells; i++) {
    const lo = Math.max(from, face[i]);
    const hi = Math.min(to, face[i + 1]);
    if (hi <= lo) continue;
    if (first < 0) first = i;
    share.push(hi - lo);
  }
  const total = share.reduce((a, b) => a + b, 0);
  return { first, share: Float64Array.from(share, (s) => s / total) };
}

/** What crossed the inflow region in the last call; mass and energy positive into the duct. */
export interface InflowTotals {
  mass: number;
  air: number;
  fuel: number;
  energy: number;
  momentum: number;
}

/** Adds `mass` kg of gas with enthalpy J/kg, fuel fraction, jet speed m/s; jetTurbulence is the share of u²/2 that becomes k. */
export function addJets(
  flow: Flow,
  region: InflowRegion,
  mass: number,
  enthalpy: number,
  fuel: number,
  jet: number,
  jetTurbulence: number,
  out: InflowTotals,
): void {
  const { volume } = flow.grid;
  const k = jetTurbulence * 0.5 * jet * jet;
  for (let n = 0; n < region.share.length; n++) {
    const i = region.first + n;
    const m = (mass * region.share[n]) / volume[i];
    flow.mass[i] += m;
    flow.fuelMass[i] += m * fuel;
    flow.energy[i] += m * enthalpy;
    flow.momentum[i] += m * AXIAL_SHARE * jet;
    flow.turbulence[i] += m * k;
  }
  out.mass = mass;
  out.fuel = mass * fuel;
  out.air = mass * (1 - fuel);
  out.energy = mass * enthalpy;
  out.momentum = mass * AXIAL_SHARE * jet;
}

/** Takes `mass` kg out of the region with each cell's own composition and total enthalpy. */
export function drawBack(flow: Flow, region: InflowRegion, mass: number, out: InflowTotals): void {
  const { volume } = flow.grid;
  out.mass = out.air = out.fuel = out.energy = out.momentum = 0;
  for (let n = 0; n < region.share.length; n++) {
    const i = region.first + n;
    const part = mass * region.share[n];
    const f = part / (volume[i] * flow.mass[i]);
    const fuel = f * flow.fuelMass[i] * volume[i];
    const product = f * flow.productMass[i] * volume[i];
    const energy = f * (flow.energy[i] + flow.pressure[i]) * volume[i];
    const momentum = f * flow.momentum[i] * volume[i];
    flow.mass[i] *= 1 - f;
    flow.momentum[i] *= 1 - f;
    flow.energy[i] -= energy / volume[i];
    flow.fuelMass[i] *= 1 - f;
    flow.productMass[i] *= 1 - f;
    flow.turbulence[i] *= 1 - f;
    flow.progress[i] *= 1 - f;
    out.mass -= part;
    out.fuel -= fuel;
    out.air -= part - fuel - product;
    out.energy -= energy;
    out.momentum -= momentum;
  }
}

/**
 * A jet from an open intake pipe runs through the first chamber cells and ends along its reach: of what entered the region
 * through its first face during the last dt seconds, each later cell's share is taken out of the first cell and put there, with
 * the enthalpy, momentum, turbulence and scalars that the flux step reconstructed on the pipe's side of that face. So the fresh
 * charge is the same on any grid: taken from what the first cell holds, it would be the more diluted the coarser the grid.
 * Conserves everything.
 */
export function carryJet(flow: Flow, region: InflowRegion, dt: number): void {
  const { volume } = flow.grid;
  const o = region.first;
  const rate = flow.massFlux[o];
  if (!(rate > 0)) return;
  const up = o - 1;
  const { half, slopes } = flow;
  const u = rate / (flow.grid.faceArea[o] * (half.density[up] + 0.5 * slopes.density[up]));
  const h = flow.enthalpy[up] + 0.5 * flow.velocity[up] * flow.velocity[up];
  const fuel = half.fuel[up] + 0.5 * slopes.fuel[up];
  const product = half.product[up] + 0.5 * slopes.product[up];
  const k = half.k[up] + 0.5 * slopes.k[up];
  const z = half.z[up] + 0.5 * slopes.z[up];
  for (let n = 1; n < region.share.length; n++) {
    const part = rate * dt * region.share[n];
    // Out of the first cell, then into the later one. A function of its own would box every number that it shares.
    for (let side = 0; side < 2; side++) {
      const i = side === 0 ? o : o + n;
      const m = (side === 0 ? -part : part) / volume[i];
      flow.mass[i] += m;
      flow.energy[i] += m * h;
      flow.momentum[i] += m * u;
      flow.fuelMass[i] += m * fuel;
      flow.productMass[i] += m * product;
      flow.turbulence[i] += m * k;
      flow.progress[i] += m * z;
    }
  }
}
