/** Flat patterns as SVG: the same outline for files, true-size pages and small pictures. */
import type { Edge, Outline } from '../../../shared/fabrication/patterns/outline.ts';
import { edgeStart } from '../../../shared/fabrication/patterns/outline.ts';
import { drawnBounds, type Pattern, type PatternLayer } from '../../../shared/fabrication/patterns/pattern.ts';
import { el, type Markup } from '../charts/svg.ts';
import { coordinate, type DASH, drawingSvg, path, WEIGHT, write, type XY } from './drafting.ts';

/** From pattern metres (y up) to paper millimetres (y down). */
export interface PaperMap {
  /** Paper place of the pattern's origin, mm. */
  originX: number;
  originY: number;
  /** mm on paper per metre of the part; 1000 is true size. */
  scale: number;
}

export const toPaper = (map: PaperMap, p: XY): XY => ({
  x: map.originX + p.x * map.scale,
  y: map.originY - p.y * map.scale,
});

const at = (map: PaperMap, p: XY): string => {
  const q = toPaper(map, p);
  return `${coordinate(q.x)} ${coordinate(q.y)}`;
};

/** Path data of one edge, without the move to its start. Full circles and long sweeps are drawn as two arcs. */
function edgeData(edge: Edge, map: PaperMap): string {
  if (edge.kind === 'line') return `L${at(map, edge.to)}`;
  if (edge.kind === 'polyline')
    return edge.points
      .slice(1)
      .map((p) => `L${at(map, p)}`)
      .join('');
  const { centre, radius, start, sweep } = edge;
  const r = coordinate(radius * map.scale);
  const parts = Math.abs(sweep) > Math.PI * 0.99 ? 2 : 1;
  // The paper's y runs down, so an anticlockwise arc keeps sweep-flag 0.
  const flag = sweep > 0 ? 0 : 1;
  return Array.from({ length: parts }, (_, i) => {
    const angle = start + (sweep * (i + 1)) / parts;
    const end = { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
    return `A${r} ${r} 0 0 ${flag} ${at(map, end)}`;
  }).join('');
}

export function outlineData(outline: Outline, map: PaperMap): string {
  const open = `M${at(map, edgeStart(outline.edges[0]))}`;
  return `${open}${outline.edges.map((edge) => edgeData(edge, map)).join('')}Z`;
}

export function edgePathData(edge: Edge, map: PaperMap): string {
  return `M${at(map, edgeStart(edge))}${edgeData(edge, map)}`;
}

const LAYER_STYLE: Record<Exclude<PatternLayer, 'TEXT'>, { weight: number; dash: keyof typeof DASH }> = {
  CUT: { weight: 0.35, dash: 'solid' },
  BEND: { weight: WEIGHT.thin, dash: 'dashed' },
  MARK: { weight: WEIGHT.thin, dash: 'chain' },
  SEAM: { weight: WEIGHT.thin, dash: 'double' },
};

/** One group for each layer. `text: false` leaves the writing out, for small pictures. */
export function patternLayers(
  pattern: Pattern,
  map: PaperMap,
  options: { text: boolean; weights?: number } = { text: true },
): Markup[] {
  const factor = options.weights ?? 1;
  const group = (layer: PatternLayer, ...children: Markup[]) => el('g', { 'data-layer': layer }, ...children);
  const marks = (layer: 'BEND' | 'MARK' | 'SEAM') => {
    const data = pattern.marks
      .filter((m) => m.layer === layer)
      .map((m) => edgePathData(m.edge, map))
      .join('');
    const { weight, dash } = LAYER_STYLE[layer];
    return data === '' ? null : group(layer, path(data, { weight: weight * factor, dash }));
  };
  const cut = pattern.outlines.map((outline) =>
    path(outlineData(outline, map), { weight: LAYER_STYLE.CUT.weight * factor }),
  );
  const text = pattern.labels.map((label) => {
    const size = label.height * map.scale * 1.35;
    const q = toPaper(map, label.at);
    // The label's middle becomes the middle of the capitals, in the turned frame.
    const drop = label.height * map.scale * 0.5;
    const turn = (-label.angle * 180) / Math.PI;
    const rad = -label.angle;
    const base = { x: q.x - drop * Math.sin(rad), y: q.y + drop * Math.cos(rad) };
    return write(label.text, base, { size, anchor: 'middle', turn });
  });
  return [
    group('CUT', ...cut),
    ...(['BEND', 'MARK', 'SEAM'] as const).map(marks).filter((g) => g !== null),
    ...(options.text && text.length > 0 ? [group('TEXT', ...text)] : []),
  ];
}

/** One pattern as a file of its own at true size, in mm, with 5 mm of margin. */
export function patternSvg(pattern: Pattern): string {
  const margin = 5;
  const bounds = drawnBounds(pattern);
  const width = (bounds.maxX - bounds.minX) * 1e3 + 2 * margin;
  const height = (bounds.maxY - bounds.minY) * 1e3 + 2 * margin;
  const map = { originX: margin - bounds.minX * 1e3, originY: margin + bounds.maxY * 1e3, scale: 1e3 };
  return drawingSvg(
    {
      id: pattern.id,
      title: `${pattern.name}, ${pattern.count} off`,
      description: [
        `Flat pattern at true size; ${pattern.material}, ${(pattern.thickness * 1e3).toFixed(2)} mm.`,
        ...pattern.notes,
      ].join(' '),
      width,
      height,
    },
    ...patternLayers(pattern, map),
  );
}
