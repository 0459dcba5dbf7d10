/** Several studies' best side by side, in the form of a report. */
import type { StudyResults } from '../ranking/results.ts';
import { type Paper, page } from './page.ts';
import { setTemplate } from './templates.ts';
import { comparisonView } from './view/comparison.ts';

export interface ComparisonOptions {
  paper: Paper;
}

/**
 * Pure apart from reading the package's templates and font.
 * @throws {RangeError} when there is nothing to compare: fewer than two studies.
 */
export function renderComparison(results: readonly StudyResults[], options: ComparisonOptions): string {
  if (results.length < 2)
    throw new RangeError(
      `A comparison needs the results of two or more studies; ${results.length} given. Name another folder.`,
    );
  const view = comparisonView(results);
  return page({
    title: view.title,
    body: setTemplate('comparison', view),
    paper: options.paper,
    footer: `${view.title}${view.invented ? ' · invented demo data' : ''}`,
    sheets: [],
  });
}
