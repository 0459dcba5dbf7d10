/** The drawings of the best candidates, gathered for the report, and the files to cut from. */
import type { Brief } from '../../shared/engine/brief.ts';
import { partCost } from '../../shared/fabrication/cost.ts';
import { type Part, partsList } from '../../shared/fabrication/parts.ts';
import type { StudyResults } from '../ranking/results.ts';
import type { DrawingFile, DrawingSet, PartRow } from '../report/drawing-set.ts';
import { patternFiles } from '../report/drawings/pattern-files.ts';
import { patternPages } from '../report/drawings/pattern-pages.ts';
import { sideView } from '../report/drawings/side-view.ts';
import { fixed } from '../report/format/number.ts';
import { FULL_SHEETS } from '../report/view/report.ts';
import { PATTERNS_FOLDER } from '../store/study-folder.ts';

export interface DrawnCandidates {
  drawings: DrawingSet;
  /** Files beside the report. */
  files: { name: string; content: string }[];
}

/** Draws the candidates that get a full sheet. Pure. */
export function drawCandidates(results: StudyResults): DrawnCandidates {
  const { paper } = results.study.report;
  const drawings: DrawingSet = {
    sideViews: {},
    sections: {},
    patternPages: [],
    partsLists: {},
    nesting: {},
    files: [],
  };
  const files: DrawnCandidates['files'] = [];
  for (const candidate of results.candidates.slice(0, FULL_SHEETS)) {
    const { id, engine } = candidate;
    const parts = partsList(engine);
    const marks = Object.fromEntries(parts.map((part, i) => [part.id, String(i + 1)]));
    drawings.sideViews[id] = sideView(engine, paper, { id, marks });
    drawings.partsLists[id] = parts.map((part) => partRow(part, marks[part.id], results.study.brief));
    drawings.patternPages.push(...patternPages(engine, paper, { id, marks }));
    for (const { name, content, description } of patternFiles(engine, `${PATTERNS_FOLDER}/${id}-`)) {
      files.push({ name, content });
      drawings.files.push({ name, candidateId: id, description } satisfies DrawingFile);
    }
  }
  return { drawings, files };
}

function partRow(part: Part, mark: string, brief: Brief): PartRow {
  const { name, count, material, kind, thickness, blankLength, blankWidth, area, mass } = part;
  const round = kind === 'bar' || kind === 'wire';
  return {
    mark,
    name,
    count,
    material,
    stock: `${round ? kind : kind.replace(/^(rolled|flat) /, '')} ${round ? 'Ø ' : ''}${fixed(thickness * 1e3, 2)} mm`,
    thickness,
    cutLength: blankLength,
    cutWidth: round ? 0 : blankWidth,
    area,
    mass: mass * count,
    cost: partCost(part, brief),
    note: '',
  };
}
