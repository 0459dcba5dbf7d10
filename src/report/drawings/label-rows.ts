/** Lays leader labels out in rows so that no text lies on another text or on a leader. */
import { widthOf } from './drafting.ts';

export interface LabelWish {
  text: string;
  /** Span of the part on paper, mm: the leader may stand anywhere between. */
  from: number;
  to: number;
}

export interface PlacedText extends LabelWish {
  /** Row counted outwards from the body, from 0. */
  row: number;
  leaderX: number;
  textX: number;
  width: number;
}

/** Space between text and leader, and between texts, mm. */
const GAP = 1;
/** Places along the part's span that a leader tries, middle first. */
const TRIES = [0.5, 0.35, 0.65, 0.2, 0.8, 0.08, 0.92];

/**
 * Rows from the body outwards. Works from right to left; each text begins at its own leader and runs to the right, or ends at
 * the right margin. A leader crosses only rows nearer than its own.
 */
export function labelRows(wishes: readonly LabelWish[], left: number, right: number): PlacedText[] {
  const placed: PlacedText[] = [];
  const order = wishes.map((wish, index) => ({ wish, index }));
  order.sort((a, b) => b.wish.from + b.wish.to - a.wish.from - a.wish.to || a.index - b.index);
  const result = new Array<PlacedText>(wishes.length);
  for (const { wish, index } of order) {
    const best = bestPlace(wish, placed, left, right);
    placed.push(best);
    result[index] = best;
  }
  return result;
}

function bestPlace(wish: LabelWish, placed: PlacedText[], left: number, right: number): PlacedText {
  const width = widthOf(wish.text);
  let best: PlacedText | null = null;
  for (const share of TRIES) {
    const leaderX = wish.from + (wish.to - wish.from) * share;
    const textX = Math.max(left, Math.min(leaderX, right - width));
    for (let row = 0; row <= placed.length; row++) {
      const candidate = { ...wish, row, leaderX, textX, width };
      if (best && row >= best.row) break;
      if (placed.every((other) => clear(candidate, other) && clear(other, candidate))) {
        best = candidate;
        break;
      }
    }
  }
  // Every earlier text is passed outside; a leader that would still cross one is broken round it when it is drawn.
  const leaderX = (wish.from + wish.to) / 2;
  return (
    best ?? {
      ...wish,
      row: 1 + Math.max(-1, ...placed.map((p) => p.row)),
      leaderX,
      textX: Math.max(left, Math.min(leaderX, right - width)),
      width,
    }
  );
}

/** Whether a's text keeps off b's text and b's leader. */
function clear(a: PlacedText, b: PlacedText): boolean {
  const start = a.textX - GAP;
  const end = a.textX + a.width + GAP;
  if (a.row === b.row && start < b.textX + b.width && b.textX < end) return false;
  return !(b.row > a.row && b.leaderX > start && b.leaderX < end);
}
