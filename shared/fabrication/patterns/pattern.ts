/** A flat pattern: what is cut, bent, marked and written on one blank. Metres; x to the right, y up. */
import {
  type Bounds,
  type Edge,
  edgeBounds,
  mergeBounds,
  type Outline,
  outlineArea,
  outlineBounds,
  type Point,
} from './outline.ts';

/** Layers of the exported files. CUT: outlines; BEND: roll and bend lines; SEAM: true closing line; MARK: scribe lines. */
export const PATTERN_LAYERS = ['CUT', 'BEND', 'MARK', 'SEAM', 'TEXT'] as const;
export type PatternLayer = (typeof PATTERN_LAYERS)[number];

export interface Mark {
  layer: 'BEND' | 'MARK' | 'SEAM';
  edge: Edge;
}

export interface Label {
  text: string;
  /** Middle of the text. */
  at: Point;
  /** Letter height, m. */
  height: number;
  /** rad, anticlockwise. */
  angle: number;
}

/** An edge of the outer outline that is joined to another part; both sides name the same joint. */
export interface MatingEdge {
  joint: string;
  /** Indices into the outer outline's edges. */
  edges: number[];
}

export interface Pattern {
  /** Identifier of the part in the parts list. */
  id: string;
  name: string;
  count: number;
  material: string;
  thickness: number;
  /** First the outer outline, then the holes; anticlockwise. */
  outlines: Outline[];
  marks: Mark[];
  labels: Label[];
  mating: MatingEdge[];
  /** What to mind when cutting or rolling; may be empty. */
  notes: string[];
}

/** Smallest upright rectangle of the outer outline. */
export function patternBounds(pattern: Pattern): Bounds {
  return outlineBounds(pattern.outlines[0]);
}

/** Bounds of the outline and all marks. */
export function drawnBounds(pattern: Pattern): Bounds {
  return mergeBounds([patternBounds(pattern), ...pattern.marks.map((mark) => edgeBounds(mark.edge))]);
}

/** Sheet area that remains after cutting, m². */
export function patternArea(pattern: Pattern): number {
  const [outer, ...holes] = pattern.outlines;
  return Math.abs(outlineArea(outer)) - holes.reduce((sum, hole) => sum + Math.abs(outlineArea(hole)), 0);
}
