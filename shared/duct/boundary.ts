/** Fluxes through the two end faces of a duct: a solid wall or an open end. */
import type { Flow } from './flow.ts';
import { type Ambient, type OpenEndState, solveOpenEnd } from './open-end.ts';

export type End =
  | { kind: 'wall' }
  | {
      kind: 'open';
      ambient: Ambient;
      /** Dynamic heads lost on entry. */
      entryLoss: number;
      /** Turbulence energy carried in per ½ρv² of inflow. */
      inflowTurbulence: number;
      state: OpenEndState;
    };

export function wall(): End {
  return { kind: 'wall' };
}

export function openEnd(ambient: Ambient, entryLoss: number, inflowTurbulence = 0): End {
  return {
    kind: 'open',
    ambient,
    entryLoss,
    inflowTurbulence,
    state: { density: 0, outward: 0, pressure: 0, inflow: false },
  };
}

/** Fills the flux arrays at face 0 and face `cells`. Primitives must be fresh. */
export function endFluxes(flow: Flow, left: End, right: End): void {
  endFlux(flow, left, 0, 0, -1);
  endFlux(flow, right, flow.grid.cells - 1, flow.grid.cells, 1);
}

/** `sign` is +1 at the right end, −1 at the left: outward = sign · u. */
function endFlux(flow: Flow, end: End, cell: number, face: number, sign: number): void {
  const area = flow.grid.faceArea[face];
  const rho = flow.density[cell];
  const outward = sign * flow.velocity[cell];
  const p = flow.pressure[cell];
  const c = flow.soundSpeed[cell];
  let mass = 0;
  let fuel = 0;
  let product = 0;
  let k = 0;
  let z = 0;
  if (end.kind === 'wall') {
    // Acoustic wall pressure: the gas that runs into the wall is brought to rest.
    flow.momentumFlux[face] = area * (p + rho * c * outward);
    flow.energyFlux[face] = 0;
  } else {
    const b = end.state;
    solveOpenEnd(b, end.ambient, end.entryLoss, rho, outward, p, c);
    mass = sign * (area * b.density * b.outward);
    flow.momentumFlux[face] = area * (b.density * b.outward * b.outward + b.pressure);
    if (b.inflow) {
      k = end.inflowTurbulence * 0.5 * b.outward * b.outward;
      flow.energyFlux[face] = mass * end.ambient.enthalpy;
    } else {
      fuel = flow.fuel[cell];
      product = flow.product[cell];
      k = flow.k[cell];
      z = flow.z[cell];
      const r = p / (rho * flow.temperature[cell]);
      const tb = b.pressure / (r * b.density);
      const e = flow.internalEnergy[cell] + flow.heatCapacity[cell] * (tb - flow.temperature[cell]);
      flow.energyFlux[face] = mass * (e + r * tb + 0.5 * b.outward * b.outward);
    }
  }
  // Here and not in a function of its own, which is not always inlined and then boxes what it is given.
  flow.massFlux[face] = mass;
  flow.fuelFlux[face] = mass * fuel;
  flow.productFlux[face] = mass * product;
  flow.turbulenceFlux[face] = mass * k;
  flow.progressFlux[face] = mass * z;
}
