/**
 * Sheet that a set of parts takes from the rack, waste included, as the blanks nest. What stays of a sheet as one straight
 * strip over its whole width or length goes back to the rack; all else that is not a part is waste.
 */
import type { SheetStock } from '../engine/brief.ts';
import { type NestedSheet, nestParts, sameStock } from './nesting.ts';
import type { Part } from './parts.ts';

export interface SheetUse {
  stock: SheetStock;
  /** Sheets cut into, more than are stated when more are needed. */
  sheets: number;
  /** Taken from the rack, and what of it becomes parts, m². */
  taken: number;
  net: number;
  /** Parts with a blank larger than the sheet, to be made in pieces; their bare rectangles are counted in `taken`. */
  tooLarge: Part[];
}

/** One entry for each material and thickness that is in stock. Pure; the number of sheets at hand does not limit it. */
export function sheetUses(parts: readonly Part[], stocks: readonly SheetStock[]): SheetUse[] {
  const unlimited: SheetStock[] = stocks.map((stock) => ({ ...stock, sheets: null }));
  const { sheets, unplaced } = nestParts(parts, unlimited);
  const without = new Set(unplaced.map((u) => u.part));
  const uses: SheetUse[] = [];
  for (const part of parts) {
    if (!isSheet(part) || uses.some((use) => sameStock(part, use.stock))) continue;
    const group = parts.filter((p) => isSheet(p) && sameStock(p, part));
    const nested = sheets.filter((sheet) => sameStock(part, sheet.stock));
    const chosen = nested[0]?.stock ?? unlimited.find((stock) => sameStock(part, stock));
    if (chosen === undefined) continue;
    const tooLarge = group.filter((p) => without.has(p.id));
    const pieces = tooLarge.reduce((sum, p) => sum + p.blankLength * p.blankWidth * p.count, 0);
    uses.push({
      stock: stocks[unlimited.indexOf(chosen)],
      sheets: nested.length + Math.ceil(pieces / (chosen.length * chosen.width)),
      taken: nested.reduce((sum, sheet) => sum + takenArea(sheet), 0) + pieces,
      net: group.reduce((sum, p) => sum + p.area * p.count, 0),
      tooLarge,
    });
  }
  return uses;
}

/** The entry that a part belongs to; null when it is not sheet or none is in stock. */
export function useOf(part: Part, uses: readonly SheetUse[]): SheetUse | null {
  return isSheet(part) ? (uses.find((use) => sameStock(part, use.stock)) ?? null) : null;
}

/** Sheet for all copies of a part with its share of the waste, m²; the bare rectangles when none is in stock. */
export function sheetFor(part: Part, use: SheetUse | null): number {
  return use === null
    ? part.blankLength * part.blankWidth * part.count
    : (part.area * part.count * use.taken) / Math.max(use.net, 1e-12);
}

function isSheet(part: Part): boolean {
  return part.kind === 'rolled sheet' || part.kind === 'flat sheet' || part.kind === 'plate';
}

/** Area up to the straight cut that leaves the larger strip. */
function takenArea({ stock, placements }: NestedSheet): number {
  const right = Math.max(...placements.map((p) => p.x + p.width));
  const top = Math.max(...placements.map((p) => p.y + p.height));
  return Math.min(Math.min(right, stock.length) * stock.width, Math.min(top, stock.width) * stock.length);
}
