/** The drawing office: everything that is drawn for a study, and the files to cut from. */
import { partsList } from '../../../shared/fabrication/parts.ts';
import type { Study } from '../../config/study.ts';
import type { Candidate } from '../../ranking/results.ts';
import { PATTERNS_FOLDER } from '../../store/study-folder.ts';
import type { DrawingSet } from '../drawing-set.ts';
import { FULL_SHEETS } from '../view/report.ts';
import { nestingSheets } from './nesting-sheets.ts';
import { partRows } from './part-rows.ts';
import { patternFiles } from './pattern-files.ts';
import { patternPages } from './pattern-pages.ts';
import { sectionDrawings } from './sections/index.ts';
import { sideView } from './side-view.ts';

/** Pattern pages of a whole report; the best candidate's large patterns come first. */
const MOST_PATTERN_PAGES = 25;

/** A drawing set with the content of its files. */
export interface DrawnSet extends DrawingSet {
  /** In the order of `files`; names are relative to the report's folder. */
  contents: { name: string; content: string }[];
  /** Sentences about what could not be drawn; empty when all is well. */
  failures: string[];
}

/**
 * Draws the candidates in rank order: a side view of each, everything else of those that get a full sheet. Pure; what cannot be drawn is left out and said
 * in `failures`.
 */
export function drawingSet(candidates: readonly Candidate[], study: Study): DrawnSet {
  const set: DrawnSet = {
    sideViews: {},
    sections: {},
    patternPages: [],
    partsLists: {},
    nesting: {},
    files: [],
    contents: [],
    failures: [],
  };
  const attempt = (id: string, what: string, draw: () => void) => {
    try {
      draw();
    } catch (error) {
      set.failures.push(`${id}: ${what} could not be drawn: ${error instanceof Error ? error.message : String(error)}`);
    }
  };
  const { paper } = study.report;
  const full = candidates.slice(0, FULL_SHEETS);
  for (const { id, engine } of candidates) {
    attempt(id, 'the side view', () => {
      set.sideViews[id] = sideView(engine, paper, { id, marks: partMarks(engine) });
    });
  }
  for (const { id, engine } of full) {
    attempt(id, 'the sections', () => {
      set.sections[id] = sectionDrawings(engine, paper, { id, marks: partMarks(engine) });
    });
    attempt(id, 'the parts list', () => {
      set.partsLists[id] = partRows(engine, study.brief);
      set.nesting[id] = nestingSheets(engine, study.brief.sheets, { id, marks: partMarks(engine) });
    });
    attempt(id, 'the pattern files', () => {
      for (const { name, content, description } of patternFiles(engine, `${PATTERNS_FOLDER}/${id}-`)) {
        set.contents.push({ name, content });
        set.files.push({ name, candidateId: id, description });
      }
    });
  }
  set.patternPages = pagesWithinLimit(full, paper, attempt);
  return set;
}

/** Every candidate gets its small patterns and marking-out drawings; tiles fill the pages that are left, best candidate first. */
function pagesWithinLimit(
  candidates: readonly Candidate[],
  paper: Study['report']['paper'],
  attempt: (id: string, what: string, draw: () => void) => void,
): DrawingSet['patternPages'] {
  const draw = (candidate: Candidate, tilePages: number) =>
    patternPages(candidate.engine, paper, { id: candidate.id, marks: partMarks(candidate.engine), tilePages });
  const drawable: { candidate: Candidate; fewest: number }[] = [];
  for (const candidate of candidates) {
    attempt(candidate.id, 'the pattern pages', () => {
      drawable.push({ candidate, fewest: draw(candidate, 0).length });
    });
  }
  let left = MOST_PATTERN_PAGES - drawable.reduce((sum, d) => sum + d.fewest, 0);
  return drawable.flatMap(({ candidate, fewest }) => {
    // One page is kept for the map of the tiles.
    const pages = draw(candidate, Math.max(0, left - 1));
    left -= Math.max(0, pages.length - fewest);
    return pages;
  });
}

/** Marks of the parts list by part identifier: 1, 2, 3 … in its order. */
export function partMarks(engine: Candidate['engine']): Record<string, string> {
  return Object.fromEntries(partsList(engine).map((part, i) => [part.id, String(i + 1)]));
}
