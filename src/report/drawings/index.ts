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

/** Pattern pages of one candidate, map and all; an engine that needs more has its largest parts drawn small with sizes. */
const MOST_PATTERN_PAGES = 120;

/** A drawing set with the content of its files. */
export interface DrawnSet extends DrawingSet {
  /** In the order of `files`; names are relative to the report's folder. */
  contents: { name: string; content: string }[];
  /** Sentences about what could not be drawn; empty when all is well. */
  failures: string[];
}

/**
 * Draws the candidates in rank order: a side view of each, everything else of those that get a full sheet. The pattern
 * pages of the first go into the report, those of the others into a book of their own. Pure; what cannot be drawn is left
 * out and said in `failures`.
 */
export function drawingSet(candidates: readonly Candidate[], study: Study): DrawnSet {
  const set: DrawnSet = {
    sideViews: {},
    sections: {},
    patternPages: [],
    patternBooks: [],
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
  candidates.forEach(({ id, engine }, i) => {
    attempt(id, 'the side view', () => {
      set.sideViews[id] = sideView(engine, paper, { id, marks: partMarks(engine), brief: i >= FULL_SHEETS });
    });
  });
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
  full.forEach(({ id, engine }, i) => {
    attempt(id, 'the pattern pages', () => {
      const pages = patternPages(engine, paper, { id, marks: partMarks(engine), mostPages: MOST_PATTERN_PAGES });
      if (i === 0) set.patternPages = pages;
      else set.patternBooks.push({ candidateId: id, name: `${PATTERNS_FOLDER}/${id}-patterns.pdf`, pages });
    });
  });
  return set;
}

/** Marks of the parts list by part identifier: 1, 2, 3 … in its order. */
export function partMarks(engine: Candidate['engine']): Record<string, string> {
  return Object.fromEntries(partsList(engine).map((part, i) => [part.id, String(i + 1)]));
}
