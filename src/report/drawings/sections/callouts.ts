/** Names beside a drawing: a column of texts with leaders to the points that they name. */
import { spread } from '../../charts/labels.ts';
import { el, type Markup } from '../../charts/svg.ts';
import { wrap } from '../../charts/text-width.ts';
import { coordinate, segment, TEXT_SIZE, write, type XY } from '../drafting.ts';

export interface Callout {
  text: string;
  at: XY;
}

const LINE = 3.3;
const GAP = 1.6;

/** Texts in the order of their points from top to bottom, left-aligned at `x`, between `top` and `bottom`; all mm. */
export function calloutColumn(
  callouts: readonly Callout[],
  x: number,
  width: number,
  top: number,
  bottom: number,
): Markup[] {
  const ordered = callouts
    .map((c) => ({ ...c, lines: wrap(c.text, TEXT_SIZE, width) }))
    .sort((a, b) => a.at.y - b.at.y || a.at.x - b.at.x);
  const tallest = Math.max(1, ...ordered.map((c) => c.lines.length));
  const pitch = tallest * LINE + GAP;
  const places = spread(
    ordered.map((c) => c.at.y),
    Math.min(pitch, (bottom - top) / Math.max(1, ordered.length - 1)),
    top,
    bottom,
  );
  return ordered.flatMap(({ lines, at }, i) => {
    const y = places[i];
    return [
      el('circle', { cx: coordinate(at.x), cy: coordinate(at.y), r: 0.5, fill: 'currentColor' }),
      segment(at, { x: x - 4, y }),
      segment({ x: x - 4, y }, { x: x - 1, y }),
      ...lines.map((line, k) => write(line, { x, y: y + 0.9 + (k - (lines.length - 1) / 2) * LINE })),
    ];
  });
}
