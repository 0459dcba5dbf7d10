/** From results to one offline HTML file, which is the screen report and the source of the print. */
import type { RunFacts, StudyResults } from '../ranking/results.ts';
import type { DrawingSet } from './drawing-set.ts';
import { type Paper, page } from './page.ts';
import { setTemplate } from './templates.ts';
import { reportView } from './view/report.ts';

export interface RenderOptions {
  paper: Paper;
  drawings: DrawingSet;
}

/**
 * Pure apart from reading the package's templates and font: the same arguments give the same bytes.
 * @throws {Error} when the package's templates or font are missing.
 */
export function renderHtml(results: StudyResults, facts: RunFacts, options: RenderOptions): string {
  const view = reportView(results, facts, options.drawings);
  const body = setTemplate('report', view);
  return page({
    title: view.title,
    body,
    paper: options.paper,
    footer: `${view.title}${view.invented ? ' · invented demo data' : ''} · ${view.date}`,
    sheets: view.buildPack.pageSizes,
  });
}
