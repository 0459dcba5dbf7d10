/** `compare`: the best of several finished studies side by side. */
import { mkdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { printPdf } from '../../report/printing/print-pdf.ts';
import { renderComparison } from '../../report/render-comparison.ts';
import { writeDurably } from '../../store/durable-file.ts';
import { writeFailure } from '../../store/store-error.ts';
import { tell, UsageError, writeData } from '../output.ts';
import { readStoredResults } from '../stored-results.ts';

export interface CompareOptions {
  out: string;
  pdf: boolean;
}

export async function compareCommand(names: readonly string[], options: CompareOptions): Promise<void> {
  const folders = [...new Set(names.map((name) => resolve(name)))];
  if (folders.length < 2) throw new UsageError('A comparison takes the folders of two or more studies.');
  const studies = await Promise.all(folders.map((folder) => readStoredResults(folder)));
  const { paper } = studies[0].results.study.report;
  const html = renderComparison(
    studies.map(({ results }) => results),
    { paper },
  );
  const out = resolve(options.out);
  await mkdir(out, { recursive: true }).catch((error) => {
    throw writeFailure(out, error);
  });
  const page = join(out, 'comparison.html');
  await writeDurably(page, html);
  writeData(page);
  if (!options.pdf) return;
  // The latest study dates the comparison, so that the same folders give the same bytes.
  const timestamp = studies
    .map(({ facts }) => facts.startedAt)
    .sort()
    .at(-1) as string;
  const print = join(out, 'comparison.pdf');
  const printed = await printPdf(page, print, { timestamp, title: 'Comparison of studies' });
  for (const note of printed.notes) tell(`PDF: ${note}.`);
  writeData(print);
}
