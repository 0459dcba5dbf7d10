/** How many cells along the duct a run takes: the shipped resolution, the coarse one before it, and the grids between. */
import { endCorrection } from '../acoustics/end-correction.ts';
import { sectionStations } from '../duct/geometry.ts';
import type { Engine } from './engine.ts';

/** Cells of the shipped resolution, and of an engine that breathes through a pipe: its intake's few diameters need them. */
export const SHIPPED_CELLS = 72;
export const SHIPPED_CELLS_VALVELESS = 180;
/**
 * Cells of the screening run and of the way to the limit cycle. On 32 cells every fifth valveless engine that runs is lost (80 random
 * designs against the same on 64); of 160 with valves, one in forty changes its verdict.
 */
export const APPROACH_CELLS = 32;
export const APPROACH_CELLS_VALVELESS = 40;

/** Cells along the duct of a full run. */
export function shippedCells(engine: Engine): number {
  return engine.intake.kind === 'valveless' ? alignedCells(engine, SHIPPED_CELLS_VALVELESS) : SHIPPED_CELLS;
}

/** Cells along the duct of a screening run, from which a full one goes on. */
export function approachCells(engine: Engine): number {
  return engine.intake.kind === 'valveless' ? alignedCells(engine, APPROACH_CELLS_VALVELESS) : APPROACH_CELLS;
}

/**
 * Grids between `from` cells and `to`, and `to` itself, each at most three times as fine as the one before: the smaller the step,
 * the less is left for the finest to find by running.
 */
export function finerGrids(engine: Engine, from: number, to: number): number[] {
  const steps = Math.max(0, Math.ceil(Math.log(to / from) / Math.log(3)));
  return Array.from({ length: steps }, (_, n) => {
    if (n === steps - 1) return to;
    const between = Math.round(from * (to / from) ** ((n + 1) / steps));
    return engine.intake.kind === 'valveless' ? alignedCells(engine, between) : between;
  });
}

/** Cells more than asked for, as a share, among which a grid may be chosen. */
const CHOICE = 0.15;

/**
 * `least` cells or up to 15 % more: the number whose grid has a face just before the place where the intake pipe opens into the
 * chamber. The pipe's jet begins at a face, and every fraction of a cell by which that is early shortens the pipe: by a whole
 * cell, one of 144 raises the frequency of a valveless engine by 3 %.
 */
export function alignedCells({ sections }: Engine, least: number): number {
  const stations = sectionStations(sections);
  const left = endCorrection(sections[0].startDiameter);
  const right = endCorrection(sections[sections.length - 1].endDiameter);
  const chamber = stations[sections.findIndex((s) => s.role === 'chamber')];
  const place = (left + chamber) / (left + stations[stations.length - 1] + right);
  let best = least;
  let earliest = 1;
  for (let cells = least; cells <= (1 + CHOICE) * least; cells++) {
    const early = (place * cells) % 1;
    if (early < earliest) {
      earliest = early;
      best = cells;
    }
  }
  return best;
}
