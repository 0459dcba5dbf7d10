/**
 * Steady temperature of a thin shell: what the gas gives inside equals what radiation and still air take outside.
 *
 *   h̄ (T_g − T_w) = ε σ (T_w⁴ − T_a⁴) + h_o (T_w − T_a)
 *
 * T_g is the gas temperature weighted by the film coefficient over the cycle.
 */

import type { Machine } from './machine.ts';

/** W/(m² K⁴), CODATA. */
export const STEFAN_BOLTZMANN = 5.670374419e-8;
/** Oxidised steel (0.8–0.9, heat-transfer textbooks). */
export const EMISSIVITY = 0.85;
/** Free convection from a hot cylinder in still air, W/(m² K) (10–20, heat-transfer textbooks). */
export const OUTSIDE_FILM = 15;

/** Wall temperature, K, from the mean inside film coefficient, W/(m² K), effective gas and ambient temperatures, K. */
export function steadyWallTemperature(film: number, gas: number, ambient: number): number {
  let low = ambient;
  let high = Math.max(gas, ambient);
  for (let n = 0; n < 40; n++) {
    const t = 0.5 * (low + high);
    const gain =
      film * (gas - t) - EMISSIVITY * STEFAN_BOLTZMANN * (t ** 4 - ambient ** 4) - OUTSIDE_FILM * (t - ambient);
    if (gain > 0) low = t;
    else high = t;
  }
  return 0.5 * (low + high);
}

/** Moves the walls halfway to the steady temperature of the mean film and gas of the last cycle, `span` seconds long. */
export function warmWalls({ sources, engine, flow }: Machine, span: number): void {
  if (span > 0) {
    for (let i = 0; i < flow.grid.cells; i++) {
      if (flow.grid.wallArea[i] <= 0 || sources.filmTime[i] <= 0) continue;
      const film = sources.filmTime[i] / span;
      const gas = sources.filmHeat[i] / sources.filmTime[i];
      const steady = steadyWallTemperature(film, gas, engine.site.temperature);
      sources.wallTemperature[i] += 0.5 * (steady - sources.wallTemperature[i]);
    }
  }
  sources.filmTime.fill(0);
  sources.filmHeat.fill(0);
}
