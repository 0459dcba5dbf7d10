/** What an engine costs, item by item, at the user's own prices. */
import type { Brief } from '../engine/brief.ts';
import type { Part } from './parts.ts';

export interface CostItem {
  item: string;
  /** m² of sheet, m of strip, pieces, or hours. */
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

/** Share of a sheet that becomes parts when cones and cylinders are laid out by hand. Common practice, no source. */
export const SHEET_UTILISATION = 0.75;
/** Hours to cut, form and weld one part. Common practice, no source. */
const HOURS: Record<Part['kind'], number> = {
  'rolled sheet': 1.5,
  'flat sheet': 0.5,
  plate: 1,
  strip: 0.3,
  bar: 0.6,
  wire: 0.2,
};
const SAME_THICKNESS = 0.03;

/** Cost of all blanks of one part, or null without a price. Sheet by area of the stock that fits, strip by length. */
export function partCost(part: Part, brief: Brief): number | null {
  return itemOf(part, brief).cost;
}

/** Itemised cost: parts, the user's hardware list, and labour when an hour has a price. */
export function costEstimate(parts: readonly Part[], brief: Brief): CostEstimate {
  const items = parts.map((part) => itemOf(part, brief));
  const used = new Set(parts.flatMap((part) => [part.id, part.material]));
  for (const [item, price] of Object.entries(brief.prices.hardware)) {
    if (!used.has(item)) items.push({ item, quantity: 1, unit: 'piece', price, cost: price });
  }
  const perHour = brief.prices.perHourLabour;
  if (perHour !== null) {
    const hours = parts.reduce((sum, part) => sum + HOURS[part.kind] * part.count, 0);
    items.push({ item: 'labour', quantity: hours, unit: 'h', price: perHour, cost: hours * perHour });
  }
  const shellPriced = parts.every((part) => part.kind !== 'rolled sheet' || itemOf(part, brief).cost !== null);
  return {
    items,
    total: shellPriced ? items.reduce((sum, item) => sum + (item.cost ?? 0), 0) : null,
    unpriced: items.filter((item) => item.cost === null).map((item) => item.item),
  };
}

function itemOf(part: Part, brief: Brief): CostItem {
  const near = (thickness: number) => Math.abs(thickness / part.thickness - 1) < SAME_THICKNESS;
  if (part.kind === 'rolled sheet' || part.kind === 'flat sheet') {
    const stock = brief.sheets.find((s) => s.material === part.material && near(s.thickness));
    const price = stock?.price ?? null;
    return priced(
      part,
      (part.area * part.count) / SHEET_UTILISATION,
      'm²',
      price === null ? null : price / (stock!.width * stock!.length),
    );
  }
  if (part.kind === 'strip') {
    const stock = brief.strips.find((s) => s.material === part.material && near(s.thickness));
    return priced(part, part.blankLength * part.count, 'm', stock?.price ?? null);
  }
  const hardware = brief.prices.hardware;
  return priced(part, part.count, 'piece', hardware[part.id] ?? hardware[part.material] ?? null);
}

function priced(part: Part, quantity: number, unit: CostItem['unit'], price: number | null): CostItem {
  return { item: part.name, quantity, unit, price, cost: price === null ? null : price * quantity };
}
