/**
 * The search on the real model against plain random search and against one mixed population, and what screening saves.
 *
 *     node src/cli/launch.mjs --entry search-model [--study FILE] [--evaluations 2000] [--seeds 3] [--screening 500]
 *         [--fidelity screen] [--workers N] [--store FOLDER] [--print]
 *
 * All methods see the same spaces and pay for every simulation alike. Every answer is stored: a run that was stopped goes on
 * with the same command, and the model's version is part of each answer's name. The table goes between the markers in
 * src/search/README.md; with --print only to the terminal.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { outcomeOf } from '../cli/search-outcome.ts';
import { modelVersion } from '../cli/versions.ts';
import { loadStudy } from '../config/files.ts';
import { defaultWorkers, WorkerPool } from '../evaluation/worker-pool.ts';
import { packageFolder } from '../report/package-folder.ts';
import { hypervolume } from '../search/hypervolume.ts';
import type { ScreeningReport } from '../search/search-result.ts';
import { architecturesOf } from '../space/architectures.ts';
import { RecordLog } from '../store/record-log.ts';
import { type Job, StoredEvaluations } from '../store/stored-evaluations.ts';
import { StudyClock } from '../store/study-clock.ts';
import {
  type MethodInput,
  searchByArchitecture,
  searchByChance,
  searchMixed,
  type Trial,
} from './search-model/methods.ts';
import { measureCosts } from './search-model/screening-costs.ts';

const START = '<!-- model:start -->';
const END = '<!-- model:end -->';

/** Objectives of each feasible design in the order of evaluation; null where a design was not feasible. */
type History = (number[] | null)[];

interface Run {
  method: string;
  history: History;
  /** Absent for methods that know no screening. */
  screening: ScreeningReport | undefined;
}

const { values: options } = parseArgs({
  options: {
    study: { type: 'string', default: join(packageFolder(), 'configs', 'demo-quick.yaml') },
    evaluations: { type: 'string', default: '2000' },
    seeds: { type: 'string', default: '3' },
    screening: { type: 'string', default: '500' },
    fidelity: { type: 'string', default: 'screen' },
    workers: { type: 'string', default: String(defaultWorkers()) },
    store: { type: 'string', default: join(packageFolder(), 'reports', 'search-model') },
    print: { type: 'boolean', default: false },
  },
});

function positive(name: 'evaluations' | 'seeds' | 'screening' | 'workers'): number {
  const value = Number(options[name]);
  if (!(Number.isInteger(value) && value > 0)) throw new RangeError(`--${name} takes a whole number above 0`);
  return value;
}

/** Fresh ones: with "model-1" and so on the search's settings were chosen, and figures of those would flatter it. */
const seedName = (n: number) => `table-${n}`;

const tell = (sentence: string) => process.stderr.write(`${sentence}\n`);

const evaluations = positive('evaluations');
const seeds = positive('seeds');
const ownFidelity = options.fidelity === 'full' ? 'full' : 'screen';
const reading = await loadStudy(options.study);
if (!reading.ok) throw new Error(`${options.study} cannot be read: run pulsejet-study run on it to see why.`);
const { study } = reading;
const spaces = architecturesOf(study);
mkdirSync(options.store, { recursive: true });
const log = await RecordLog.open(join(options.store, 'answers.ndjson'));
if (log.size > 0) tell(`${log.size} stored answers are at hand.`);
const pool = new WorkerPool({ workers: positive('workers'), onFault: tell });
const stored = new StoredEvaluations({
  evaluator: pool,
  evaluations: log,
  finalists: log,
  modelVersion,
  clock: new StudyClock(() => performance.now() / 1000),
});

function jobOf({ space, x, fidelity }: Trial): Job {
  const engine = space.toEngine(x);
  if ('refused' in engine) throw new Error(`a refused design was evaluated: ${engine.sentence}`);
  const architecture = space.architecture.id;
  return {
    request: { engine, brief: study.brief, fidelity: fidelity ?? ownFidelity, constantsDraw: null },
    id: architecture,
    stage: 'benchmark',
    architecture,
    x,
  };
}

type Method = (input: MethodInput) => Promise<ScreeningReport | undefined>;

async function runs(method: string, budget: number, fidelity: Trial['fidelity'], search: Method): Promise<Run[]> {
  const done: Run[] = [];
  for (let n = 1; n <= seeds; n++) {
    const history: History = [];
    const screening = await search({
      spaces,
      seed: seedName(n),
      evaluations: budget,
      population: study.search.population,
      judge: async (trials) => {
        const asked = trials.map((trial) => ({ ...trial, fidelity: trial.fidelity ?? fidelity }));
        const outcomes = (await stored.summaries(asked.map(jobOf))).map(outcomeOf);
        outcomes.forEach(({ status, objectives, violations }, i) => {
          // A coarse run that only screens puts nothing on the front.
          if (trials[i].fidelity === 'screen') return;
          history.push(status === 'ok' && violations.every((v) => v <= 0) ? objectives : null);
        });
        return outcomes;
      },
    });
    done.push({ method, history, screening });
    tell(`${method}, seed ${seedName(n)}: ${history.filter(Boolean).length} of ${history.length} feasible`);
  }
  return done;
}

