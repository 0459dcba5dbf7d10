/**
 * The state of the gas in the duct: conserved variables per unit volume, and the primitive variables recovered from them.
 *
 * Scalars carried per unit mass: fuel (0), products (1), turbulence energy k in J/kg (2), ignition progress Z (3).
 * Air is what remains: 1 − fuel − products.
 */
import type { GasTable } from '../gas/gas-table.ts';
import { prepareKernel } from '../kernel/flow-kernel.ts';
import { giveBack, type Kernel, takeKernel } from '../kernel/kernel.ts';
import * as at from '../kernel/layout.ts';
import type { Grid } from './grid.ts';

export const SCALARS = 4;

/** What the fluxes reconstruct in each cell: ρ, uA, p and the scalars. */
export interface Reconstructed {
  density: Float64Array;
  flow: Float64Array;
  pressure: Float64Array;
  fuel: Float64Array;
  product: Float64Array;
  k: Float64Array;
  z: Float64Array;
}

export interface Flow {
  grid: Grid;
  gas: GasClosure;
  /** Conserved, per m³: mass, momentum, energy (sensible + kinetic), then ρ·scalar. */
  mass: Float64Array;
  momentum: Float64Array;
  energy: Float64Array;
  fuelMass: Float64Array;
  productMass: Float64Array;
  turbulence: Float64Array;
  progress: Float64Array;
  /** Primitive. */
  density: Float64Array;
  velocity: Float64Array;
  /** u times the cell's mean area, m³/s: what the fluxes reconstruct instead of u. */
  volumeFlow: Float64Array;
  pressure: Float64Array;
  temperature: Float64Array;
  soundSpeed: Float64Array;
  /** 1/ρ, m³/kg. */
  specificVolume: Float64Array;
  /** J/kg, sensible internal energy and enthalpy, and J/(kg K) at constant volume. */
  internalEnergy: Float64Array;
  enthalpy: Float64Array;
  heatCapacity: Float64Array;
  fuel: Float64Array;
  product: Float64Array;
  k: Float64Array;
  z: Float64Array;
  /** e_fuel − e_air and e_product − e_air at the cell's temperature, J/kg. */
  fuelEnergy: Float64Array;
  productEnergy: Float64Array;
  /** ρ D_t, kg/(m s), axial turbulent mixing; zero for the plain Euler equations. */
  mixing: Float64Array;
  /** Area-weighted fluxes at faces: kg/s, N, W, and kg/s (J/s for k) of each scalar. */
  massFlux: Float64Array;
  momentumFlux: Float64Array;
  energyFlux: Float64Array;
  fuelFlux: Float64Array;
  productFlux: Float64Array;
  turbulenceFlux: Float64Array;
  progressFlux: Float64Array;
  /** Limited slopes of the primitive variables, per cell. */
  slopes: Reconstructed;
  /** The same variables in the middle of each cell, half a step later: what the face states and the wall's push are made of. */
  half: Reconstructed;
  /** Largest |u| + c of the last recovery, m/s. */
  fastest: number;
  /** Largest (|u| + c)/Δx of the last recovery, 1/s. */
  soundRate: number;
  /** Largest D_t/Δx² of the last sources, 1/s, with D_t the turbulent diffusivity; zero without sources. */
  mixingRate: number;
  /** The compiled loops, in whose memory all these arrays lie; null when the TypeScript loops run. */
  kernel: Kernel | null;
}

/** The gas table arranged for quick look-up: between knots e = a₀ + a₁ w + a₂ w², w in [0, 1). */
export interface GasClosure {
  temperatureMin: number;
  temperatureStep: number;
  intervals: number;
  /** [interval·9 + species·3 + power]. */
  coefficients: Float64Array;
  gasConstant: [number, number, number];
}

export function makeGasClosure(table: GasTable): GasClosure {
  const intervals = table.knots - 1;
  const coefficients = new Float64Array(intervals * 9);
  const dT = table.temperatureStep;
  for (let j = 0; j < intervals; j++) {
    for (let s = 0; s < 3; s++) {
      const c0 = table.heatCapacity[j * 3 + s];
      const c1 = table.heatCapacity[(j + 1) * 3 + s];
      coefficients[j * 9 + s * 3] = table.energy[j * 3 + s];
      coefficients[j * 9 + s * 3 + 1] = c0 * dT;
      coefficients[j * 9 + s * 3 + 2] = 0.5 * (c1 - c0) * dT;
    }
  }
  return {
    temperatureMin: table.temperatureMin,
    temperatureStep: dT,
    intervals,
    coefficients,
    gasConstant: table.gasConstant,
  };
}

/** Sensible internal energy, J/kg, of a mixture at T. */
export function mixtureEnergy(gas: GasClosure, temperature: number, fuel: number, product: number): number {
  const x = (temperature - gas.temperatureMin) / gas.temperatureStep;
  const j = Math.min(gas.intervals - 1, Math.max(0, Math.floor(x)));
  const w = x - j;
  const a = gas.coefficients;
  const air = 1 - fuel - product;
  const o = j * 9;
  const a0 = air * a[o] + fuel * a[o + 3] + product * a[o + 6];
  const a1 = air * a[o + 1] + fuel * a[o + 4] + product * a[o + 7];
  const a2 = air * a[o + 2] + fuel * a[o + 5] + product * a[o + 8];
  return a0 + w * (a1 + w * a2);
}

/** Gas constant of a mixture, J/(kg K). */
export function mixtureGasConstant(gas: GasClosure, fuel: number, product: number): number {
  const [ra, rf, rp] = gas.gasConstant;
  return ra + fuel * (rf - ra) + product * (rp - ra);
}

