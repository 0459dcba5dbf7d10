/** The true-size pages of one candidate as an HTML file to print from. */
import type { StudyResults } from '../ranking/results.ts';
import type { PatternBook } from './drawing-set.ts';
import { page } from './page.ts';
import { setTemplate } from './templates.ts';
import { patternPageViews } from './view/build-pack.ts';

export function patternBookTitle(book: PatternBook, { study }: StudyResults): string {
  return `${study.report.title} · ${book.candidateId}: patterns at true size`;
}

/** Pure apart from reading the package's templates and font. */
export function renderPatternBook(book: PatternBook, results: StudyResults): string {
  const title = patternBookTitle(book, results);
  const { patterns, pageSizes } = patternPageViews(book.pages);
  return page({
    title,
    body: setTemplate('patterns', { title, patterns }),
    paper: results.study.report.paper,
    footer: '',
    sheets: pageSizes,
  });
}
