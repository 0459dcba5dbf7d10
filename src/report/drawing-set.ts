/**
 * What the drawing office hands to the report: finished SVG, captions and parts lists, by candidate.
 * The report places them; it draws and computes nothing of its own here.
 *
 * Every `svg` is one complete `<svg>` element without XML prolog, with width and height in mm, a viewBox, its own
 * `<title>` and `<desc>`, no script, no style sheet and no outside reference. Ids inside it are unique in the whole
 * report (begin them with the candidate's id). Lines and text use `currentColor` (the page sets it black in print and
 * light on a dark screen); no fill behind the drawing. Text has been escaped by whoever made the SVG.
 */

/** A row of the parts list. SI units; null means unknown or not applicable. */
export interface PartRow {
  /** Mark on the drawings, e.g. "1", "2a". */
  mark: string;
  name: string;
  count: number;
  /** Standard designation of the material. */
  material: string;
  /** Stock to buy or cut from, for people, e.g. "sheet 0.9 mm", "bar Ø 8 mm". */
  stock: string;
  /** Thickness of sheet or strip, diameter of bar or wire, m. */
  thickness: number;
  /** Cut size of one blank, m; width 0 for bar and wire. */
  cutLength: number;
  cutWidth: number;
  /** Net area of one blank, m²; 0 for bar and wire. */
  area: number;
  /** Mass of all pieces of this row, kg. */
  mass: number;
  /** Cost of all pieces of this row in the user's currency; null when a price is missing. */
  cost: number | null;
  note: string;
}

/** How the blanks lie on one stated sheet. */
export interface NestingSheet {
  /** e.g. "304, 0.9 mm, 1000 × 500 mm, sheet 1 of 2". */
  label: string;
  /** Share of the sheet left over, 0 to 1. */
  waste: number;
  svg: string;
}

/** The side view of one candidate. */
export interface SideView {
  svg: string;
  /** Stated scale, e.g. "1 : 5". */
  scaleText: string;
}

/** A section, face or detail: valve plate face, poppet on its seat, augmenter in place. */
export interface SectionDrawing {
  svg: string;
  /** Says what is shown and to which scale. */
  caption: string;
}

/** One printed page at true size; the report gives it a page of exactly this size without margins. */
export interface PatternPage {
  candidateId: string;
  title: string;
  /** Size of the paper, mm. The SVG covers the whole page and keeps its own margin. */
  pageSize: { width_mm: number; height_mm: number };
  svg: string;
  caption: string;
}

/** The true-size pages of a candidate that is not the recommended one, printed to a PDF of their own. */
export interface PatternBook {
  candidateId: string;
  /** Path relative to the report's folder, with forward slashes, e.g. "patterns/C2-patterns.pdf". */
  name: string;
  pages: PatternPage[];
}

/** A file that lies beside the report. */
export interface DrawingFile {
  /** Path relative to the report's folder, with forward slashes, e.g. "patterns/C1-chamber-shell.dxf". */
  name: string;
  candidateId: string;
  description: string;
}

/** Everything drawn for a study. A candidate that is missing from a record has no such drawing. */
export interface DrawingSet {
  sideViews: Record<string, SideView>;
  sections: Record<string, SectionDrawing[]>;
  /** Of the first candidate; they close the report. */
  patternPages: PatternPage[];
  /** Of the others; empty when no PDF is made. */
  patternBooks: PatternBook[];
  partsLists: Record<string, PartRow[]>;
  /** Blanks laid out on the stated sheets; empty when the brief states none. */
  nesting: Record<string, NestingSheet[]>;
  files: DrawingFile[];
}

/** A set without drawings, for reports that are made before or without them. */
export const NO_DRAWINGS: DrawingSet = {
  sideViews: {},
  sections: {},
  patternPages: [],
  patternBooks: [],
  partsLists: {},
  nesting: {},
  files: [],
};
