/** What an engine costs, item by item, at the user's own prices. */
import type { Brief } from '../engine/brief.ts';
import { sameStock } from './nesting.ts';
import type { Part } from './parts.ts';
import { type SheetUse, sheetFor, sheetUses, useOf } from './sheet-use.ts';

export interface CostItem {
  item: string;
  kind: 'sheet' | 'strip' | 'bought' | 'labour';
  /** m² of sheet with its share of the nesting waste, m of strip, pieces, or hours. */
  quantity: number;
  unit: 'm²' | 'm' | 'piece' | 'h';
  /** Per unit; null when the user gave none. */
  price: number | null;
  cost: number | null;
}

export interface CostEstimate {
  items: CostItem[];
  /** Sum of what has a price; null when the sheet of the shell has none. */
  total: number | null;
  /** Items without a price. */
  unpriced: string[];
}

/** Hours to cut, form and weld one part. Common practice, no source. */
const HOURS: Record<Part['kind'], number> = {
  'rolled sheet': 1.5,
  'flat sheet': 0.5,
  plate: 1,
  strip: 0.3,
  bar: 0.6,
  wire: 0.2,
};

/**
 * Cost of all blanks of one part, or null without a price: sheet by the area that it takes of the stock as nested, strip by
 * length, the rest by the piece.
 */
export function partCost(part: Part, brief: Brief, uses: readonly SheetUse[]): number | null {
  return itemOf(part, brief, uses).cost;
}

/** Itemised cost: parts, the user's hardware list, and labour when an hour has a price. */
export function costEstimate(
  parts: readonly Part[],
  brief: Brief,
  uses: readonly SheetUse[] = sheetUses(parts, brief.sheets),
): CostEstimate {
  const items = parts.map((part) => itemOf(part, brief, uses));
  items.push(...boughtItems(parts, brief));
  const perHour = brief.prices.perHourLabour;
  if (perHour !== null) {
    const hours = parts.reduce((sum, part) => sum + HOURS[part.kind] * part.count, 0);
    items.push({
      item: 'labour',
      kind: 'labour',
      quantity: hours,
      unit: 'h',
      price: perHour,
      cost: hours * perHour,
    });
  }
  const shellPriced = parts.every((part, i) => part.kind !== 'rolled sheet' || items[i].cost !== null);
  return {
    items,
    total: shellPriced ? items.reduce((sum, item) => sum + (item.cost ?? 0), 0) : null,
    unpriced: items.filter((item) => item.cost === null).map((item) => item.item),
  };
}

/** What the user's list names besides prices of parts: spark plug, regulator, hose. */
function boughtItems(parts: readonly Part[], brief: Brief): CostItem[] {
  const used = new Set(parts.flatMap((part) => [part.id, part.material]));
  return Object.entries(brief.prices.hardware)
    .filter(([item]) => !used.has(item))
    .map(([item, price]) => ({ item, kind: 'bought', quantity: 1, unit: 'piece', price, cost: price }));
}

function itemOf(part: Part, brief: Brief, uses: readonly SheetUse[]): CostItem {
  const use = useOf(part, uses);
  if (use !== null || part.kind === 'rolled sheet' || part.kind === 'flat sheet') {
    const price = use?.stock.price ?? null;
    const perArea = use === null || price === null ? null : price / (use.stock.width * use.stock.length);
    return priced(part, 'sheet', sheetFor(part, use), 'm²', perArea);
  }
  if (part.kind === 'strip') {
    const stock = brief.strips.find((strip) => sameStock(part, strip));
    return priced(part, 'strip', part.blankLength * part.count, 'm', stock?.price ?? null);
  }
  const { hardware } = brief.prices;
  return priced(part, 'bought', part.count, 'piece', hardware[part.id] ?? hardware[part.material] ?? null);
}

function priced(
  part: Part,
  kind: CostItem['kind'],
  quantity: number,
  unit: CostItem['unit'],
  price: number | null,
): CostItem {
  return { item: part.name, kind, quantity, unit, price, cost: price === null ? null : price * quantity };
}
