/**
 * The finite-volume grid along the centreline. A face has the bore's mean area over the cell width around it,
 * a cell the mean of its two faces times its length, so the total volume is the bore's and no cell is much smaller than
 * what its faces let in. With the area sampled at the face itself, a sudden step in the bore can leave a cell whose volume
 * is a fraction of its face times its length, and the scheme blows up there at any usual Courant number.
 *
 * An open end is longer to sound than to the eye: the grid goes on 0.6133 radii beyond it
 * (unflanged end correction, Levine & Schwinger, Phys. Rev. 73 (1948) 383).
 */
import { endCorrection } from '../acoustics/end-correction.ts';
import type { Section } from '../engine/engine.ts';
import { cellFaces, type FinerCells } from './cell-spacing.ts';
import { boreBetween, radiusAt, sectionStations } from './geometry.ts';

export interface Grid {
  cells: number;
  /** Mean width of the cells, m. */
  dx: number;
  /** Positions of the faces, m from the head; cells + 1. The first is negative when the left end is open. */
  face: Float64Array;
  /** Width of each cell, m; cells. */
  width: Float64Array;
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

/**
 * Builds the grid of a bore. `openLeft`/`openRight` add the end correction there. Cells are equal unless `finer` says that those
 * up to some place are finer (see cell-spacing.ts).
 */
export function makeGrid(
  sections: readonly Section[],
  cells: number,
  openLeft: boolean,
  openRight: boolean,
  finer: FinerCells | null = null,
): Grid {
  const stations = sectionStations(sections);
  const length = stations[stations.length - 1];
  const left = openLeft ? endCorrection(sections[0].startDiameter) : 0;
  const right = openRight ? endCorrection(sections[sections.length - 1].endDiameter) : 0;
  const grid = emptyGrid(cellFaces(cells, -left, length + right, finer));
  const { face, width } = grid;
  for (let i = 0; i <= cells; i++) {
    const r = radiusAt(sections, Math.min(length, Math.max(0, face[i])));
    const before = width[i - 1] / 2;
    const behind = width[i] / 2;
    const atEnd = i === 0 || i === cells;
    grid.faceArea[i] = atEnd
      ? Math.PI * r * r
      : boreBetween(sections, face[i] - before, face[i] + behind).volume / (before + behind);
  }
  for (let i = 0; i < cells; i++) {
    grid.volume[i] = (width[i] * (grid.faceArea[i] + grid.faceArea[i + 1])) / 2;
    grid.wallArea[i] = boreBetween(sections, face[i], face[i + 1]).wall;
    grid.diameter[i] = Math.sqrt((4 * grid.volume[i]) / (Math.PI * width[i]));
  }
  addWideningLosses(grid, sections, stations);
  return grid;
}

/** A grid whose faces, volumes and walls the caller gives, for verification problems. */
export function makeGridFromArea(
  areaAt: (x: number) => number,
  length: number,
  cells: number,
  finer: FinerCells | null = null,
): Grid {
  const grid = emptyGrid(cellFaces(cells, 0, length, finer));
  const { face, width } = grid;
  for (let i = 0; i <= cells; i++) grid.faceArea[i] = areaAt(face[i]);
  for (let i = 0; i < cells; i++) {
    const mid = areaAt(grid.position[i]);
    grid.volume[i] = (width[i] * (grid.faceArea[i] + 4 * mid + grid.faceArea[i + 1])) / 6;
    grid.diameter[i] = Math.sqrt((4 * grid.volume[i]) / (Math.PI * width[i]));
    grid.wallArea[i] = Math.PI * grid.diameter[i] * width[i];
  }
  return grid;
}

/** The cell that holds x, m; the first or last one when x lies outside. */
export function cellAt({ face, cells }: Grid, x: number): number {
  let i = 0;
  while (i < cells - 1 && face[i + 1] <= x) i++;
  return i;
}

function emptyGrid(face: Float64Array): Grid {
  const cells = face.length - 1;
  const one = () => new Float64Array(cells);
  return {
    cells,
    dx: (face[cells] - face[0]) / cells,
    face,
    width: one().map((_, i) => face[i + 1] - face[i]),
    position: one().map((_, i) => 0.5 * (face[i] + face[i + 1])),
    faceArea: new Float64Array(cells + 1),
    volume: one(),
    wallArea: one(),
    diameter: one(),
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
    const { face, width } = grid;
    const target = a2 > a1 ? grid.lossForward : grid.lossBackward;
    for (let i = 0; i < grid.cells; i++) {
      const from = face[i] - (width[i - 1] ?? width[i]) / 2;
      const to = face[i + 1] + (width[i + 1] ?? width[i]) / 2;
      if (to <= stations[n] || from >= stations[n + 1]) continue;
      const mean = grid.volume[i] / width[i];
      const steep = (mean * mean) / (grid.faceArea[i] * grid.faceArea[i + 1]);
      target[i] = Math.max(target[i], share * steep * steep);
    }
  });
}
