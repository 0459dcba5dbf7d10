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

/**
 * Wall temperature, K, from the mean inside film coefficient, W/(m² K), effective gas and ambient temperatures, K. Newton's method
 * from above: the balance falls ever more steeply with the wall's temperature, so no step passes the root.
 */
export function steadyWallTemperature(film: number, gas: number, ambient: number): number {
  const radiation = EMISSIVITY * STEFAN_BOLTZMANN;
  const given = film * gas + OUTSIDE_FILM * ambient + radiation * ambient * ambient * ambient * ambient;
  const linear = film + OUTSIDE_FILM;
  let t = Math.max(gas, ambient);
  for (let n = 0; n < 20; n++) {
    const cubed = radiation * t * t * t;
    const step = (given - (linear + cubed) * t) / (linear + 4 * cubed);
    t += step;
    if (step > -1e-9 * t) break;
  }
  return t;
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
