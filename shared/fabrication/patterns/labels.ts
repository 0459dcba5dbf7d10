/** Room for text on a pattern: a text that would be illegible or would lie on another one is left out. */
import type { Label } from './pattern.ts';

/** Width of a letter over the height of a capital, generous for any plain typeface. */
export const TEXT_WIDTH = 0.85;
/** Smallest letter height worth printing, m. */
const LEGIBLE = 0.0012;

interface TextBox {
  minX: number;
  minY: number;
  maxX: number;
  maxY: number;
}

/** Upright rectangle round a label, m. */
export function labelBox(label: Label): TextBox {
  const half = { along: (label.text.length * TEXT_WIDTH * label.height) / 2, across: label.height * 0.7 };
  const c = Math.abs(Math.cos(label.angle));
  const s = Math.abs(Math.sin(label.angle));
  const w = half.along * c + half.across * s;
  const h = half.along * s + half.across * c;
  return { minX: label.at.x - w, maxX: label.at.x + w, minY: label.at.y - h, maxY: label.at.y + h };
}

/** Keeps labels in order of importance, dropping those too small to read or in the way of an earlier one. */
export function keepClearLabels(labels: Label[]): Label[] {
  const kept: Label[] = [];
  for (const label of labels) {
    if (label.height < LEGIBLE) continue;
    const box = labelBox(label);
    const clear = kept.every((other) => {
      const b = labelBox(other);
      return box.maxX < b.minX || b.maxX < box.minX || box.maxY < b.minY || b.maxY < box.minY;
    });
    if (clear) kept.push(label);
  }
  return kept;
}
