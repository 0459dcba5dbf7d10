/** Plane outlines made of lines, arcs and polylines, with their exact lengths, areas and bounds. Metres and radians. */

export interface Point {
  x: number;
  y: number;
}

export type Edge =
  | { kind: 'line'; from: Point; to: Point }
  /** Sweep is signed: positive runs anticlockwise from the start angle. */
  | { kind: 'arc'; centre: Point; radius: number; start: number; sweep: number }
  | { kind: 'polyline'; points: Point[] };

/** A closed outline: each edge begins where the one before ends, and the last ends where the first begins. */
export interface Outline {
  edges: Edge[];
}

export interface Bounds {
  minX: number;
  minY: number;
  maxX: number;
  maxY: number;
}

export const line = (from: Point, to: Point): Edge => ({ kind: 'line', from, to });

export const polar = (centre: Point, radius: number, angle: number): Point => ({
  x: centre.x + radius * Math.cos(angle),
  y: centre.y + radius * Math.sin(angle),
});

export function circle(centre: Point, radius: number): Outline {
  return { edges: [{ kind: 'arc', centre, radius, start: 0, sweep: 2 * Math.PI }] };
}

export function polygon(points: Point[]): Outline {
  return { edges: points.map((from, i) => line(from, points[(i + 1) % points.length])) };
}

export function edgeStart(edge: Edge): Point {
  if (edge.kind === 'line') return edge.from;
  if (edge.kind === 'polyline') return edge.points[0];
  return polar(edge.centre, edge.radius, edge.start);
}

export function edgeEnd(edge: Edge): Point {
  if (edge.kind === 'line') return edge.to;
  if (edge.kind === 'polyline') return edge.points[edge.points.length - 1];
  return polar(edge.centre, edge.radius, edge.start + edge.sweep);
}

export function edgeLength(edge: Edge): number {
  if (edge.kind === 'line') return Math.hypot(edge.to.x - edge.from.x, edge.to.y - edge.from.y);
  if (edge.kind === 'arc') return Math.abs(edge.sweep) * edge.radius;
  let length = 0;
  for (let i = 1; i < edge.points.length; i++) {
    length += Math.hypot(edge.points[i].x - edge.points[i - 1].x, edge.points[i].y - edge.points[i - 1].y);
  }
  return length;
}

export function outlineLength(outline: Outline): number {
  return outline.edges.reduce((sum, edge) => sum + edgeLength(edge), 0);
}

/** Enclosed area by Green's theorem, ½∮(x dy − y dx): exact for lines and arcs. Positive when run anticlockwise. */
export function outlineArea(outline: Outline): number {
  return outline.edges.reduce((sum, edge) => sum + edgeAreaTerm(edge), 0);
}

function edgeAreaTerm(edge: Edge): number {
  const cross = (a: Point, b: Point) => (a.x * b.y - b.x * a.y) / 2;
  if (edge.kind === 'line') return cross(edge.from, edge.to);
  if (edge.kind === 'polyline') {
    return edge.points.slice(1).reduce((sum, point, i) => sum + cross(edge.points[i], point), 0);
  }
  const { centre, radius, start, sweep } = edge;
  const end = start + sweep;
  return (
    (radius / 2) *
    (radius * sweep + centre.x * (Math.sin(end) - Math.sin(start)) - centre.y * (Math.cos(end) - Math.cos(start)))
  );
}

/** Largest distance between the end of an edge and the start of the next, m; 0 for a perfectly closed outline. */
export function closureGap(outline: Outline): number {
  const { edges } = outline;
  return Math.max(
    ...edges.map((edge, i) => {
      const end = edgeEnd(edge);
      const next = edgeStart(edges[(i + 1) % edges.length]);
      return Math.hypot(end.x - next.x, end.y - next.y);
    }),
  );
}

export function edgeBounds(edge: Edge): Bounds {
  const points = edge.kind === 'polyline' ? edge.points : [edgeStart(edge), edgeEnd(edge)];
  const extremes = edge.kind === 'arc' ? arcExtremes(edge) : [];
  const all = [...points, ...extremes];
  return {
    minX: Math.min(...all.map((p) => p.x)),
    minY: Math.min(...all.map((p) => p.y)),
    maxX: Math.max(...all.map((p) => p.x)),
    maxY: Math.max(...all.map((p) => p.y)),
  };
}

/** Points of the arc that lie farthest along an axis. */
function arcExtremes(arc: Extract<Edge, { kind: 'arc' }>): Point[] {
  const low = Math.min(arc.start, arc.start + arc.sweep);
  const high = Math.max(arc.start, arc.start + arc.sweep);
  const points: Point[] = [];
  for (let k = Math.ceil(low / (Math.PI / 2)); k * (Math.PI / 2) <= high; k++) {
    points.push(polar(arc.centre, arc.radius, k * (Math.PI / 2)));
  }
  return points;
}

export function mergeBounds(all: Bounds[]): Bounds {
  return {
    minX: Math.min(...all.map((b) => b.minX)),
    minY: Math.min(...all.map((b) => b.minY)),
    maxX: Math.max(...all.map((b) => b.maxX)),
    maxY: Math.max(...all.map((b) => b.maxY)),
  };
}

export function outlineBounds(outline: Outline): Bounds {
  return mergeBounds(outline.edges.map(edgeBounds));
}
