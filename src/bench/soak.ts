/**
 * Tries what could spoil a night's run: `npm run soak -- [--files N] [--designs N] [--refused N] [--kills N] [--records N] [--real N]`
 *
 * Mutated configuration files, random engines from ranges wider than sane, refused ones in great number, kill −9 of a small
 * study at random moments, going on with a very long one, and a long one that the model answers. Prints what was tried, lost and
 * wrong, and ends with code 1 when anything was. `--full` is the size that issues are judged by; `--record` writes the summary to src/bench/SOAK.md.
 */
import { writeFileSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import fastGlob from 'fast-glob';
import { modelVersion, toolVersion } from '../cli/versions.ts';
import { loadStudy } from '../config/files.ts';
import { defaultWorkers, WorkerPool } from '../evaluation/worker-pool.ts';
import { packageFolder } from '../report/package-folder.ts';
import { soakDesigns } from './soak/designs.ts';
import { soakFiles } from './soak/files.ts';
import { soakKills } from './soak/kills.ts';
import { soakLongStudy } from './soak/long-study.ts';
import { soakRecords } from './soak/records.ts';
import { soakRefused } from './soak/refused.ts';
import type { Tally } from './soak/tally.ts';

const { values } = parseArgs({
  options: {
    kills: { type: 'string' },
    designs: { type: 'string' },
    files: { type: 'string' },
    refused: { type: 'string' },
    records: { type: 'string' },
    real: { type: 'string' },
    full: { type: 'boolean', default: false },
    seed: { type: 'string', default: 'soak' },
    workers: { type: 'string', default: String(defaultWorkers()) },
    record: { type: 'boolean', default: false },
  },
});

const SHORT = { files: 2000, designs: 300, refused: 10_000, kills: 10, records: 20_000, real: 1000, workers: 1 };
const FULL = {
  files: 20_000,
  designs: 10_000,
  refused: 100_000,
  kills: 200,
  records: 1_000_000,
  real: 100_000,
  workers: 1,
};

function whole(name: keyof typeof SHORT): number {
  const value = Number(values[name] ?? (values.full ? FULL : SHORT)[name]);
  if (!Number.isInteger(value) || value < (name === 'workers' ? 1 : 0))
    throw new RangeError(`--${name}: a whole number is expected, not "${values[name]}"`);
  return value;
}

const say = (words: string) => process.stderr.write(`${words}\n`);

function inWords({ name, tried, lost, wrong, notes, faults }: Tally): string[] {
  return [
    `${name}: ${tried} tried, ${lost} lost, ${wrong} wrong`,
    ...notes.map((note) => `  ${note}`),
    ...faults.map((fault) => `  ${fault}`),
  ];
}

function asMarkdown(tallies: readonly Tally[], minutes: number): string {
  const [{ model }] = cpus();
  return [
    '# What could spoil a night, tried',
    '',
    'Written by `npm run soak -- --record` and its options; run it again rather than editing this file.',
    '',
    `- ${new Date().toISOString().slice(0, 10)}, ${minutes.toFixed(0)} min, seed "${values.seed}"`,
    `- version ${toolVersion}, performance model ${modelVersion.slice(0, 12)}, Node ${process.version}`,
    `- ${process.platform} ${process.arch}, ${cpus().length} × ${model.trim()}, ${(totalmem() / 2 ** 30).toFixed(0)} GiB`,
    '',
    '| what | tried | lost | wrong |',
    '|---|---:|---:|---:|',
    ...tallies.map(({ name, tried, lost, wrong }) => `| ${name} | ${tried} | ${lost} | ${wrong} |`),
    '',
    'Lost: a stored evaluation that is gone, or a worker or reader that crashed or hung. Wrong: other bytes than an undisturbed run, a',
    'number that is not finite, a verdict without a reason, audits that say what they are not, or a mistake without line and column.',
    '',
    ...tallies.flatMap(({ name, notes, faults }) => [
      `## ${name}`,
      '',
      ...notes.map((note) => `- ${note}`),
      ...faults.map((fault) => `- **${fault}**`),
      '',
    ]),
  ].join('\n');
}

async function soak(): Promise<Tally[]> {
  const folder = packageFolder();
  // Commands are started from their builds, so that sources which change meanwhile do not change the study.
  const { buildEntry } = await import(pathToFileURL(join(folder, 'src', 'cli', 'build.mjs')).href);
  const built = async (entry: string) => join(await buildEntry(entry), `${entry}.js`);
  const { seed } = values;
  const progress = (what: string) => (done: number) => say(`  ${what}: ${done}`);
  const tallies: Tally[] = [];
  const finish = (tally: Tally) => {
    tallies.push(tally);
    for (const line of inWords(tally)) say(line);
  };
  const files = whole('files');
  if (files > 0) {
    const sources = (
      await fastGlob(['configs/*.yaml', 'configs/engines/*.yaml'], { cwd: folder, absolute: true })
    ).sort();
    finish(soakFiles({ files, seed, sources, onProgress: progress('files') }));
  }
  const studyFile = join(folder, 'tests', 'cli', 'tiny-study.yaml');
  const reading = await loadStudy(studyFile);
  if (!reading.ok) throw new Error(`${studyFile} does not read`);
  const workers = whole('workers');
  const designs = whole('designs');
  const refused = whole('refused');
  const { brief } = reading.study;
  const pool = new WorkerPool({ workers, onFault: say });
  try {
    if (designs > 0) finish(await soakDesigns({ designs, seed, brief, pool, onProgress: progress('designs') }));
    if (refused > 0) finish(await soakRefused({ refused, seed, brief, pool, onProgress: progress('refused') }));
  } finally {
    await pool.close();
  }
  const kills = whole('kills');
  if (kills > 0) {
    const program = await built('main');
    const { slug } = reading.study;
    finish(await soakKills({ kills, seed, program, studyFile, slug, workers, onProgress: progress('kills') }));
  }
  const records = whole('records');
  if (records > 0) {
    const program = await built('soak-records');
    finish(await soakRecords({ records, program, onProgress: progress('records') }));
  }
  const real = whole('real');
  if (real > 0) {
    const program = await built('soak-records');
    finish(await soakLongStudy({ real, threads: defaultWorkers(), program }));
  }
  return tallies;
}

const began = performance.now();
const tallies = await soak();
const sum = (name: 'tried' | 'lost' | 'wrong') => tallies.reduce((total, tally) => total + tally[name], 0);
if (values.record)
  writeFileSync(
    join(packageFolder(), 'src', 'bench', 'SOAK.md'),
    asMarkdown(tallies, (performance.now() - began) / 60_000),
  );
process.stdout.write(`${sum('tried')} tried, ${sum('lost')} lost, ${sum('wrong')} wrong\n`);
process.exitCode = sum('lost') + sum('wrong') > 0 ? 1 : 0;
