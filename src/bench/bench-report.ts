/**
 * What a report of many finalists costs: `--entry bench-report FOLDER [COUNT]` reads the stored results of a study, repeats
 * its finalists up to COUNT (100), writes the whole report into a temporary folder and tells wall time and memory.
 *
 * Memory of this process is its greatest resident size; that of the browser is the greatest sum over its processes of their
 * proportional share (Pss of Linux), in which memory that several of them share counts once.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { readStoredResults } from '../cli/stored-results.ts';
import { writeReport } from '../cli/write-report.ts';

const SAMPLE_MILLISECONDS = 100;

/** Processes that descend from one, without itself; empty where /proc is missing. */
function descendants(process: number): number[] {
  const parents = new Map<number, number>();
  try {
    for (const name of readdirSync('/proc').filter((entry) => /^\d+$/.test(entry))) {
      const parent = /^PPid:\s+(\d+)/m.exec(quietly(`/proc/${name}/status`))?.[1];
      if (parent !== undefined) parents.set(Number(name), Number(parent));
    }
  } catch {
    return [];
  }
  const found: number[] = [];
  for (const [id] of parents)
    for (let above = parents.get(id); above !== undefined; above = parents.get(above))
      if (above === process) {
        found.push(id);
        break;
      }
  return found;
}

/** A process may end between two looks. */
function quietly(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}

/** MB. */
function share(id: number): number {
  return Number(/^Pss:\s+(\d+)/m.exec(quietly(`/proc/${id}/smaps_rollup`))?.[1] ?? 0) / 1024;
}

const [folder, wanted = '100'] = process.argv.slice(2);
const count = Number(wanted);
if (folder === undefined || !Number.isInteger(count) || count < 1)
  throw new Error('Give the folder of a finished study and, if wanted, a whole number of finalists.');
const { results, facts } = await readStoredResults(resolve(folder));
if (results.candidates.length === 0) throw new Error(`${folder} has no finalist to repeat.`);
const { candidates } = results;
results.candidates = Array.from({ length: count }, (_, i) => ({
  ...candidates[i % candidates.length],
  id: `C${i + 1}`,
  rank: i + 1,
}));

const target = await mkdtemp(join(tmpdir(), 'report-bench-'));
let browser = 0;
let together = 0;
const sampler = setInterval(() => {
  const now = descendants(process.pid).reduce((sum, id) => sum + share(id), 0);
  browser = Math.max(browser, now);
  together = Math.max(together, now + share(process.pid));
}, SAMPLE_MILLISECONDS);
try {
  const start = performance.now();
  await writeReport(target, results, facts, { pdf: true, note: (sentence) => console.error(sentence) });
  const seconds = (performance.now() - start) / 1e3;
  clearInterval(sampler);
  const size = async (name: string) => Math.round((await stat(join(target, name))).size / 1e5) / 10;
  console.log(
    JSON.stringify({
      finalists: count,
      seconds: Math.round(seconds * 10) / 10,
      processMegabytes: Math.round(process.resourceUsage().maxRSS / 1024),
      browserMegabytes: Math.round(browser),
      togetherMegabytes: Math.round(together),
      htmlMegabytes: await size('report.html'),
      pdfMegabytes: await size('report.pdf'),
    }),
  );
} finally {
  clearInterval(sampler);
  await rm(target, { recursive: true, force: true });
}
