/** The duct's silhouette as a thin strip, so that a reader sees which part of the engine a position belongs to. */
import { el, type Markup, polyline } from './svg.ts';

/**
 * @param x from position (m) to pixel.
 * @param middle pixel of the centreline; `halfHeight` pixels of the largest radius.
 */
export function ductOutline(
  position: readonly number[],
  diameter: readonly number[],
  x: (m: number) => number,
  middle: number,
  halfHeight: number,
): Markup {
  const largest = Math.max(...diameter, 1e-9);
  const side = (sign: number): [number, number][] =>
    position.map((p, i) => [x(p), middle + (sign * halfHeight * diameter[i]) / largest]);
  const d = `${polyline([...side(-1), ...side(1).reverse()])}Z`;
  return el('path', { class: 'duct', d });
}
