/** Places labels so that none lies on another, on a mark, or outside the picture. Greedy, in order of importance. */
import { textWidth } from './text-width.ts';

export interface Box {
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

export interface LabelRequest {
  text: string;
  /** Tried when `text` finds no place. */
  shorter?: string;
  /** The point that it names, and the radius to keep clear of. */
  x: number;
  y: number;
  radius: number;
}

export interface PlacedLabel extends LabelRequest {
  /** Left end of the baseline. */
  textX: number;
  baseline: number;
  box: Box;
  /** True when it lies too far from its point to be read without a line. */
  leader: boolean;
}

export function overlaps(a: Box, b: Box): boolean {
  return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
}

function inside(box: Box, bounds: Box): boolean {
  return box.x0 >= bounds.x0 && box.x1 <= bounds.x1 && box.y0 >= bounds.y0 && box.y1 <= bounds.y1;
}

// Right and left first, then corners, then above and below: as map makers rank them.
const DIRECTIONS: [number, number][] = [
  [1, 0],
  [1, -0.9],
  [1, 0.9],
  [-1, 0],
  [-1, -0.9],
  [-1, 0.9],
  [0, -1],
  [0, 1],
];
const DISTANCES = [3, 11, 22, 36, 52, 74];

/** The nearest free place for a text round its point, or null. */
function place(
  request: LabelRequest,
  text: string,
  taken: readonly Box[],
  bounds: Box,
  fontSize: number,
): PlacedLabel | null {
  const width = textWidth(text, fontSize);
  const height = fontSize * 1.1;
  for (const distance of DISTANCES) {
    for (const [dx, dy] of DIRECTIONS) {
      const reach = request.radius + distance;
      const cx = request.x + dx * (reach + (dx === 0 ? 0 : width / 2));
      const cy = request.y + dy * (reach + (dx === 0 ? height / 2 : 0));
      const box = { x0: cx - width / 2, x1: cx + width / 2, y0: cy - height / 2, y1: cy + height / 2 };
      if (!inside(box, bounds) || taken.some((other) => overlaps(box, other))) continue;
      return { ...request, text, textX: box.x0, baseline: cy + fontSize * 0.36, box, leader: distance > 11 };
    }
  }
  return null;
}

/**
 * Returns one entry for each request, null for a label that found no free place.
 * `obstacles` are boxes that no label may touch (marks, other text); `background` is touched only when nothing else is left.
 */
export function placeLabels(
  requests: readonly LabelRequest[],
  obstacles: readonly Box[],
  background: readonly Box[],
  bounds: Box,
  fontSize: number,
): (PlacedLabel | null)[] {
  const taken = [...obstacles];
  return requests.map((request) => {
    const texts = request.shorter === undefined ? [request.text] : [request.text, request.shorter];
    let label: PlacedLabel | null = null;
    for (const text of texts)
      label ??=
        place(request, text, [...taken, ...background], bounds, fontSize) ??
        place(request, text, taken, bounds, fontSize);
    if (label) taken.push(label.box);
    return label;
  });
}

/** Moves values apart along one axis so that neighbours are at least `gap` apart, staying within [low, high]; keeps the order. */
export function spread(values: readonly number[], gap: number, low: number, high: number): number[] {
  const order = values.map((value, index) => ({ value, index })).sort((a, b) => a.value - b.value || a.index - b.index);
  const placed = order.map((o) => o.value);
  for (let i = 0; i < placed.length; i++) placed[i] = Math.max(placed[i], i === 0 ? low : placed[i - 1] + gap);
  for (let i = placed.length - 1; i >= 0; i--)
    placed[i] = Math.min(placed[i], i === placed.length - 1 ? high : placed[i + 1] - gap);
  const result = new Array<number>(values.length);
  order.forEach((o, i) => {
    result[o.index] = placed[i];
  });
  return result;
}
