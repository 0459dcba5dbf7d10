/** Builds SVG as text: attributes and text are escaped, numbers are rounded, output is the same for the same input. */
import { escapeMarkup } from '../format/escape.ts';

/** Finished markup; a plain string is text and will be escaped. */
export class Markup {
  constructor(readonly markup: string) {}
  /** Handlebars sets values with this method without escaping them. */
  toHTML(): string {
    return this.markup;
  }
}

export type Child = Markup | string | null | Child[];
export type Attributes = Record<string, string | number | null | undefined>;

/** Two decimals are a twentieth of what a printer can show. */
export function round(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`A chart was given a coordinate that is not a number: ${value}`);
  const text = value.toFixed(2).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

function inner(children: Child[]): string {
  return children
    .map((child) => {
      if (child === null) return '';
      if (Array.isArray(child)) return inner(child);
      return typeof child === 'string' ? escapeMarkup(child) : child.markup;
    })
    .join('');
}

/** One element. Attributes that are null or undefined are left out. */
export function el(name: string, attributes: Attributes = {}, ...children: Child[]): Markup {
  let open = `<${name}`;
  for (const [key, value] of Object.entries(attributes)) {
    if (value === null || value === undefined) continue;
    open += ` ${key}="${typeof value === 'number' ? round(value) : escapeMarkup(value)}"`;
  }
  const content = inner(children);
  return new Markup(content === '' ? `${open}/>` : `${open}>${content}</${name}>`);
}

export interface FigureFrame {
  /** Unique in the document. */
  id: string;
  title: string;
  /** What a reader who cannot see it should know: what is drawn and what it shows, with numbers. */
  desc: string;
  width: number;
  height: number;
  /** True when marks inside are links: the figure is then a group, not one image. */
  links?: boolean;
}

/** The outermost element, with title and description. */
export function figure(frame: FigureFrame, ...children: Child[]): Markup {
  return el(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'chart',
      role: frame.links ? 'group' : 'img',
      'aria-labelledby': `${frame.id}-title`,
      'aria-describedby': `${frame.id}-desc`,
      viewBox: `0 0 ${frame.width} ${frame.height}`,
      width: frame.width,
      height: frame.height,
    },
    el('title', { id: `${frame.id}-title` }, frame.title),
    el('desc', { id: `${frame.id}-desc` }, frame.desc),
    ...children,
  );
}

/** Path through points; null breaks the line. */
export function polyline(points: ([number, number] | null)[]): string {
  let d = '';
  let pen = false;
  for (const p of points) {
    if (!p) {
      pen = false;
      continue;
    }
    d += `${pen ? 'L' : 'M'}${round(p[0])} ${round(p[1])}`;
    pen = true;
  }
  return d;
}
