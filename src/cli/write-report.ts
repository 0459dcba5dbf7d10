/** Results → files of the report: HTML, PDF, patterns. */
import { mkdir, readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { RunFacts, StudyResults } from '../ranking/results.ts';
import type { PatternBook } from '../report/drawing-set.ts';
import { drawingSet } from '../report/drawings/index.ts';
import type { ProvenBrowser } from '../report/printing/find-browser.ts';
import { renderHtml } from '../report/render-html.ts';
import { patternBookTitle, renderPatternBook } from '../report/render-patterns.ts';
import { writeDurably } from '../store/durable-file.ts';
import { writeFailure } from '../store/store-error.ts';
import { HTML_FILE, PATTERNS_FOLDER, PDF_FILE } from '../store/study-folder.ts';

export interface WriteReportOptions {
  pdf: boolean;
  /** Found already; absent: looked for. */
  browser?: ProvenBrowser;
  note: (sentence: string) => void;
}

/**
 * Writes the report into a study's folder and returns the paths of what was written.
 * @throws {NoBrowserError} after the HTML and the patterns are written, when a PDF is wanted and nothing can print one
 * @throws {StoreError} when the folder cannot be written
 */
export async function writeReport(
  folder: string,
  results: StudyResults,
  facts: RunFacts,
  options: WriteReportOptions,
): Promise<string[]> {
  const { paper, title } = results.study.report;
  const drawings = drawingSet(results.candidates, results.study);
  for (const failure of drawings.failures) options.note(failure);
  const html = join(folder, HTML_FILE);
  const pdf = join(folder, PDF_FILE);
  const printer = options.pdf ? await printerOf(options.browser) : null;
  // The report names no book of patterns that cannot be printed.
  if (printer === null || printer instanceof Error) drawings.patternBooks = [];
  await writeDurably(html, renderHtml(results, facts, { paper, drawings }));
  await writePatterns(folder, drawings.contents);
  // A PDF of earlier results beside newer HTML would mislead.
  await rm(pdf, { force: true }).catch((error) => {
    throw writeFailure(pdf, error);
  });
  if (printer === null) return [html];
  if (printer instanceof Error) throw printer;
  const { printPdf } = await import('../report/printing/print-pdf.ts');
  const print = { timestamp: facts.startedAt, browser: printer };
  const printed = await printPdf(html, pdf, { ...print, title });
  for (const note of printed.notes) options.note(`PDF: ${note}.`);
  for (const book of drawings.patternBooks) await printBook(folder, book, results, print, options.note);
  return [html, pdf];
}

/** The browser to print with, or the reason why there is none. */
async function printerOf(known: ProvenBrowser | undefined): Promise<ProvenBrowser | Error> {
  if (known) return known;
  const { findBrowser } = await import('../report/printing/find-browser.ts');
  return findBrowser().catch((error: Error) => error);
}

/** Printed from a page of its own, which goes again. A book that fails takes neither the report nor the other books with it. */
async function printBook(
  folder: string,
  book: PatternBook,
  results: StudyResults,
  print: { timestamp: string; browser: ProvenBrowser },
  note: (sentence: string) => void,
): Promise<void> {
  const { printPdf } = await import('../report/printing/print-pdf.ts');
  const page = join(folder, book.name.replace(/\.pdf$/, '.html'));
  try {
    await writeDurably(page, renderPatternBook(book, results));
    await printPdf(page, join(folder, book.name), { ...print, title: patternBookTitle(book, results) });
  } catch (error) {
    note(`${book.name} was not printed: ${error instanceof Error ? error.message : String(error)}`);
  } finally {
    await rm(page, { force: true });
  }
}

/** Our own names: candidate, part, SVG or DXF, and books of pages; and what an interrupted write left. */
const PATTERN_NAME = /^\.?C\d+-[a-z0-9-]+\.(svg|dxf|pdf|html)(\.[0-9a-f-]+\.part)?$/;

/** Patterns of an earlier ranking would be cut from by mistake: they go. What the user put beside them stays. */
async function writePatterns(folder: string, files: readonly { name: string; content: string }[]): Promise<void> {
  const patterns = join(folder, PATTERNS_FOLDER);
  try {
    await mkdir(patterns, { recursive: true });
    const stale = (await readdir(patterns)).filter((name) => PATTERN_NAME.test(name));
    for (const name of stale) await rm(join(patterns, name), { force: true });
  } catch (error) {
    throw writeFailure(patterns, error);
  }
  for (const { name, content } of files) await writeDurably(join(folder, name), content);
}
