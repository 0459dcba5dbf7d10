/** A figure as the templates set it: an identifier, the drawing and its caption. */
import { Markup } from '../charts/svg.ts';

export interface FigureView {
  id: string;
  svg: Markup;
  caption: string;
}

export function figureView(id: string, svg: Markup | null, caption: string): FigureView | null {
  return svg ? { id, svg, caption } : null;
}

/** Drawings arrive as finished SVG text. */
export function drawing(id: string, svg: string, caption: string): FigureView {
  return { id, svg: new Markup(svg), caption };
}
