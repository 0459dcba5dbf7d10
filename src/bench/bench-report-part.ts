/** What a small report costs: the HTML of the sample study, then its PDF. In a fresh process nothing is warm, as in a real run. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { drawingSet } from '../report/drawings/index.ts';
import { packageFolder } from '../report/package-folder.ts';
import { findBrowser } from '../report/printing/find-browser.ts';
import { NoBrowserError } from '../report/printing/no-browser-error.ts';
import { printPdf } from '../report/printing/print-pdf.ts';
import { renderHtml } from '../report/render-html.ts';
import { readFinalists } from './bench-finalists.ts';
import { watchMemory } from './bench-memory.ts';
import type { Figures } from './bench-parts.ts';

/** The sample's own number may change with the model; the cost is of this many. */
const FINALISTS = 4;

/**
 * ms of wall time and MB. HTML is drawings, patterns and page, in memory; PDF is the browser's start, the print and the checks of
 * it, on a browser that was found before. Without a browser the figures of the PDF are missing and standard error says so.
 */
export async function report(): Promise<Figures> {
  const { results, facts } = await readFinalists(join(packageFolder(), 'reports', 'sample'), FINALISTS);
  const { paper, title } = results.study.report;
  let from = performance.now();
  const html = renderHtml(results, facts, { paper, drawings: drawingSet(results.candidates, results.study) });
  const htmlTime = performance.now() - from;
  const figures: Figures = {
    [`HTML of ${FINALISTS} finalists, ms`]: htmlTime,
    'HTML, peak memory, MB': process.resourceUsage().maxRSS / 1024,
  };
  const folder = await mkdtemp(join(tmpdir(), 'report-bench-'));
  const memory = watchMemory();
  try {
    const browser = await findBrowser();
    const page = join(folder, 'report.html');
    await writeFile(page, html);
    from = performance.now();
    await printPdf(page, join(folder, 'report.pdf'), { timestamp: facts.startedAt, title, browser });
    figures[`PDF of ${FINALISTS} finalists, ms`] = performance.now() - from;
    figures['PDF, peak memory, browser included, MB'] = memory.stop().together;
  } catch (error) {
    if (!(error instanceof NoBrowserError)) throw error;
    process.stderr.write(`The PDF is not timed: ${error.message}\n`);
  } finally {
    memory.stop();
    await rm(folder, { recursive: true, force: true });
  }
  return figures;
}
