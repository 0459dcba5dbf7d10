/**
 * The finite-volume grid: equal steps along the centreline. A face has the bore's mean area over the cell width around it,
 * a cell the mean of its two faces times its length, so the total volume is the bore's and no cell is much smaller than
 * what its faces let in. With the area sampled at the face itself, a sudden step in the bore can leave a cell whose volume
 * is a fraction of its face times its length, and the scheme blows up there at any usual Courant number.
 *
 * An open end is longer to sound than to the eye: the grid goes on 0.6133 radii beyond it
 * (unflanged end correction, Levine & Schwinger, Phys. Rev. 73 (1948) 383).
 */
import { endCorrection } from '../acoustics/end-correction.ts';
import type { Section } from '../engine/engine.ts';
import { boreBetween, radiusAt, sectionStations } from './geometry.ts';

export interface Grid {
  cells: number;
  /** m. */
  dx: number;
  /** Position of the first face, m; negative when the left end is open. */
  start: number;
  /** Area of each face, m²; cells + 1. */
  faceArea: Float64Array;
  /** m³; cells. */
  volume: Float64Array;
  /** Lateral wall area, m²; cells. Zero in the end corrections. */
  wallArea: Float64Array;
  /** Mean bore diameter, m; cells. */
  diameter: Float64Array;
  /** Cell centre, m from the head; cells. */
  position: Float64Array;
  /**
   * Share of ρu² dA/A lost when the flow passes the cell in the +x (or −x) direction through a widening.
   * Zero where that direction narrows.
   */
  lossForward: Float64Array;
  lossBackward: Float64Array;
}

/**
 * Loss coefficient of a gradual widening, referred to (u₁ − u₂)²/2: 2.6 sin θ up to θ = 22.5°, then 1
 * (θ the half-angle; Crane Technical Paper 410).
 */
export function wideningLoss(halfAngle: number): number {
  return halfAngle >= Math.PI / 8 ? 1 : 2.6 * Math.sin(halfAngle);
}

/** Builds the grid of a bore. `openLeft`/`openRight` add the end correction there. */
export function makeGrid(sections: readonly Section[], cells: number, openLeft: boolean, openRight: boolean): Grid {
  const stations = sectionStations(sections);
  const length = stations[stations.length - 1];
  const left = openLeft ? endCorrection(sections[0].startDiameter) : 0;
  const right = openRight ? endCorrection(sections[sections.length - 1].endDiameter) : 0;
  const dx = (length + left + right) / cells;
  const grid = emptyGrid(cells, dx, -left);
  for (let i = 0; i <= cells; i++) {
    const x = -left + i * dx;
    const r = radiusAt(sections, Math.min(length, Math.max(0, x)));
    const atEnd = i === 0 || i === cells;
    grid.faceArea[i] = atEnd ? Math.PI * r * r : boreBetween(sections, x - dx / 2, x + dx / 2).volume / dx;
  }
  for (let i = 0; i < cells; i++) {
    const a = -left + i * dx;
    const bore = boreBetween(sections, a, a + dx);
    grid.volume[i] = (dx * (grid.faceArea[i] + grid.faceArea[i + 1])) / 2;
    grid.wallArea[i] = bore.wall;
    grid.position[i] = a + dx / 2;
    grid.diameter[i] = Math.sqrt((4 * grid.volume[i]) / (Math.PI * dx));
  }
  addWideningLosses(grid, sections, stations);
  return grid;
}

/** A grid whose faces, volumes and walls the caller gives, for verification problems. */
export function makeGridFromArea(areaAt: (x: number) => number, length: number, cells: number): Grid {
  const dx = length / cells;
  const grid = emptyGrid(cells, dx, 0);
  for (let i = 0; i <= cells; i++) grid.faceArea[i] = areaAt(i * dx);
  for (let i = 0; i < cells; i++) {
    const mid = areaAt((i + 0.5) * dx);
    grid.volume[i] = (dx * (grid.faceArea[i] + 4 * mid + grid.faceArea[i + 1])) / 6;
    grid.position[i] = (i + 0.5) * dx;
    grid.diameter[i] = Math.sqrt((4 * grid.volume[i]) / (Math.PI * dx));
    grid.wallArea[i] = Math.PI * grid.diameter[i] * dx;
  }
  return grid;
}

function emptyGrid(cells: number, dx: number, start: number): Grid {
  const one = () => new Float64Array(cells);
  return {
    cells,
    dx,
    start,
    faceArea: new Float64Array(cells + 1),
    volume: one(),
    wallArea: one(),
    diameter: one(),
    position: one(),
    lossForward: one(),
    lossBackward: one(),
  };
}

/**
 * Borda–Carnot loss ½ρ(u₁ − u₂)² of each conical section, spread along it so that the incompressible total is exact on any grid:
 * share = K (A₂ − A₁)/(A₂ + A₁) of ρu² dA/A. Across one cell, with Ā its mean area and u = Q/Ā, ∫ρQ² dA/A³ is ρu² ΔA/Ā times
 * (Ā²/(A₁A₂))².
 */
function addWideningLosses(grid: Grid, sections: readonly Section[], stations: readonly number[]): void {
  sections.forEach((s, n) => {
    const a1 = s.startDiameter ** 2;
    const a2 = s.endDiameter ** 2;
    if (a1 === a2) return;
    const angle = Math.atan(Math.abs(s.endDiameter - s.startDiameter) / (2 * s.length));
    const share = (wideningLoss(angle) * Math.abs(a2 - a1)) / (a1 + a2);
    // Face areas are means over a cell width, so the widening reaches half a cell beyond the section at each end.
    const target = a2 > a1 ? grid.lossForward : grid.lossBackward;
    for (let i = 0; i < grid.cells; i++) {
      const beside = grid.position[i] + grid.dx <= stations[n] || grid.position[i] - grid.dx >= stations[n + 1];
      if (beside) continue;
      const mean = grid.volume[i] / grid.dx;
      const steep = (mean * mean) / (grid.faceArea[i] * grid.faceArea[i + 1]);
      target[i] = Math.max(target[i], share * steep * steep);
    }
  });
}
