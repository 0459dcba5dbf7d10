/** Calls of the compiled loops for a flow: scalars go in and out through the head of the memory, without boxing. */
import type { Flow, GasClosure } from '../duct/flow.ts';
import type { Grid } from '../duct/grid.ts';
import type { Kernel } from './kernel.ts';
import * as at from './layout.ts';

/** Puts the gas into a kernel whose grid arrays are filled. */
export function prepareKernel(kernel: Kernel, grid: Grid, gas: GasClosure): void {
  const head = kernel.head;
  head[at.TEMPERATURE_MIN >> 3] = gas.temperatureMin;
  head[at.TEMPERATURE_STEP >> 3] = gas.temperatureStep;
  head[at.INTERVALS >> 3] = gas.intervals;
  const [air, fuel, product] = gas.gasConstant;
  head[at.GAS_AIR >> 3] = air;
  head[at.GAS_FUEL >> 3] = fuel - air;
  head[at.GAS_PRODUCT >> 3] = product - air;
  const table = new Float64Array(kernel.memory.buffer, at.TABLE, gas.intervals * 9);
  const a = gas.coefficients;
  for (let o = 0; o < table.length; o += 9) {
    for (let power = 0; power < 3; power++) {
      table[o + power] = a[o + power];
      table[o + 3 + power] = a[o + 3 + power] - a[o + power];
      table[o + 6 + power] = a[o + 6 + power] - a[o + power];
    }
  }
  kernel.run.prepare(grid.cells);
}

export function recoverByKernel(flow: Flow, kernel: Kernel): void {
  kernel.run.recoverPrimitives(flow.grid.cells);
  flow.fastest = kernel.head[at.FASTEST >> 3];
  flow.soundRate = kernel.head[at.SOUND_RATE >> 3];
}

/** Half-step states and the fluxes of the inner faces. */
export function innerFluxesByKernel(flow: Flow, kernel: Kernel, dt: number): void {
  kernel.head[at.STEP >> 3] = dt;
  kernel.run.predictHalfStep(flow.grid.cells);
  kernel.run.innerFluxes(flow.grid.cells);
}

/** Adds the fluxes to the conserved variables; returns Σ p dA, N. */
export function applyFluxesByKernel(flow: Flow, kernel: Kernel): number {
  kernel.run.applyFluxes(flow.grid.cells);
  return kernel.head[at.PUSH >> 3];
}
