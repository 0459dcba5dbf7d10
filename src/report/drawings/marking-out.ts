/** A pattern drawn small with lettered sizes and their key, to mark it out on the sheet with rule, compass and trammel. */
import { outlineBounds } from '../../../shared/fabrication/patterns/outline.ts';
import { drawnBounds, type Pattern } from '../../../shared/fabrication/patterns/pattern.ts';
import { turnPattern } from '../../../shared/fabrication/patterns/turn.ts';
import type { Markup } from '../charts/svg.ts';
import { shorten, wrap } from '../charts/text-width.ts';
import { dimensionLine, segment, TEXT_SIZE, uprightDimensionLine, write, type XY } from './drafting.ts';
import { type LetteredSize, markingSizes } from './marking-sizes.ts';
import { type PaperMap, patternLayers, toPaper } from './pattern-svg.ts';

export interface MarkingBlock {
  /** mm. */
  height: number;
  /** Draws the block with its upper left corner at the point. */
  draw(at: XY): Markup[];
}

/** Room for the drawing with its dimensions, and between drawing and key, mm. */
const DRAWING = { width: 84, height: 46, margin: 8 };
const KEY_GAP = 6;
const PITCH = 3.2;
const HEADING = 6;
/** Reductions in use, paper over part; the sizes rule, so that more than the standard ones serve. */
const REDUCTIONS = [2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100];

/** One block of the given width: heading, drawing on the left, key on the right. */
export function markingBlock(pattern: Pattern, heading: string, width: number): MarkingBlock {
  const bounds = drawnBounds(pattern);
  const upright = bounds.maxY - bounds.minY > 1.2 * (bounds.maxX - bounds.minX);
  const { sizes, lines } = markingSizes(pattern);
  const shown = upright ? turnPattern(pattern) : pattern;
  const box = drawnBounds(shown);
  const long = (box.maxX - box.minX) * 1e3;
  const high = (box.maxY - box.minY) * 1e3;
  const fits = (n: number) =>
    long / n <= DRAWING.width - 2 * DRAWING.margin && high / n <= DRAWING.height - 2 * DRAWING.margin;
  const reduction = REDUCTIONS.find(fits) ?? 200;
  const scale = 1e3 / reduction;
  const keyWidth = width - DRAWING.width - KEY_GAP;
  const key = [
    ...sizes.map((size) => `${size.letter}: ${size.text}`),
    ...lines,
    ...pattern.notes,
    `Drawn 1 : ${reduction}${upright ? ', turned by a quarter' : ''}.`,
  ].flatMap((text) => wrap(text, TEXT_SIZE, keyWidth).map((line, i) => (i === 0 ? line : `    ${line}`)));
  const height = HEADING + Math.max(high / reduction + 2 * DRAWING.margin, key.length * PITCH + 1);
  const draw = (at: XY): Markup[] => {
    const map: PaperMap = {
      originX: at.x + DRAWING.margin + (DRAWING.width - 2 * DRAWING.margin - long / reduction) / 2 - box.minX * scale,
      originY: at.y + HEADING + DRAWING.margin + box.maxY * scale,
      scale,
    };
    const turned = (size: LetteredSize): LetteredSize => (upright ? turnSize(size) : size);
    return [
      segment({ x: at.x, y: at.y + HEADING - 1.5 }, { x: at.x + width, y: at.y + HEADING - 1.5 }),
      write(shorten(heading, 2.8, width), { x: at.x, y: at.y + 3 }, { size: 2.8, bold: true }),
      ...patternLayers(shown, map, { text: false }),
      ...sizes.flatMap((size) => drawSize(turned(size), map, outlineBounds(shown.outlines[0]))),
      ...key.map((line, i) => write(line, { x: at.x + DRAWING.width + KEY_GAP, y: at.y + HEADING + 2 + i * PITCH })),
    ];
  };
  return { height, draw };
}

function turnSize(size: LetteredSize): LetteredSize {
  const turn = (p: XY): XY => ({ x: -p.y, y: p.x });
  return {
    ...size,
    from: turn(size.from),
    to: turn(size.to),
    letterTowards: size.letterTowards && turn(size.letterTowards),
  };
}

/** Level and upright sizes get dimension lines outside the part; others an arrowed line where they lie. */
function drawSize(
  size: LetteredSize,
  map: PaperMap,
  bounds: { minX: number; minY: number; maxX: number; maxY: number },
) {
  const a = toPaper(map, size.from);
  const b = toPaper(map, size.to);
  const low = toPaper(map, { x: bounds.minX, y: bounds.minY });
  const high = toPaper(map, { x: bounds.maxX, y: bounds.maxY });
  const letter = (x: number, y: number) => write(size.letter, { x, y }, { bold: true, anchor: 'middle' });
  const away = 4;
  if (size.place === 'outside' && Math.abs(a.y - b.y) < 0.01) {
    const above = a.y < (low.y + high.y) / 2;
    const y = above ? high.y - away : low.y + away;
    const start = above ? -0.8 : 0.8;
    const roomy = Math.abs(b.x - a.x) >= 6.6;
    return [
      ...[a, b].map((p) => segment({ x: p.x, y: p.y + start }, { x: p.x, y: y + start })),
      ...dimensionLine(a.x, b.x, y),
      letter(roomy ? (a.x + b.x) / 2 : Math.max(a.x, b.x) + 6, roomy ? y - 0.8 : y + 0.9),
    ];
  }
  if (size.place === 'outside' && Math.abs(a.x - b.x) < 0.01) {
    const left = a.x < (low.x + high.x) / 2;
    const x = left ? low.x - away : high.x + away;
    const start = left ? -0.8 : 0.8;
    const [top, bottom] = a.y < b.y ? [a.y, b.y] : [b.y, a.y];
    return [
      ...[a, b].map((p) => segment({ x: p.x + start, y: p.y }, { x: x + start, y: p.y })),
      ...(bottom - top >= 5 ? uprightDimensionLine(x, top, bottom) : [segment({ x, y: top }, { x, y: bottom })]),
      letter(x + (left ? -1.8 : 1.8), (top + bottom) / 2 + 0.9),
    ];
  }
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const aim = size.letterTowards
    ? toPaper(map, size.letterTowards)
    : { x: middle.x - (b.y - a.y), y: middle.y + (b.x - a.x) };
  const distance = Math.hypot(aim.x - middle.x, aim.y - middle.y) || 1;
  // A short line's letter beyond its end must clear the end first.
  const along = Math.abs(((aim.x - middle.x) * (b.x - a.x) + (aim.y - middle.y) * (b.y - a.y)) / distance);
  const reach = 2.4 + along / 2;
  return [
    segment(a, b, { dash: 'dashed' }),
    letter(
      middle.x + ((aim.x - middle.x) / distance) * reach,
      middle.y + ((aim.y - middle.y) / distance) * reach + 0.9,
    ),
  ];
}
