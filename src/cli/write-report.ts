/** Results → files of the report: HTML, PDF, patterns. */
import { mkdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { RunFacts, StudyResults } from '../ranking/results.ts';
import type { ProvenBrowser } from '../report/printing/find-browser.ts';
import { renderHtml } from '../report/render-html.ts';
import { writeDurably } from '../store/durable-file.ts';
import { writeFailure } from '../store/store-error.ts';
import { HTML_FILE, PATTERNS_FOLDER, PDF_FILE } from '../store/study-folder.ts';
import { drawCandidates } from './draw-candidates.ts';

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
  const { drawings, files } = drawCandidates(results);
  const html = join(folder, HTML_FILE);
  const pdf = join(folder, PDF_FILE);
  await writeDurably(html, renderHtml(results, facts, { paper, drawings }));
  await writePatterns(folder, files);
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

/** Patterns of an earlier ranking would be cut from by mistake, so the folder is made anew. */
async function writePatterns(folder: string, files: readonly { name: string; content: string }[]): Promise<void> {
  const patterns = join(folder, PATTERNS_FOLDER);
  try {
    await rm(patterns, { recursive: true, force: true });
    await mkdir(patterns, { recursive: true });
    for (const { name, content } of files) await writeFile(join(folder, name), content);
  } catch (error) {
    throw writeFailure(patterns, error);
  }
}
