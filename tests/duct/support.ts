/** Set-ups that the verification problems of the duct share: a γ-law gas with R = 287.05 J/(kg K). */

import { type End, wall } from '../../shared/duct/boundary.ts';
import type { FinerCells } from '../../shared/duct/cell-spacing.ts';
import { type Flow, type GasClosure, makeFlow, makeGasClosure, setCell } from '../../shared/duct/flow.ts';
import { type Grid, makeGridFromArea } from '../../shared/duct/grid.ts';
import type { Ambient } from '../../shared/duct/open-end.ts';
import { recoverPrimitives, settleTemperatures } from '../../shared/duct/primitives.ts';
import { makeStepBook, type StepBook, stableStep, stepFlow } from '../../shared/duct/step.ts';
import { makePerfectGasTable } from '../../shared/gas/gas-table.ts';

export const GAS_CONSTANT = 287.05;

export function perfectGas(gamma = 1.4): GasClosure {
  return makeGasClosure(makePerfectGasTable(gamma, GAS_CONSTANT));
}

export function tube(cells: number, length = 1, area = 1, finer: FinerCells | null = null): Grid {
  return makeGridFromArea(() => area, length, cells, finer);
}

/** Still γ-law gas outside an open end; its enthalpy is counted from 298.15 K as in the gas table. */
export function outside(pressure: number, temperature: number, gamma = 1.4): Ambient {
  const heatCapacity = (gamma * GAS_CONSTANT) / (gamma - 1);
  return { pressure, temperature, gasConstant: GAS_CONSTANT, gamma, enthalpy: heatCapacity * (temperature - 298.15) };
}

export interface Start {
  /** Pa, K, m/s. */
  pressure: number;
  temperature: number;
  velocity?: number;
  fuel?: number;
  product?: number;
}

/** A flow whose cells start as given at their centres, with primitives fresh. */
export function startFlow(grid: Grid, gas: GasClosure, at: (x: number) => Start): Flow {
  const flow = makeFlow(grid, gas, 1e5, 300);
  for (let i = 0; i < grid.cells; i++) {
    const { pressure, temperature, velocity = 0, fuel = 0, product = 0 } = at(grid.position[i]);
    setCell(flow, i, pressure, temperature, velocity, fuel, product);
  }
  settleTemperatures(flow);
  return flow;
}

export interface March {
  left?: End;
  right?: End;
  courant?: number;
  /** Called after each step with primitives fresh, and the step and its book. */
  each?: (dt: number, book: StepBook, time: number) => void;
  /** Sources: called after the flow step on stale primitives. */
  sources?: (dt: number) => void;
}

/** Marches to a time, s, and ends on it. Throws Error when the state turns unphysical. */
export function march(
  flow: Flow,
  until: number,
  { left = wall(), right = wall(), courant, each, sources }: March = {},
): number {
  const book = makeStepBook();
  let time = 0;
  let steps = 0;
  while (time < until) {
    const dt = Math.min(stableStep(flow, courant), until - time);
    if (!(dt > 0)) throw new Error(`the state turned unphysical at step ${steps}, time ${time} s`);
    stepFlow(flow, left, right, dt, book);
    sources?.(dt);
    recoverPrimitives(flow);
    time += dt;
    steps++;
    each?.(dt, book, time);
  }
  if (Number.isNaN(flow.fastest)) throw new Error('the state is unphysical at the end');
  return steps;
}

/** ∫ρ dV and ∫ρE dV over the duct, kg and J. */
export function contents(flow: Flow): { mass: number; energy: number; fuel: number; product: number } {
  const sums = { mass: 0, energy: 0, fuel: 0, product: 0 };
  for (let i = 0; i < flow.grid.cells; i++) {
    const v = flow.grid.volume[i];
    sums.mass += v * flow.mass[i];
    sums.energy += v * flow.energy[i];
    sums.fuel += v * flow.fuelMass[i];
    sums.product += v * flow.productMass[i];
  }
  return sums;
}
