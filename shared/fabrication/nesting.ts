/**
 * Lays the blanks of sheet and plate parts on the stated sheets, as rectangles, by the maximal-rectangles heuristic
 * (J. Jylänki, "A thousand ways to pack the bin", 2010), from the packing library.
 */
import { MaxRectsPacker, Rectangle } from 'maxrects-packer/dist/maxrects-packer.mjs';
import type { SheetStock } from '../engine/brief.ts';
import type { Part } from './parts.ts';

/** Left between blanks for the cut, and round the sheet's edge, m. */
export const CUT_GAP = 0.004;
const EDGE_GAP = 0.003;

export interface Placement {
  /** Part identifier and which one of its count, from 1. */
  part: string;
  copy: number;
  /** Lower left corner and size on the sheet, m; x along the sheet's length. */
  x: number;
  y: number;
  width: number;
  height: number;
  /** Blank turned by a quarter against its pattern's longer side along x. */
  turned: boolean;
}

export interface NestedSheet {
  stock: SheetStock;
  /** From 1; how many sheets of this stock are used in all. */
  number: number;
  of: number;
  placements: Placement[];
  /** Share of the sheet that does not end up in a part, 0 to 1. */
  waste: number;
}

export interface Nesting {
  sheets: NestedSheet[];
  /** Parts for which no stated sheet serves, with the reason. */
  unplaced: { part: string; reason: string }[];
}

/** Share by which stock and part may differ in thickness. Sheet is rolled to about this; common practice, no source. */
const SAME_THICKNESS = 0.03;

/** Whether a part can be cut from a stock, or two parts from the same one. Thickness within 3 %. */
export function sameStock(
  part: { material: string; thickness: number },
  stock: { material: string; thickness: number },
): boolean {
  return stock.material === part.material && Math.abs(stock.thickness / part.thickness - 1) < SAME_THICKNESS;
}

interface Blank {
  part: Part;
  copy: number;
}

/**
 * Nests all sheet and plate parts. Parts go on stock of their own material and thickness (within 3 %); where several
 * sizes are stated, the one that takes every blank with the least sheet area is used. Deterministic.
 */
export function nestParts(parts: readonly Part[], stocks: readonly SheetStock[]): Nesting {
  const nesting: Nesting = { sheets: [], unplaced: [] };
  for (const group of groupByStock(parts)) {
    const { material, thickness } = group[0];
    const fitting = stocks.filter((stock) => sameStock(group[0], stock));
    if (fitting.length === 0) {
      const reason = `no sheet of ${material}, ${(thickness * 1e3).toFixed(2)} mm, is stated`;
      nesting.unplaced.push(...group.map((part) => ({ part: part.id, reason })));
      continue;
    }
    const attempts = fitting.map((stock) => packGroup(group, stock));
    const best = attempts.reduce((a, b) => (cost(b) < cost(a) ? b : a));
    nesting.sheets.push(...best.sheets);
    nesting.unplaced.push(...best.unplaced);
  }
  return nesting;
}

/** Sheet area used; a blank that finds no place outweighs any area. */
function cost(nesting: Nesting): number {
  const area = nesting.sheets.reduce((sum, s) => sum + s.stock.length * s.stock.width, 0);
  return area + 1e6 * nesting.unplaced.length;
}

function groupByStock(parts: readonly Part[]): Part[][] {
  const groups = new Map<string, Part[]>();
  for (const part of parts) {
    if (part.kind === 'bar' || part.kind === 'wire' || part.kind === 'strip') continue;
    const key = `${part.material} ${Math.round(part.thickness * 1e5)}`;
    groups.set(key, [...(groups.get(key) ?? []), part]);
  }
  return [...groups.values()];
}

function packGroup(parts: Part[], stock: SheetStock): Nesting {
  const nesting: Nesting = { sheets: [], unplaced: [] };
  const packer = new MaxRectsPacker<Rectangle>(stock.length - 2 * EDGE_GAP, stock.width - 2 * EDGE_GAP, CUT_GAP, {
    smart: false,
    pot: false,
    square: false,
    allowRotation: true,
  });
  const rectangles: Rectangle[] = [];
  for (const part of parts) {
    if (!fits(part, packer.width, packer.height)) {
      nesting.unplaced.push({
        part: part.id,
        reason: `blank ${mm(part.blankLength)} × ${mm(part.blankWidth)} mm is larger than the sheet of ${mm(stock.length)} × ${mm(stock.width)} mm`,
      });
      continue;
    }
    for (let copy = 1; copy <= part.count; copy++) {
      const rectangle = new Rectangle(part.blankLength, part.blankWidth, 0, 0, false, true);
      rectangle.data = { part, copy } satisfies Blank;
      rectangles.push(rectangle);
    }
  }
  packer.addArray(rectangles);
  const limit = stock.sheets ?? Infinity;
  packer.bins.forEach((bin, i) => {
    const blanks = bin.rects.map((rect) => ({ rect, blank: rect.data as Blank }));
    if (i >= limit) {
      const missing = new Set(blanks.map(({ blank }) => blank.part.id));
      const reason = `${packer.bins.length} sheets of ${mm(stock.length)} × ${mm(stock.width)} mm are needed, ${limit} stated`;
      for (const part of missing) nesting.unplaced.push({ part, reason });
      return;
    }
    const net = blanks.reduce((sum, { blank }) => sum + blank.part.area, 0);
    nesting.sheets.push({
      stock,
      number: i + 1,
      of: Math.min(packer.bins.length, limit),
      placements: blanks.map(({ rect, blank }) => ({
        part: blank.part.id,
        copy: blank.copy,
        x: rect.x + EDGE_GAP,
        y: rect.y + EDGE_GAP,
        width: rect.width,
        height: rect.height,
        turned: rect.rot,
      })),
      waste: 1 - net / (stock.length * stock.width),
    });
  });
  return nesting;
}

function fits(part: Part, length: number, width: number): boolean {
  const { blankLength: a, blankWidth: b } = part;
  return (a <= length && b <= width) || (b <= length && a <= width);
}

const mm = (metres: number): string => (metres * 1e3).toFixed(0);
