/**
 * One step of the flow equations without sources, in two stages: the half-step predictor (half-step.ts), then the fluxes of the
 * predicted face states.
 *
 * V dU/dt = −(F A)_{right} + (F A)_{left}, with + p (A_right − A_left) in the momentum equation: the pressure of the cell's
 * own wall at the half step, which balances the face pressures exactly when the gas is at rest.
 */
import { applyFluxesByKernel, innerFluxesByKernel } from '../kernel/flow-kernel.ts';
import { type End, endFluxes } from './boundary.ts';
import type { Flow } from './flow.ts';
import { innerFluxes } from './flux-hllc.ts';
import { predictHalfStep } from './half-step.ts';

/** Courant number of the shipped model. */
export const COURANT = 0.9;

/** Time integrals over one step of what crossed each end face, outwards of the domain in +x: kg, N s, J, kg fuel, kg products. */
export interface StepBook {
  /** The step itself, s: handed to `advanceFlow` here, since a number as an argument is boxed at each call. */
  dt: number;
  leftMass: number;
  leftMomentum: number;
  leftEnergy: number;
  leftFuel: number;
  leftProduct: number;
  rightMass: number;
  rightMomentum: number;
  rightEnergy: number;
  rightFuel: number;
  rightProduct: number;
  /** ∫ Σ p dA over the wall of every cell, N s: the axial push of the sloping walls on the gas. */
  wallPush: number;
}

export function makeStepBook(): StepBook {
  return {
    dt: 0,
    leftMass: 0,
    leftMomentum: 0,
    leftEnergy: 0,
    leftFuel: 0,
    leftProduct: 0,
    rightMass: 0,
    rightMomentum: 0,
    rightEnergy: 0,
    rightFuel: 0,
    rightProduct: 0,
    wallPush: 0,
  };
}

/** Largest stable step for the state last recovered, s. */
export function stableStep(flow: Flow, courant = COURANT): number {
  return courant / flow.soundRate;
}

/** Share of Δx²/D_t that mixing alone may take; 0.5 over γ is the limit of an explicit step. */
const MIXING_NUMBER = 0.35;

/**
 * Largest step, s, at which sound and explicit turbulent mixing are stable together: 1/Δt² = 1/Δt_sound² + 1/Δt_mixing².
 * The two limits add, since both make neighbouring cells overshoot.
 */
export function stepWithMixing(flow: Flow, courant = COURANT): number {
  const sound = flow.soundRate / courant;
  const mixed = flow.mixingRate / MIXING_NUMBER;
  return 1 / Math.sqrt(sound * sound + mixed * mixed);
}

/**
 * Advances the flow by dt seconds; primitives must be fresh at entry and are stale at exit. `book` is overwritten with what
 * crossed the ends.
 */
export function stepFlow(flow: Flow, left: End, right: End, dt: number, book: StepBook): void {
  book.dt = dt;
  advanceFlow(flow, left, right, book);
}

/** The same by `book.dt`, without an allocation. */
export function advanceFlow(flow: Flow, left: End, right: End, book: StepBook): void {
  const { dt } = book;
  if (flow.kernel) {
    innerFluxesByKernel(flow, flow.kernel, dt);
    endFluxes(flow, left, right);
    book.wallPush = dt * applyFluxesByKernel(flow, flow.kernel);
    keepBook(flow, book);
    return;
  }
  predictHalfStep(flow, dt);
  innerFluxes(flow);
  endFluxes(flow, left, right);
  book.wallPush = dt * applyFluxes(flow, dt);
  keepBook(flow, book);
}

/** Adds the fluxes to the conserved variables; returns Σ p dA, N. */
function applyFluxes(flow: Flow, dt: number): number {
  const n = flow.grid.cells;
  const { mass, momentum, energy, fuelMass, productMass, turbulence, progress } = flow;
  const { massFlux, momentumFlux, energyFlux, fuelFlux, productFlux, turbulenceFlux, progressFlux } = flow;
  const { pressure } = flow.half;
  const area = flow.grid.faceArea;
  const volume = flow.grid.volume;
  let push = 0;
  for (let i = 0; i < n; i++) {
    const g = dt * (1 / volume[i]);
    // Two products, as the fluxes hold them: at rest they cancel to the last bit.
    const wall = pressure[i] * area[i + 1] - pressure[i] * area[i];
    push += wall;
    mass[i] -= g * (massFlux[i + 1] - massFlux[i]);
    momentum[i] -= g * (momentumFlux[i + 1] - momentumFlux[i] - wall);
    energy[i] -= g * (energyFlux[i + 1] - energyFlux[i]);
    fuelMass[i] -= g * (fuelFlux[i + 1] - fuelFlux[i]);
    productMass[i] -= g * (productFlux[i + 1] - productFlux[i]);
    turbulence[i] -= g * (turbulenceFlux[i + 1] - turbulenceFlux[i]);
    progress[i] -= g * (progressFlux[i + 1] - progressFlux[i]);
  }
  return push;
}

/** What crossed the ends. */
function keepBook(flow: Flow, b: StepBook): void {
  const { dt } = b;
  const n = flow.grid.cells;
  b.leftMass = dt * flow.massFlux[0];
  b.leftMomentum = dt * flow.momentumFlux[0];
  b.leftEnergy = dt * flow.energyFlux[0];
  b.leftFuel = dt * flow.fuelFlux[0];
  b.leftProduct = dt * flow.productFlux[0];
  b.rightMass = dt * flow.massFlux[n];
  b.rightMomentum = dt * flow.momentumFlux[n];
  b.rightEnergy = dt * flow.energyFlux[n];
  b.rightFuel = dt * flow.fuelFlux[n];
  b.rightProduct = dt * flow.productFlux[n];
}
