/** Cuts a pattern at true size into overlapping tiles that fit the paper. Pure geometry, mm. */

import type { Edge, Point } from '../../../shared/fabrication/patterns/outline.ts';
import { edgeLength, polar } from '../../../shared/fabrication/patterns/outline.ts';
import { drawnBounds, type Pattern } from '../../../shared/fabrication/patterns/pattern.ts';
import { turnPattern } from '../../../shared/fabrication/patterns/turn.ts';
import type { Paper } from '../page.ts';

export const PAPER_SIZE: Record<Paper, { width_mm: number; height_mm: number }> = {
  A4: { width_mm: 210, height_mm: 297 },
  Letter: { width_mm: 215.9, height_mm: 279.4 },
};

/** Blank edge that printers need, and the strip for title, check bar and tile map at the foot, mm. */
export const PAGE_MARGIN = 8;
export const FOOT_HEIGHT = 24;
/** Shared by neighbouring tiles, mm. */
export const OVERLAP = 12;

export interface Window {
  width: number;
  height: number;
}

/** The part of a page that shows patterns, mm. */
export function pageWindow(paper: Paper): Window {
  const { width_mm, height_mm } = PAPER_SIZE[paper];
  return { width: width_mm - 2 * PAGE_MARGIN, height: height_mm - PAGE_MARGIN - FOOT_HEIGHT };
}

export interface Tile {
  /** From 0, top left first. */
  row: number;
  column: number;
  /** Where the pattern's origin lies from the window's top left corner, mm, y down. */
  originX: number;
  originY: number;
  /** Whether any line of the pattern shows here; blank tiles are not printed. */
  shows: boolean;
}

export interface Tiling {
  /** The pattern as it was given. */
  source: Pattern;
  /** The pattern, turned by a quarter when that saves tiles. */
  pattern: Pattern;
  rows: number;
  columns: number;
  tiles: Tile[];
}

/** Tiles one pattern. A pattern that fits one window gives one tile. */
export function tilePattern(pattern: Pattern, window: Window): Tiling {
  const upright = grid(pattern, window);
  const turned = grid(turnPattern(pattern), window);
  const best = turned.rows * turned.columns < upright.rows * upright.columns ? turned : upright;
  return { ...best, source: pattern };
}

function grid(pattern: Pattern, window: Window): Omit<Tiling, 'source'> {
  const bounds = drawnBounds(pattern);
  const width = (bounds.maxX - bounds.minX) * 1e3;
  const height = (bounds.maxY - bounds.minY) * 1e3;
  const step = { x: window.width - OVERLAP, y: window.height - OVERLAP };
  // Two millimetres keep the outermost line off the window's edge.
  const count = (size: number, full: number, pitch: number) =>
    Math.max(1, Math.ceil((size + 4 - full) / pitch - 1e-9) + 1);
  const columns = width + 4 <= window.width ? 1 : count(width, window.width, step.x);
  const rows = height + 4 <= window.height ? 1 : count(height, window.height, step.y);
  const originX = (window.width + (columns - 1) * step.x - width) / 2 - bounds.minX * 1e3;
  const originY = (window.height + (rows - 1) * step.y - height) / 2 + bounds.maxY * 1e3;
  const samples = patternSamples(pattern);
  const tiles = Array.from({ length: rows * columns }, (_, i): Tile => {
    const row = Math.floor(i / columns);
    const column = i % columns;
    const x = originX - column * step.x;
    const y = originY - row * step.y;
    const shows = samples.some((p) => {
      const px = x + p.x * 1e3;
      const py = y - p.y * 1e3;
      return px >= 0 && px <= window.width && py >= 0 && py <= window.height;
    });
    return { row, column, originX: x, originY: y, shows };
  });
  return { pattern, rows, columns, tiles };
}

/** Points along all lines, at most four millimetres apart. */
function patternSamples(pattern: Pattern): Point[] {
  const edges = [...pattern.outlines.flatMap((o) => o.edges), ...pattern.marks.map((m) => m.edge)];
  return edges.flatMap(edgeSamples);
}

function edgeSamples(edge: Edge): Point[] {
  if (edge.kind === 'polyline') return edge.points;
  const n = Math.max(1, Math.ceil(edgeLength(edge) / 0.004));
  return Array.from({ length: n + 1 }, (_, i) => {
    const t = i / n;
    if (edge.kind === 'arc') return polar(edge.centre, edge.radius, edge.start + edge.sweep * t);
    return { x: edge.from.x + (edge.to.x - edge.from.x) * t, y: edge.from.y + (edge.to.y - edge.from.y) * t };
  });
}
