/** Turns a pattern by a quarter, anticlockwise, so that it fits paper or sheet the other way. */
import type { Edge, Outline, Point } from './outline.ts';
import type { Pattern } from './pattern.ts';

const QUARTER = Math.PI / 2;

export function turnPattern(pattern: Pattern): Pattern {
  return {
    ...pattern,
    outlines: pattern.outlines.map((outline): Outline => ({ edges: outline.edges.map(turnEdge) })),
    marks: pattern.marks.map((mark) => ({ ...mark, edge: turnEdge(mark.edge) })),
    labels: pattern.labels.map((label) => ({ ...label, at: turnPoint(label.at), angle: label.angle + QUARTER })),
  };
}

function turnPoint(p: Point): Point {
  return { x: -p.y, y: p.x };
}

function turnEdge(edge: Edge): Edge {
  if (edge.kind === 'line') return { kind: 'line', from: turnPoint(edge.from), to: turnPoint(edge.to) };
  if (edge.kind === 'arc') return { ...edge, centre: turnPoint(edge.centre), start: edge.start + QUARTER };
  return { kind: 'polyline', points: edge.points.map(turnPoint) };
}