/** Heat capacity at constant volume of a mixture at T, J/(kg K). */
export function mixtureHeatCapacity(gas: GasClosure, temperature: number, fuel: number, product: number): number {
  const x = (temperature - gas.temperatureMin) / gas.temperatureStep;
  const j = Math.min(gas.intervals - 1, Math.max(0, Math.floor(x)));
  const w = x - j;
  const a = gas.coefficients;
  const air = 1 - fuel - product;
  const o = j * 9;
  const a1 = air * a[o + 1] + fuel * a[o + 4] + product * a[o + 7];
  const a2 = air * a[o + 2] + fuel * a[o + 5] + product * a[o + 8];
  return (a1 + 2 * w * a2) / gas.temperatureStep;
}

/**
 * Still gas of one pressure, temperature and composition everywhere. The grid is copied; give the flow back with
 * `releaseFlow` when many are made in a row.
 */
export function makeFlow(grid: Grid, gas: GasClosure, pressure: number, temperature: number): Flow {
  const n = grid.cells;
  const kernel = takeKernel(n, gas.intervals);
  const array = (offset: number, size = n) =>
    kernel ? new Float64Array(kernel.memory.buffer, offset, size) : new Float64Array(size);
  const copy = (offset: number, from: Float64Array) => {
    const to = array(offset, from.length);
    to.set(from);
    return to;
  };
  const flow: Flow = {
    grid: {
      ...grid,
      faceArea: copy(at.FACE_AREA, grid.faceArea),
      volume: copy(at.VOLUME, grid.volume),
      width: copy(at.WIDTH, grid.width),
      wallArea: copy(at.WALL_AREA, grid.wallArea),
      diameter: copy(at.DIAMETER, grid.diameter),
      lossForward: copy(at.LOSS_FORWARD, grid.lossForward),
      lossBackward: copy(at.LOSS_BACKWARD, grid.lossBackward),
    },
    gas,
    mass: array(at.MASS),
    momentum: array(at.MOMENTUM),
    energy: array(at.ENERGY),
    fuelMass: array(at.FUEL_MASS),
    productMass: array(at.PRODUCT_MASS),
    turbulence: array(at.TURBULENCE),
    progress: array(at.PROGRESS),
    density: array(at.DENSITY),
    velocity: array(at.VELOCITY),
    volumeFlow: array(at.VOLUME_FLOW),
    pressure: array(at.PRESSURE),
    temperature: array(at.TEMPERATURE),
    soundSpeed: array(at.SOUND_SPEED),
    specificVolume: array(at.SPECIFIC_VOLUME),
    internalEnergy: array(at.INTERNAL_ENERGY),
    enthalpy: array(at.ENTHALPY),
    heatCapacity: array(at.HEAT_CAPACITY),
    fuel: array(at.FUEL),
    product: array(at.PRODUCT),
    k: array(at.K),
    z: array(at.Z),
    fuelEnergy: array(at.FUEL_ENERGY),
    productEnergy: array(at.PRODUCT_ENERGY),
    mixing: array(at.MIXING),
    massFlux: array(at.MASS_FLUX, n + 1),
    momentumFlux: array(at.MOMENTUM_FLUX, n + 1),
    energyFlux: array(at.ENERGY_FLUX, n + 1),
    fuelFlux: array(at.FUEL_FLUX, n + 1),
    productFlux: array(at.PRODUCT_FLUX, n + 1),
    turbulenceFlux: array(at.TURBULENCE_FLUX, n + 1),
    progressFlux: array(at.PROGRESS_FLUX, n + 1),
    slopes: {
      density: array(at.SLOPE_DENSITY),
      flow: array(at.SLOPE_FLOW),
      pressure: array(at.SLOPE_PRESSURE),
      fuel: array(at.SLOPE_FUEL),
      product: array(at.SLOPE_PRODUCT),
      k: array(at.SLOPE_K),
      z: array(at.SLOPE_Z),
    },
    half: {
      density: array(at.HALF_DENSITY),
      flow: array(at.HALF_FLOW),
      pressure: array(at.HALF_PRESSURE),
      fuel: array(at.HALF_FUEL),
      product: array(at.HALF_PRODUCT),
      k: array(at.HALF_K),
      z: array(at.HALF_Z),
    },
    fastest: 0,
    soundRate: 0,
    mixingRate: 0,
    kernel,
  };
  if (kernel) prepareKernel(kernel, grid, gas);
  for (let i = 0; i < n; i++) setCell(flow, i, pressure, temperature, 0, 0, 0);
  return flow;
}

/** Ends the use of a flow: its memory goes to the next one, and its arrays become empty. */
export function releaseFlow(flow: Flow): void {
  if (flow.kernel) giveBack(flow.kernel);
  flow.kernel = null;
}

/** Sets one cell from pressure (Pa), temperature (K), velocity (m/s) and composition; k and Z become zero. */
export function setCell(
  flow: Flow,
  i: number,
  pressure: number,
  temperature: number,
  velocity: number,
  fuel: number,
  product: number,
): void {
  const rho = pressure / (mixtureGasConstant(flow.gas, fuel, product) * temperature);
  flow.mass[i] = rho;
  flow.momentum[i] = rho * velocity;
  flow.energy[i] = rho * (mixtureEnergy(flow.gas, temperature, fuel, product) + 0.5 * velocity * velocity);
  flow.fuelMass[i] = rho * fuel;
  flow.productMass[i] = rho * product;
  flow.turbulence[i] = 0;
  flow.progress[i] = 0;
  flow.temperature[i] = temperature;
}
