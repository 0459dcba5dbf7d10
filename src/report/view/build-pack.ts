/** Parts lists, nesting and true-size pattern pages, as the drawing office made them. */
import type { PartMass } from '../../../shared/checks/check.ts';
import type { Candidate, StudyResults } from '../../ranking/results.ts';
import { Markup } from '../charts/svg.ts';
import type { DrawingSet, PartRow, PatternPage } from '../drawing-set.ts';
import { MAP_TITLE } from '../drawings/pattern-pages.ts';
import { anchor } from '../format/escape.ts';
import { count, fixed, percent } from '../format/number.ts';
import { both, imperial, metric } from '../format/quantity.ts';
import { drawing, type FigureView } from './figure.ts';
import { filesTitle } from './file-list.ts';
import { money } from './key-figures.ts';

export interface PartLine {
  mark: string;
  name: string;
  count: string;
  material: string;
  stock: string;
  cut: string;
  cutImperial: string;
  area: string;
  mass: string;
  cost: string;
  note: string;
}

export interface PartsListView {
  candidate: string;
  anchor: string;
  lines: PartLine[];
  totalMass: string;
  totalCost: string;
  nesting: (FigureView & { label: string })[];
  files: { name: string; description: string }[];
  filesTitle: string;
}

export interface PatternPageView {
  anchor: string;
  heading: string;
  /** CSS page name and class, one for each paper size. */
  page: string;
  caption: string;
  svg: Markup;
}

export interface BuildPackView {
  lists: PartsListView[];
  patterns: PatternPageView[];
  /** What the pattern pages hold, where they are, and where those of the others are. */
  patternLead: string;
  books: { name: string; text: string }[];
  /** Paper sizes in use, for `@page` rules. */
  pageSizes: { page: string; width: string; height: string }[];
}

function cutSize(row: PartRow): { metric: string; imperial: string } {
  if (row.cutWidth === 0) return { metric: metric(row.cutLength, 'm'), imperial: imperial(row.cutLength, 'm') };
  const mm = (m: number) => fixed(m * 1e3, 0);
  return {
    metric: `${mm(row.cutLength)} × ${mm(row.cutWidth)}\u00a0mm`,
    imperial: `${fixed(row.cutLength / 0.0254, 2)} × ${fixed(row.cutWidth / 0.0254, 2)}\u00a0in`,
  };
}

function partLine(row: PartRow, currency: string): PartLine {
  const cut = cutSize(row);
  return {
    mark: row.mark,
    name: row.name,
    count: String(row.count),
    material: row.material,
    stock: row.stock,
    cut: cut.metric,
    cutImperial: cut.imperial,
    area: row.area === 0 ? '' : metric(row.area * row.count, 'm²'),
    mass: metric(row.mass, 'kg'),
    cost: money(row.cost, currency),
    note: row.note,
  };
}

export function partsAnchor(id: string): string {
  return `parts-${anchor(id)}`;
}

/** What is bought or paid for besides the parts that are made. */
function otherLine({ part, material, cost }: PartMass, currency: string): PartLine {
  const made = { mark: '', count: '', stock: '', cut: '', cutImperial: '', area: '', mass: '', note: '' };
  return { ...made, name: part, material, cost: money(cost, currency) };
}

function partsList(
  { id, assessment }: Candidate,
  rows: PartRow[],
  results: StudyResults,
  drawings: DrawingSet,
): PartsListView {
  const { currency } = results.study.brief;
  const others = assessment.parts.filter(({ material }) => material === 'bought' || material === 'labour');
  const known = [...rows, ...others].filter((r) => r.cost !== null);
  const cost = known.reduce((sum, r) => sum + (r.cost ?? 0), 0);
  const files = drawings.files
    .filter((f) => f.candidateId === id)
    .map((f) => ({ name: f.name, description: f.description }));
  const unpriced = rows.length + others.length - known.length;
  return {
    candidate: id,
    anchor: partsAnchor(id),
    lines: [...rows.map((r) => partLine(r, currency)), ...others.map((other) => otherLine(other, currency))],
    totalMass: both(
      rows.reduce((sum, r) => sum + r.mass, 0),
      'kg',
    ),
    totalCost:
      known.length === 0
        ? 'no price known'
        : money(cost, currency) + (unpriced > 0 ? ` and ${unpriced} without a price` : ''),
    nesting: (drawings.nesting[id] ?? []).map((sheet, i) => ({
      ...drawing(
        `figure-${anchor(id)}-nesting-${i + 1}`,
        sheet.svg,
        `${id}: ${sheet.label}; ${percent(sheet.waste)} of the sheet is left over.`,
      ),
      label: sheet.label,
    })),
    files,
    filesTitle: filesTitle(files),
  };
}

/** "page-210x297" from a size in mm. */
function pageName(width: number, height: number): string {
  return `sheet-${String(width).replace('.', '_')}x${String(height).replace('.', '_')}`;
}

/** A page of patterns as the templates set it; one CSS page for each size of paper. */
export function patternPageViews(pages: readonly PatternPage[]): Pick<BuildPackView, 'patterns' | 'pageSizes'> {
  const sizes = new Map<string, { page: string; width: string; height: string }>();
  const patterns = pages.map((p, i): PatternPageView => {
    const { width_mm, height_mm } = p.pageSize;
    const page = pageName(width_mm, height_mm);
    sizes.set(page, { page, width: String(width_mm), height: String(height_mm) });
    return {
      anchor: `pattern-${i + 1}`,
      heading: `${p.candidateId}: ${p.title}`,
      page,
      caption: p.caption,
      svg: new Markup(p.svg),
    };
  });
  return { patterns, pageSizes: [...sizes.values()] };
}

function patternLead(pages: readonly PatternPage[]): string {
  if (pages.length === 0) return '';
  const ids = [...new Set(pages.map((p) => p.candidateId))].join(', ');
  const map = pages.some((p) => p.title === MAP_TITLE) ? '; the first is the map of how the tiles join' : '';
  return `${count(pages.length, 'page')} of ${ids} close this report${map}. Every shell, cone, flare, bend and bell, and the templates of the valve, are at true size there; flat bars are drawn small with the sizes to mark them out.`;
}

export function buildPackView(results: StudyResults, drawings: DrawingSet): BuildPackView {
  return {
    lists: results.candidates.flatMap((c) => {
      const rows = drawings.partsLists[c.id];
      return rows && rows.length > 0 ? [partsList(c, rows, results, drawings)] : [];
    }),
    ...patternPageViews(drawings.patternPages),
    patternLead: patternLead(drawings.patternPages),
    books: drawings.patternBooks.map(({ candidateId, name, pages }) => ({
      name,
      text: `${candidateId}, ${count(pages.length, 'page')}`,
    })),
  };
}
