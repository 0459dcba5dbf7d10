/**
 * One run of a study whose evaluations are invented, through the real search and store, measured; soak.ts starts
 * it as a process of its own: `launch.mjs --entry soak-records --out FOLDER --evaluations BUDGET`. Prints one line of JSON. With
 * `--real WORKERS` the model answers, on that many threads, and the memory is told on the way; `--study FILE` instead of the night's demo.
 */
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { SILENT } from '../cli/progress.ts';
import { searchStudy } from '../cli/search-study.ts';
import { modelVersion, toolVersion } from '../cli/versions.ts';
import { digestOf } from '../config/canonical.ts';
import { loadStudy } from '../config/files.ts';
import type { EvaluationSummary } from '../evaluation/evaluation.ts';
import { WorkerPool } from '../evaluation/worker-pool.ts';
import { packageFolder } from '../report/package-folder.ts';
import { architecturesOf } from '../space/architectures.ts';
import { StoredEvaluations } from '../store/stored-evaluations.ts';
import { StudyClock } from '../store/study-clock.ts';
import { openStudyFolder } from '../store/study-folder.ts';
import { INVENTED } from './soak/invented-evaluator.ts';
import { type MemorySample, megabytes, memoryInWords, sampleMemory } from './soak/memory.ts';

/** What a run is measured to take. */
export interface RecordsMeasured {
  folder: string;
  /** s from the start of the run, once the program is loaded, to opened logs, and to the end of the search. */
  opened: number;
  ended: number;
  /** s of processor time, all threads, the loading of the program included: what is left when others use the machine too. */
  processor: number;
  records: number;
  /** Evaluations that were not found in the store. */
  fresh: number;
  /** How many of those came out how. */
  status: Partial<Record<EvaluationSummary['status'], number>>;
  /** Notes of where the search stood. */
  notes: number;
  logBytes: number;
  /** MB, the most that the process ever held. */
  peak: number;
  /** While fresh evaluations come in. */
  samples: MemorySample[];
  /** Of everything that the search hands on. */
  digest: string;
}

const { values } = parseArgs({
  options: {
    out: { type: 'string' },
    evaluations: { type: 'string' },
    real: { type: 'string' },
    study: { type: 'string' },
  },
});
const evaluations = Number(values.evaluations);
if (!values.out || !(evaluations > 0)) throw new RangeError('--out and --evaluations are expected');

const tell = (sentence: string) => process.stderr.write(`${sentence}\n`);
const seconds = () => performance.now() / 1000;

const reading = await loadStudy(values.study ?? join(packageFolder(), 'configs', 'demo-night.yaml'));
if (!reading.ok) throw new Error('the study does not read');
const { search } = reading.study;
const study = {
  ...reading.study,
  search: { ...search, evaluations, stallGenerations: Number.MAX_SAFE_INTEGER, timeLimit: null },
};

const began = seconds();
const folder = await openStudyFolder(study, { out: values.out, modelVersion, toolVersion, fresh: false });
const opened = seconds() - began;
const clock = new StudyClock(seconds);
const samples: RecordsMeasured['samples'] = [];
let fresh = 0;
const status: RecordsMeasured['status'] = {};
const pool = values.real === undefined ? null : new WorkerPool({ workers: Number(values.real), onFault: tell });
/** Fresh answers from one look at the memory to the next. */
const stride = Math.ceil(evaluations / (pool ? 12 : 5));
const stored = new StoredEvaluations({
  evaluator: pool ?? INVENTED,
  evaluations: folder.evaluations,
  finalists: folder.finalists,
  modelVersion,
  clock,
  onAnswer: (_, summary, isFresh) => {
    if (!isFresh) return;
    status[summary.status] = (status[summary.status] ?? 0) + 1;
    if (++fresh % stride !== 0) return;
    const sample = sampleMemory(folder.evaluations.size);
    samples.push(sample);
    if (pool) tell(memoryInWords([sample]));
  },
});
const { result, kept, asked } = await searchStudy({
  study,
  folder,
  spaces: architecturesOf(study),
  stored,
  clock,
  progress: SILENT,
});
const ended = seconds() - began;
const { user, system } = process.cpuUsage();
const measured: RecordsMeasured = {
  folder: folder.path,
  opened,
  ended,
  processor: (user + system) / 1e6,
  records: folder.evaluations.size,
  fresh,
  status,
  notes: folder.evaluations.notes.length,
  logBytes: folder.evaluations.bytes,
  peak: megabytes(process.resourceUsage().maxRSS * 1024),
  samples,
  digest: digestOf(
    JSON.parse(JSON.stringify({ result, asked, kept: [...kept].map(([, designs]) => designs.designs) })),
  ),
};
await pool?.close();
await folder.close();
process.stdout.write(`${JSON.stringify(measured)}\n`);
