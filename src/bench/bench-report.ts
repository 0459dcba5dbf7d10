/**
 * What a report of many finalists costs: `--entry bench-report FOLDER [COUNT]` reads the stored results of a study, repeats
 * its finalists up to COUNT (100), writes the whole report into a temporary folder and tells wall time and memory.
 */
import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { writeReport } from '../cli/write-report.ts';
import { readFinalists } from './bench-finalists.ts';
import { watchMemory } from './bench-memory.ts';

const [folder, wanted = '100'] = process.argv.slice(2);
const count = Number(wanted);
if (folder === undefined || !Number.isInteger(count) || count < 1)
  throw new Error('Give the folder of a finished study and, if wanted, a whole number of finalists.');
const { results, facts } = await readFinalists(resolve(folder), count);
const target = await mkdtemp(join(tmpdir(), 'report-bench-'));
const memory = watchMemory();
try {
  const start = performance.now();
  await writeReport(target, results, facts, { pdf: true, note: (sentence) => console.error(sentence) });
  const seconds = (performance.now() - start) / 1e3;
  const peak = memory.stop();
  const size = async (name: string) => Math.round((await stat(join(target, name))).size / 1e5) / 10;
  console.log(
    JSON.stringify({
      finalists: count,
      seconds: Math.round(seconds * 10) / 10,
      processMegabytes: Math.round(peak.own),
      browserMegabytes: Math.round(peak.started),
      togetherMegabytes: Math.round(peak.together),
      htmlMegabytes: await size('report.html'),
      pdfMegabytes: await size('report.pdf'),
    }),
  );
} finally {
  memory.stop();
  await rm(target, { recursive: true, force: true });
}
