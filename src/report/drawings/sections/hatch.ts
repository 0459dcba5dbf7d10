/** Cut faces: an outline filled with thin lines at 45°. */
import { el, type Markup } from '../../charts/svg.ts';
import { chainOfPoints, coordinate, segment, WEIGHT, type XY } from '../drafting.ts';

/** Distance between hatching lines, mm. */
const PITCH = 1.6;

/** `id` must be unique in the report; `lean` 1 rises to the right, −1 to the left, so that neighbours differ. */
export function cutFace(points: XY[], id: string, lean: 1 | -1 = 1, pitch: number = PITCH): Markup[] {
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const height = bottom - top;
  const step = pitch * Math.SQRT2;
  const count = Math.ceil((right - left + height) / step);
  const lines = Array.from({ length: count }, (_, i) => {
    const x = left - height + (i + 0.5) * step;
    return lean === 1
      ? segment({ x, y: bottom }, { x: x + height, y: top }, { weight: 0.13 })
      : segment({ x, y: top }, { x: x + height, y: bottom }, { weight: 0.13 });
  });
  const d = `${points.map((p, i) => `${i === 0 ? 'M' : 'L'}${coordinate(p.x)} ${coordinate(p.y)}`).join('')}Z`;
  return [
    el('clipPath', { id }, el('path', { d })),
    el('g', { 'clip-path': `url(#${id})` }, lines),
    chainOfPoints(points, { weight: WEIGHT.outline }, true),
  ];
}

export const box = (x0: number, y0: number, x1: number, y1: number): XY[] => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
];
