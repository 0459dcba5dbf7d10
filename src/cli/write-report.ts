/** Results → files of the report: HTML, PDF, patterns. */
import { mkdir, readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { RunFacts, StudyResults } from '../ranking/results.ts';
import { drawingSet } from '../report/drawings/index.ts';
import type { ProvenBrowser } from '../report/printing/find-browser.ts';
import { renderHtml } from '../report/render-html.ts';
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
  await writeDurably(html, renderHtml(results, facts, { paper, drawings }));
  await writePatterns(folder, drawings.contents);
  // A PDF of earlier results beside newer HTML would mislead.
  await rm(pdf, { force: true }).catch((error) => {
    throw writeFailure(pdf, error);
  });
  if (!options.pdf) return [html];
  const { printPdf } = await import('../report/printing/print-pdf.ts');
  const printed = await printPdf(html, pdf, { timestamp: facts.startedAt, title, browser: options.browser });
  for (const note of printed.notes) options.note(`PDF: ${note}.`);
  return [html, pdf];
}

/** Our own names: candidate, part, SVG or DXF; and what an interrupted write left. */
const PATTERN_NAME = /^C\d+-[a-z0-9-]+\.(svg|dxf)(\.[0-9a-f-]+\.part)?$/;

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
