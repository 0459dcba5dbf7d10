/** Lays horizontal dimensions out in rows: side by side where they fit, further out where they do not. */
import { widthOf } from './drafting.ts';

export interface DimensionWish {
  text: string;
  x0: number;
  x1: number;
}

export interface PlacedDimension extends DimensionWish {
  row: number;
  /** Left end of the text and whether it stands between the arrows. */
  textX: number;
  inside: boolean;
  width: number;
}

/** Room that two arrowheads outside need on each side, mm. */
const TAIL = 5;
const GAP = 1.2;

/** First-fit rows, nearest the body first; chains of touching dimensions share a row. */
export function dimensionRows(wishes: readonly DimensionWish[], right: number): PlacedDimension[] {
  const rows: [number, number][][] = [];
  return wishes.map((wish) => {
    const [x0, x1] = wish.x0 < wish.x1 ? [wish.x0, wish.x1] : [wish.x1, wish.x0];
    const width = widthOf(wish.text);
    const inside = x1 - x0 >= width + 2 * GAP;
    let textX = (x0 + x1 - width) / 2;
    let span: [number, number] = [x0, x1];
    if (!inside) {
      const room = x1 - x0 >= 6.6 ? GAP : TAIL;
      if (x1 + room + width <= right) {
        textX = x1 + room;
        span = [x0 - (room === TAIL ? TAIL : 0), textX + width + GAP];
      } else {
        textX = x0 - room - width;
        span = [textX - GAP, x1 + (room === TAIL ? TAIL : 0)];
      }
    }
    let row = 0;
    while (rows[row]?.some(([a, b]) => span[0] < b - 1e-6 && a < span[1] - 1e-6)) row++;
    rows[row] = [...(rows[row] ?? []), span];
    return { ...wish, x0, x1, row, textX, inside, width };
  });
}
