/** Calls of the compiled source terms: see shared/combustion/cell-sources.ts for the equations. */
import type { CellSources } from '../combustion/cell-sources.ts';
import { PROGRESS_FULL, PROGRESS_ONSET, stretchQuench } from '../combustion/ignition.ts';
import type { Flow } from '../duct/flow.ts';
import type { Kernel } from './kernel.ts';
import * as at from './layout.ts';

/** Moves the arrays of a flow's sources and their constants into the kernel's memory; a flow's second set of sources stays outside. */
export function adoptSources(kernel: Kernel, sources: CellSources): void {
  if (kernel.sources) return;
  const move = (offset: number, from: Float64Array) => {
    const to = new Float64Array(kernel.memory.buffer, offset, from.length);
    to.set(from);
    return to;
  };
  sources.wallTemperature = move(at.WALL_TEMPERATURE, sources.wallTemperature);
  sources.filmTime = move(at.FILM_TIME, sources.filmTime);
  sources.filmHeat = move(at.FILM_HEAT, sources.filmHeat);
  sources.chemicalDelay = move(at.DELAY, sources.chemicalDelay);
  const c = sources.constants;
  const head = kernel.head;
  const afr = sources.fuel.stoichiometricAirFuelRatio;
  head[at.EDDY_SIZE >> 3] = c.eddySize;
  head[at.AXIAL_MIXING >> 3] = c.axialMixing;
  head[at.HALF_FRICTION >> 3] = 0.5 * c.friction;
  head[at.WALL_TURBULENCE >> 3] = c.wallTurbulence;
  head[at.TURBULENCE_DECAY >> 3] = c.turbulenceDecay;
  head[at.IGNITION_MIXING >> 3] = c.ignitionMixing;
  head[at.BURN_RATE >> 3] = c.burnRate;
  head[at.PRODUCT_SHARE >> 3] = c.productNeed / (1 + afr);
  head[at.AIR_FUEL >> 3] = afr;
  head[at.HEATING_VALUE >> 3] = sources.fuel.lowerHeatingValue;
  head[at.ONSET >> 3] = PROGRESS_ONSET;
  head[at.PER_RANGE >> 3] = 1 / (PROGRESS_FULL - PROGRESS_ONSET);
  kernel.run.prepareSources(sources.wallTemperature.length);
  kernel.sources = sources;
}

export function applySourcesByKernel(
  flow: Flow,
  kernel: Kernel,
  src: CellSources,
  dt: number,
  jet: number,
  spark: boolean,
): void {
  const head = kernel.head;
  head[at.STEP >> 3] = dt;
  head[at.QUENCHED >> 3] = stretchQuench(jet, src.constants.quenchSpeed);
  kernel.run.applyCellSources(flow.grid.cells, src.chamberStart, src.chamberEnd, spark ? src.sparkEnd : 0);
  src.heatReleased = head[at.HEAT_RELEASED >> 3];
  src.wallHeat = head[at.WALL_HEAT >> 3];
  src.frictionImpulse = head[at.FRICTION_IMPULSE >> 3];
  src.wideningImpulse = head[at.WIDENING_IMPULSE >> 3];
  flow.mixingRate = head[at.MIXING_RATE >> 3];
}
