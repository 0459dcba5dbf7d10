/** `report`: written again from stored results; nothing is evaluated. */
import { resolve } from 'node:path';
import { lockFolder } from '../../store/folder-lock.ts';
import { tell, writeData } from '../output.ts';
import { readStoredResults } from '../stored-results.ts';
import { writeReport } from '../write-report.ts';

export interface ReportOptions {
  pdf: boolean;
}

export async function reportCommand(name: string, options: ReportOptions): Promise<void> {
  const folder = resolve(name);
  const { results, facts } = await readStoredResults(folder);
  const lock = await lockFolder(folder);
  try {
    const written = await writeReport(folder, results, facts, { pdf: options.pdf, note: tell });
    for (const file of written) writeData(file);
  } finally {
    lock.release();
  }
}