/** Hypervolume of the feasible designs, on a scale that all the runs share: the best and worst feasible values that any found. */
function volumes(all: readonly Run[]): (history: History) => number {
  const points = all.flatMap(({ history }) => history.filter((f) => f !== null));
  if (points.length < 2) throw new Error('fewer than two feasible designs were found; widen the study or the budget');
  const ideal = [0, 1].map((k) => Math.min(...points.map((f) => f[k])));
  const nadir = [0, 1].map((k) => Math.max(...points.map((f) => f[k])));
  return (history) =>
    hypervolume(
      history.filter((f) => f !== null).map((f) => f.map((v, k) => (v - ideal[k]) / (nadir[k] - ideal[k]))),
      [1.1, 1.1],
    );
}

/** "0.912 (0.890 to 0.930)": median and ends. */
function spread(figures: readonly number[], words = (figure: number) => figure.toFixed(3)): string {
  const sorted = [...figures].sort((a, b) => a - b);
  const [low, middle, high] = [0, sorted.length >> 1, sorted.length - 1].map((i) => words(sorted[i]));
  return low === high ? middle : `${middle} (${low} to ${high})`;
}

const percent = (share: number) =>
  Number.isFinite(share) ? `${Math.round(100 * share)} %`.replace('-', '−') : 'not seen';

function comparisonTable(all: readonly Run[]): string[] {
  const marks = [0.125, 0.25, 0.5, 1].map((share) => Math.round(share * evaluations));
  const volume = volumes(all);
  return [
    `| hypervolume | ${marks.map((mark) => `after ${mark}`).join(' | ')} | feasible designs |`,
    `|---|${marks.map(() => '---|').join('')}---|`,
    ...[...new Set(all.map(({ method }) => method))].map((method) => {
      const own = all.filter((run) => run.method === method).map(({ history }) => history);
      const cells = marks.map((mark) => spread(own.map((history) => volume(history.slice(0, mark)))));
      return `| ${method} | ${cells.join(' | ')} | ${own.map((history) => history.filter(Boolean).length).join(', ')} |`;
    }),
  ];
}

function screeningTable(plain: readonly Run[], screened: readonly Run[]): string[] {
  const volume = volumes([...plain, ...screened]);
  const row = (name: string, own: readonly Run[]) => {
    const share = (part: (report: ScreeningReport) => number) =>
      own === plain
        ? '—'
        : spread(
            own.map(({ screening }) => part(screening as ScreeningReport)),
            percent,
          );
    const designs = spread(
      own.map(({ screening }) => (screening as ScreeningReport).withoutScreening),
      String,
    );
    const settled = share(({ screened, full }) => 1 - full / screened);
    const saved = share(({ spent, withoutScreening }) => 1 - spent / withoutScreening);
    const audits = own.map(({ screening }) => `${screening?.overturned} of ${screening?.audited}`).join(', ');
    const cells = [
      designs,
      settled,
      saved,
      own === plain ? '—' : audits,
      spread(own.map((run) => volume(run.history))),
    ];
    return `| ${name} | ${cells.join(' | ')} |`;
  };
  return [
    '| search | designs tried | settled by the coarse run | cost saved a design | failed coarse runs that ran in full | hypervolume |',
    '|---|---|---|---|---|---|',
    row('every design in full', plain),
    row('coarse runs screen', screened),
  ];
}

async function table(): Promise<string> {
  const { full, coarse, dying } = measureCosts(spaces, study.brief);
  const compared = [
    ...(await runs('one population an architecture', evaluations, ownFidelity, (input) =>
      searchByArchitecture(input, false),
    )),
    ...(await runs('one mixed population', evaluations, ownFidelity, searchMixed)),
    ...(await runs('random search', evaluations, ownFidelity, searchByChance)),
  ];
  const budget = positive('screening');
  const plain = await runs('without screening', budget, 'full', (input) => searchByArchitecture(input, false));
  const screened = await runs('with screening', budget, 'full', (input) => searchByArchitecture(input, true));
  return [
    `${new Date().toISOString().slice(0, 10)}, ${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.versions.node}, model ${modelVersion.slice(0, 12)}, study "${study.slug}": ${spaces.length} architectures.`,
    `${evaluations} evaluations ${ownFidelity === 'screen' ? 'on the coarse grid' : 'in full'}, ${seeds} seeds: median (lowest to highest).`,
    `The seeds, ${Array.from({ length: seeds }, (_, i) => seedName(i + 1)).join(', ')}, had no say in choosing the search's settings: those were chosen with others.`,
    '',
    ...comparisonTable(compared),
    '',
    `Screening, ${seeds} seeds, at a cost of ${budget} full evaluations each. By processor time a full run takes ${full.toFixed(2)} s, a coarse run ${percent(coarse)} of it (reckoned as 25 %), a full run of an engine that dies ${percent(dying)}.`,
    '',
    ...screeningTable(plain, screened),
  ].join('\n');
}

try {
  const written = await table();
  process.stdout.write(`${written}\n`);
  if (!options.print) {
    const file = join(packageFolder(), 'src', 'search', 'README.md');
    const text = readFileSync(file, 'utf8');
    const [head, rest] = text.split(START);
    const tail = rest?.split(END)[1];
    if (tail === undefined) throw new Error(`${file}: the markers ${START} and ${END} are missing; put them back.`);
    writeFileSync(file, `${head}${START}\n${written}\n${END}${tail}`);
  }
} finally {
  await pool.close();
  await log.close();
}
