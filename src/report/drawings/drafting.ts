/**
 * The drawing board: lines, text and arrows in millimetres on paper, x to the right and y down.
 * Line weights follow ISO 128 groups: 0.5 mm outlines, 0.25 mm thin and chain lines. One colour, `currentColor`.
 */
import { type Child, el, type Markup } from '../charts/svg.ts';
import { textWidth } from '../charts/text-width.ts';

export const WEIGHT = { outline: 0.5, thin: 0.25 } as const;
/** Dash pattern of each line, mm. */
export const DASH = { solid: null, chain: '6 1.2 1 1.2', dashed: '2 1', double: '6 1 1 1 1 1' } as const;
/** Letter height (font size) of dimensions and notes, mm. */
export const TEXT_SIZE = 2.5;
const ARROW = { length: 2.2, half: 0.4 };

export interface XY {
  x: number;
  y: number;
}

export interface LineStyle {
  weight?: number;
  dash?: keyof typeof DASH;
}

/** Three decimals: a thousandth of a millimetre on paper. */
export function coordinate(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`A drawing was given a coordinate that is not a number: ${value}`);
  const text = value.toFixed(3).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

export function path(d: string, { weight = WEIGHT.thin, dash = 'solid' }: LineStyle = {}): Markup {
  return el('path', {
    d,
    fill: 'none',
    stroke: 'currentColor',
    'stroke-width': weight,
    'stroke-dasharray': DASH[dash],
    'stroke-linejoin': 'round',
  });
}

export function segment(a: XY, b: XY, style: LineStyle = {}): Markup {
  return path(`M${coordinate(a.x)} ${coordinate(a.y)}L${coordinate(b.x)} ${coordinate(b.y)}`, style);
}

export function chainOfPoints(points: XY[], style: LineStyle = {}, closed = false): Markup {
  const d = points.map((p, i) => `${i === 0 ? 'M' : 'L'}${coordinate(p.x)} ${coordinate(p.y)}`).join('');
  return path(closed ? `${d}Z` : d, style);
}

export function ring(centre: XY, radius: number, { weight = WEIGHT.thin, dash = 'solid' }: LineStyle = {}): Markup {
  return el('circle', {
    cx: coordinate(centre.x),
    cy: coordinate(centre.y),
    r: coordinate(radius),
    fill: 'none',
    stroke: 'currentColor',
    'stroke-width': weight,
    'stroke-dasharray': DASH[dash],
  });
}

export interface TextStyle {
  size?: number;
  anchor?: 'start' | 'middle' | 'end';
  /** Degrees, clockwise on paper. */
  turn?: number;
  bold?: boolean;
}

/** Text with its baseline at the point. */
export function write(
  text: string,
  at: XY,
  { size = TEXT_SIZE, anchor = 'start', turn = 0, bold }: TextStyle = {},
): Markup {
  return el(
    'text',
    {
      x: coordinate(at.x),
      y: coordinate(at.y),
      'font-family': 'Inter, sans-serif',
      'font-size': size,
      'font-weight': bold ? '600' : null,
      'text-anchor': anchor === 'start' ? null : anchor,
      fill: 'currentColor',
      transform: turn === 0 ? null : `rotate(${coordinate(turn)} ${coordinate(at.x)} ${coordinate(at.y)})`,
    },
    text,
  );
}

export const widthOf = (text: string, size: number = TEXT_SIZE): number => textWidth(text, size);

/** Filled arrowhead with its tip at the point, pointing along the direction (rad, y down). */
export function arrow(tip: XY, direction: number): Markup {
  const c = Math.cos(direction);
  const s = Math.sin(direction);
  const back = (side: number): XY => ({
    x: tip.x - ARROW.length * c - side * ARROW.half * s,
    y: tip.y - ARROW.length * s + side * ARROW.half * c,
  });
  const corners = [tip, back(1), back(-1)].map((p) => `${coordinate(p.x)} ${coordinate(p.y)}`);
  return el('path', { d: `M${corners.join('L')}Z`, fill: 'currentColor' });
}

/** Horizontal dimension line between two x at height y: arrows inside when there is room, else outside pointing in. */
export function dimensionLine(x0: number, x1: number, y: number): Markup[] {
  const [a, b] = x0 < x1 ? [x0, x1] : [x1, x0];
  if (b - a >= 3 * ARROW.length) {
    return [segment({ x: a, y }, { x: b, y }), arrow({ x: a, y }, Math.PI), arrow({ x: b, y }, 0)];
  }
  const tail = 2 * ARROW.length;
  return [segment({ x: a - tail, y }, { x: b + tail, y }), arrow({ x: a, y }, 0), arrow({ x: b, y }, Math.PI)];
}

/** Vertical dimension line with arrows at both ends. */
export function uprightDimensionLine(x: number, y0: number, y1: number): Markup[] {
  const [a, b] = y0 < y1 ? [y0, y1] : [y1, y0];
  return [segment({ x, y: a }, { x, y: b }), arrow({ x, y: a }, -Math.PI / 2), arrow({ x, y: b }, Math.PI / 2)];
}

/** "120.0 (4.724)": millimetres, and inches in brackets. */
export function lengthText(metres: number): string {
  return `${(metres * 1e3).toFixed(1)} (${(metres / 0.0254).toFixed(2)})`;
}

export function diameterText(metres: number): string {
  return `Ø ${lengthText(metres)}`;
}

export interface Frame {
  /** Unique in the report; letters, digits and hyphens. */
  id: string;
  title: string;
  description: string;
  width: number;
  height: number;
}

/** The whole drawing: true size in mm, with title and description for those who cannot see it. */
export function drawingSvg(frame: Frame, ...children: Child[]): string {
  return el(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${coordinate(frame.width)}mm`,
      height: `${coordinate(frame.height)}mm`,
      viewBox: `0 0 ${coordinate(frame.width)} ${coordinate(frame.height)}`,
      role: 'img',
      'aria-labelledby': `${frame.id}-title`,
      'aria-describedby': `${frame.id}-desc`,
    },
    el('title', { id: `${frame.id}-title` }, frame.title),
    el('desc', { id: `${frame.id}-desc` }, frame.description),
    ...children,
  ).markup;
}

/** Scales of ISO 5455 for reductions and enlargements, paper over object. */
const SCALES = [10, 5, 2, 1, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 50, 1 / 100];

/** With steps between the standard ones, for small drawings whose sizes are all written. */
export const FINE_SCALES = [
  10,
  5,
  4,
  3,
  2.5,
  2,
  1.5,
  1,
  1 / 1.5,
  1 / 2,
  1 / 2.5,
  1 / 3,
  1 / 4,
  ...[5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50].map((n) => 1 / n),
];

/** Largest scale of the series at which an object of `width` × `height` m fits on `paperWidth` × `paperHeight` mm. */
export function standardScale(
  width: number,
  height: number,
  paperWidth: number,
  paperHeight: number,
  scales: readonly number[] = SCALES,
): number {
  return scales.find((s) => width * 1e3 * s <= paperWidth && height * 1e3 * s <= paperHeight) ?? scales.at(-1)!;
}

/** "1 : 5" or "2 : 1". */
export function scaleText(scale: number): string {
  return scale >= 1 ? `${scale} : 1` : `1 : ${Number((1 / scale).toFixed(1))}`;
}
