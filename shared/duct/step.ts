/**
 * One step of the flow equations without sources: two-stage strong-stability-preserving Runge–Kutta
 * (Shu & Osher, J. Comput. Phys. 77 (1988) 439): U¹ = U + Δt L(U); U ← (U + U¹ + Δt L(U¹))/2.
 *
 * V dU/dt = −(F A)_{right} + (F A)_{left}, with + p (A_right − A_left) in the momentum equation: the pressure of the cell's
 * own wall, which balances the face pressures exactly when the gas is at rest.
 */
import { bookedWallPush, middleOfStepByKernel, setStep } from '../kernel/flow-kernel.ts';
import { type End, endFluxes } from './boundary.ts';
import type { Flow } from './flow.ts';
import { innerFluxes } from './flux-hllc.ts';
import { recoverPrimitives } from './primitives.ts';

/** Courant number of the shipped model. */
export const COURANT = 0.85;

/** Time integrals over one step of what crossed each end face, outwards of the domain in +x: kg, N s, J, kg fuel, kg products. */
export interface StepBook {
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
  return (courant * flow.grid.dx) / flow.fastest;
}

/** Share of Δx²/D_t that mixing alone may take; 0.5 over γ is the limit of an explicit step. */
const MIXING_NUMBER = 0.35;

/**
 * Largest step, s, at which sound and explicit turbulent mixing are stable together: 1/Δt² = 1/Δt_sound² + 1/Δt_mixing².
 * The two limits add, since both make neighbouring cells overshoot.
 */
export function stepWithMixing(flow: Flow, courant = COURANT): number {
  const { mass, mixing } = flow;
  let fastest = 0;
  for (let i = 0; i < flow.grid.cells; i++) {
    const d = mixing[i] / mass[i];
    if (d > fastest) fastest = d;
  }
  const sound = flow.fastest / (courant * flow.grid.dx);
  const mixed = fastest / (MIXING_NUMBER * flow.grid.dx * flow.grid.dx);
  return 1 / Math.sqrt(sound * sound + mixed * mixed);
}

/**
 * Advances the flow by dt seconds; primitives must be fresh at entry and are stale at exit. `book` is overwritten with what
 * crossed the ends.
 */
export function stepFlow(flow: Flow, left: End, right: End, dt: number, book: StepBook): void {
  const n = flow.grid.cells;
  const kernel = flow.kernel;
  if (kernel) {
    clearBook(book);
    setStep(kernel, dt);
    kernel.run.innerFluxes(n);
    endFluxes(flow, left, right);
    addEnds(flow, book, 0.5 * dt);
    middleOfStepByKernel(flow, kernel);
    book.wallPush += 0.5 * dt * bookedWallPush(kernel);
    endFluxes(flow, left, right);
    addEnds(flow, book, 0.5 * dt);
    kernel.run.secondStage(n);
    book.wallPush += 0.5 * dt * bookedWallPush(kernel);
    return;
  }
  const s = flow.saved;
  s[0].set(flow.mass);
  s[1].set(flow.momentum);
  s[2].set(flow.energy);
  s[3].set(flow.fuelMass);
  s[4].set(flow.productMass);
  s[5].set(flow.turbulence);
  s[6].set(flow.progress);
  clearBook(book);
  innerFluxes(flow);
  endFluxes(flow, left, right);
  addToBook(flow, book, 0.5 * dt);
  applyFluxes(flow, dt);
  recoverPrimitives(flow);
  innerFluxes(flow);
  endFluxes(flow, left, right);
  addToBook(flow, book, 0.5 * dt);
  applyFluxes(flow, dt);
  halve(flow.mass, s[0], n);
  halve(flow.momentum, s[1], n);
  halve(flow.energy, s[2], n);
  halve(flow.fuelMass, s[3], n);
  halve(flow.productMass, s[4], n);
  halve(flow.turbulence, s[5], n);
  halve(flow.progress, s[6], n);
}

function halve(now: Float64Array, before: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) now[i] = 0.5 * (now[i] + before[i]);
}

function applyFluxes(flow: Flow, dt: number): void {
  const n = flow.grid.cells;
  const { mass, momentum, energy, fuelMass, productMass, turbulence, progress, pressure } = flow;
  const { massFlux, momentumFlux, energyFlux, fuelFlux, productFlux, turbulenceFlux, progressFlux } = flow;
  const area = flow.grid.faceArea;
  const volume = flow.grid.volume;
  for (let i = 0; i < n; i++) {
    const g = dt / volume[i];
    mass[i] -= g * (massFlux[i + 1] - massFlux[i]);
    momentum[i] -= g * (momentumFlux[i + 1] - momentumFlux[i] - pressure[i] * (area[i + 1] - area[i]));
    energy[i] -= g * (energyFlux[i + 1] - energyFlux[i]);
    fuelMass[i] -= g * (fuelFlux[i + 1] - fuelFlux[i]);
    productMass[i] -= g * (productFlux[i + 1] - productFlux[i]);
    turbulence[i] -= g * (turbulenceFlux[i + 1] - turbulenceFlux[i]);
    progress[i] -= g * (progressFlux[i + 1] - progressFlux[i]);
  }
}

function clearBook(b: StepBook): void {
  b.leftMass = b.leftMomentum = b.leftEnergy = b.leftFuel = b.leftProduct = 0;
  b.rightMass = b.rightMomentum = b.rightEnergy = b.rightFuel = b.rightProduct = 0;
  b.wallPush = 0;
}

function addToBook(flow: Flow, b: StepBook, dt: number): void {
  addEnds(flow, b, dt);
  const n = flow.grid.cells;
  const area = flow.grid.faceArea;
  const pressure = flow.pressure;
  let push = 0;
  for (let i = 0; i < n; i++) push += pressure[i] * (area[i + 1] - area[i]);
  b.wallPush += dt * push;
}

function addEnds(flow: Flow, b: StepBook, dt: number): void {
  const n = flow.grid.cells;
  b.leftMass += dt * flow.massFlux[0];
  b.leftMomentum += dt * flow.momentumFlux[0];
  b.leftEnergy += dt * flow.energyFlux[0];
  b.leftFuel += dt * flow.fuelFlux[0];
  b.leftProduct += dt * flow.productFlux[0];
  b.rightMass += dt * flow.massFlux[n];
  b.rightMomentum += dt * flow.momentumFlux[n];
  b.rightEnergy += dt * flow.energyFlux[n];
  b.rightFuel += dt * flow.fuelFlux[n];
  b.rightProduct += dt * flow.productFlux[n];
}
