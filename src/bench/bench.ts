/**
 * Measures the performance model and a small report: `npm run bench -- [--repeats N] [--write]`.
 *
 * Every figure comes from fresh processes, the compiled and the TypeScript loops in turn, since speed differs between
 * processes more than within one. The table gives medians and spread; `--write` puts it into shared/kernel/README.md.
 */
import { spawn } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism, cpus } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { allowKernel } from '../../shared/kernel/kernel.ts';
import { V8_FLAGS } from '../cli/v8-flags.mjs';
import { packageFolder } from '../report/package-folder.ts';
import { Crew, workAtAWord } from './bench-cores.ts';
import { type Figures, PARTS, type PartName } from './bench-parts.ts';
import { Table } from './bench-table.ts';
import type { WorkKind } from './bench-work.ts';

const START = '<!-- bench:start -->';
const END = '<!-- bench:end -->';
/** New space so wide that no collection hides what a measured stretch allocates. */
const WIDE = ['--max-semi-space-size=128', '--min-semi-space-size=128'];
const LOOPS = ['kernel', 'typescript'] as const;
type Loops = (typeof LOOPS)[number];
/** Times that a repeat measures one core and all of them. */
const SLICES = 4;
const COLUMNS = ['compiled loops', 'TypeScript loops'];

/** Runs one part in a new process. Throws Error with what it wrote when it fails. */
function inNewProcess(part: PartName, loops: Loops): Promise<Figures> {
  const file = fileURLToPath(import.meta.url);
  const flags = [...V8_FLAGS, ...(part === 'steps' ? WIDE : [])];
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...flags, file, '--part', part, loops], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let out = '';
    let err = '';
    child.stdout.on('data', (text) => {
      out += text;
    });
    child.stderr.on('data', (text) => {
      err += text;
    });
    child.on('error', reject);
    child.on('close', (code) => {
      if (code === 0) {
        process.stderr.write(err);
        resolve(JSON.parse(out) as Figures);
      } else reject(new Error(`the benchmark's part "${part}" ended with code ${code}: ${err.trim()}`));
    });
  });
}

/** One core and all of them, in turn: what the machine allows, separate processes, threads of one process. */
async function allCores(table: Table): Promise<void> {
  const { DESIGNS } = await import('./bench-work.ts');
  const file = fileURLToPath(import.meta.url);
  const cores = availableParallelism();
  const over = `${cores} cores over one`;
  const crews: Crew[] = [];
  const crew = async (kind: WorkKind, of: { processes?: number; threads?: number; loops?: Loops }) => {
    const one = await Crew.start(file, kind, of);
    crews.push(one);
    return one;
  };
  try {
    const plain = await crew('arithmetic', { processes: cores });
    const models = {
      kernel: await crew('model', { processes: cores }),
      typescript: await crew('model', { processes: cores, loops: 'typescript' }),
    };
    // Threads take the compiled loops: what their process forbids, they do not know.
    const [thread, threads] = [await crew('threads', {}), await crew('threads', { threads: cores })];
    for (let n = 0; n < SLICES; n++) {
      const [plainOne, plainAll] = [await plain.go(1), await plain.go()];
      const [threadOne, threadAll] = [await thread.go(), await threads.go()];
      table.add({
        [`${over}, plain arithmetic (what the machine allows)`]: (cores * plainOne.wall) / plainAll.wall,
        'processor time of that, all over one': plainAll.processor / plainOne.processor,
        'waited for a core that others had, one and all, %':
          (100 * (plainOne.waited + plainAll.waited)) / (plainOne.wall + plainAll.wall),
      });
      for (const loops of LOOPS) {
        const [one, all] = [await models[loops].go(1), await models[loops].go()];
        table.add(
          {
            'designs a second, one core': DESIGNS / one.wall,
            [`designs a second, ${cores} processes`]: (cores * DESIGNS) / all.wall,
            [`${over}, model in separate processes`]: (cores * one.wall) / all.wall,
            'processor time of a design, all over one': all.processor / one.processor,
          },
          LOOPS.indexOf(loops),
        );
      }
      table.add({
        [`designs a second, ${cores} threads of a pool`]: (cores * DESIGNS) / threadAll.wall,
        [`${over}, model in threads of a pool`]: (cores * threadOne.wall) / threadAll.wall,
        'processor time of a design in threads, all over one': threadAll.processor / cores / threadOne.processor,
      });
    }
  } finally {
    for (const one of crews) one.end();
  }
}

function countFrom(args: string[]): number {
  const at = args.indexOf('--repeats');
  if (at < 0) return 5;
  const repeats = Number(args[at + 1]);
  if (Number.isInteger(repeats) && repeats >= 1 && repeats <= 100) return repeats;
  throw new Error(`--repeats ${args[at + 1] ?? ''}: a whole number from 1 to 100 is expected, such as --repeats 5`);
}

async function main(args: string[]): Promise<number> {
  if (args[0] === '--part') {
    allowKernel(args[2] !== 'typescript');
    process.stdout.write(JSON.stringify(await PARTS[args[1] as PartName]()));
    return 0;
  }
  if (args[0] === '--work') {
    allowKernel(args[3] !== 'typescript');
    await workAtAWord(args[1] as WorkKind, Number(args[2]));
    return 0;
  }
  const repeats = countFrom(args);
  const table = new Table('figure', COLUMNS);
  const reports = new Table('report of the sample study');
  for (let n = 0; n < repeats; n++) {
    for (const part of ['steps', 'sod', 'verdicts', 'chance', 'memory', 'startUp'] as const) {
      for (const loops of LOOPS) table.add(await inNewProcess(part, loops), LOOPS.indexOf(loops));
    }
    await allCores(table);
    reports.add(await inNewProcess('report', 'kernel'));
    process.stderr.write(`repeat ${n + 1} of ${repeats} done\n`);
  }
  const processor = cpus()[0]?.model.trim() ?? 'unknown processor';
  const text = [
    `${new Date().toISOString().slice(0, 10)}, ${processor}, ${cpus().length} cores, Node ${process.version}, ${repeats} fresh processes a figure, ${SLICES} times each for cores over one.`,
    '',
    ...table.lines(),
    '',
    ...reports.lines(),
  ].join('\n');
  process.stdout.write(`${text}\n`);
  if (args.includes('--write')) {
    const file = join(packageFolder(), 'shared', 'kernel', 'README.md');
    const [head, rest] = readFileSync(file, 'utf8').split(START);
    const tail = rest?.split(END)[1];
    if (tail === undefined) throw new Error(`${file}: the markers ${START} and ${END} are missing; put them back.`);
    writeFileSync(file, `${head}${START}\n${text}\n${END}${tail}`);
  }
  return 0;
}

process.exitCode = await main(process.argv.slice(2));
