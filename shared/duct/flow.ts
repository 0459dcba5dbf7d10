/**
 * The state of the gas in the duct: conserved variables per unit volume, and the primitive variables recovered from them.
 *
 * Scalars carried per unit mass: fuel (0), products (1), turbulence energy k in J/kg (2), ignition progress Z (3).
 * Air is what remains: 1 − fuel − products.
 */
import type { GasTable } from '../gas/gas-table.ts';
import type { Grid } from './grid.ts';

export const SCALARS = 4;

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
  /** u times the cell's mean area, m³/s: what the fluxes reconstruct. */
  volumeFlow: Float64Array;
  pressure: Float64Array;
  temperature: Float64Array;
  soundSpeed: Float64Array;
  /** J/kg, sensible internal energy, and J/(kg K). */
  internalEnergy: Float64Array;
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
  slopes: {
    density: Float64Array;
    velocity: Float64Array;
    pressure: Float64Array;
    fuel: Float64Array;
    product: Float64Array;
    k: Float64Array;
    z: Float64Array;
  };
  /** State at the start of a step, for the second stage. */
  saved: Float64Array[];
  /** Largest |u| + c of the last recovery, m/s. */
  fastest: number;
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

/** Still gas of one pressure, temperature and composition everywhere. */
export function makeFlow(grid: Grid, gas: GasClosure, pressure: number, temperature: number): Flow {
  const n = grid.cells;
  const a = () => new Float64Array(n);
  const f = () => new Float64Array(n + 1);
  const flow: Flow = {
    grid,
    gas,
    mass: a(),
    momentum: a(),
    energy: a(),
    fuelMass: a(),
    productMass: a(),
    turbulence: a(),
    progress: a(),
    density: a(),
    velocity: a(),
    volumeFlow: a(),
    pressure: a(),
    temperature: a(),
    soundSpeed: a(),
    internalEnergy: a(),
    heatCapacity: a(),
    fuel: a(),
    product: a(),
    k: a(),
    z: a(),
    fuelEnergy: a(),
    productEnergy: a(),
    mixing: a(),
    massFlux: f(),
    momentumFlux: f(),
    energyFlux: f(),
    fuelFlux: f(),
    productFlux: f(),
    turbulenceFlux: f(),
    progressFlux: f(),
    slopes: { density: a(), velocity: a(), pressure: a(), fuel: a(), product: a(), k: a(), z: a() },
    saved: Array.from({ length: 7 }, a),
    fastest: 0,
  };
  for (let i = 0; i < n; i++) setCell(flow, i, pressure, temperature, 0, 0, 0);
  return flow;
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
