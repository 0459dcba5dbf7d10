/**
 * One study from configuration to report:
 *
 *     study ─ architecturesOf ─▶ spaces ─ search ─▶ populations ─ judge ─▶ finalists ─ assemble ─▶ results ─▶ report ─▶ mail
 *                                            └──── every answer through the study's store ────┘
 *
 * Everything evaluated is stored before it counts, and everything after the store follows from seed and answers, so a run
 * that is killed at any moment goes on with the same command and ends with the same results.json.
 */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Study } from '../config/study.ts';
import type { EvaluationSummary, Evaluator } from '../evaluation/evaluation.ts';
import { assembleResults } from '../ranking/assemble.ts';
import { rankingCsv } from '../ranking/ranking-csv.ts';
import type { RunFacts, StudyResults } from '../ranking/results.ts';
import { resultsJson } from '../ranking/results-json.ts';
import type { ProvenBrowser } from '../report/printing/find-browser.ts';
import { architecturesOf } from '../space/architectures.ts';
import { writeDurably } from '../store/durable-file.ts';
import { type Job, StoredEvaluations } from '../store/stored-evaluations.ts';
import { StudyClock } from '../store/study-clock.ts';
import {
  HTML_FILE,
  openStudyFolder,
  RANKING_FILE,
  RESULTS_FILE,
  RUN_FILE,
  type StudyFolder,
} from '../store/study-folder.ts';
import { notPrinted } from './failure.ts';
import { gatherEvidence } from './gather-evidence.ts';
import { judgeFinalists } from './judge-finalists.ts';
import type { Progress } from './progress.ts';
import { SCREEN_COST, searchStudy } from './search-study.ts';
import { writeReport } from './write-report.ts';

export interface RunStudyOptions {
  /** Folder that holds the folders of all studies. */
  out: string;
  evaluator: Evaluator;
  /** Threads, for run.json. */
  workers: number;
  fresh: boolean;
  modelVersion: string;
  toolVersion: string;
  progress: Progress;
  signal?: AbortSignal;
  /** s, never going back. */
  monotonic: () => number;
  /** Wall clock, for the report's date only. */
  now: () => Date;
  /** null: no PDF. Asked for when it is time to print. */
  browser: (() => Promise<ProvenBrowser>) | null;
}

export interface RunOutcome {
  folder: string;
  results: StudyResults;
  /** Files of the report. */
  written: string[];
  /** Why there is no PDF although one was wanted. */
  noBrowser: Error | null;
}

/**
 * @throws {StoreError} when the folder cannot be written, is in use, or holds another study
 * @throws {Interrupted} when the run was asked to stop; what was evaluated is stored
 */
export async function runStudy(study: Study, options: RunStudyOptions): Promise<RunOutcome> {
  const { progress } = options;
  const folder = await openStudyFolder(study, options);
  try {
    for (const note of folder.notes) progress.note(note);
    const startedAt = await startOf(folder.path, options);
    const clock = new StudyClock(options.monotonic);
    const text = resultsJson(await resultsOf(study, folder, clock, options));
    await writeDurably(join(folder.path, RESULTS_FILE), text);
    // The report is made from what was written, so that "report" makes the same one again.
    const results = JSON.parse(text) as StudyResults;
    await writeDurably(join(folder.path, RANKING_FILE), rankingCsv(results));
    const facts: RunFacts = { ...machine(options), startedAt, wallTimeSeconds: Math.round(clock.latest) };
    await writeFacts(folder.path, facts);
    return { folder: folder.path, results, ...(await report(folder.path, results, facts, options)) };
  } finally {
    await folder.close();
  }
}

async function resultsOf(
  study: Study,
  folder: StudyFolder,
  clock: StudyClock,
  options: RunStudyOptions,
): Promise<StudyResults> {
  const { progress, evaluator, signal, modelVersion, toolVersion } = options;
  const stored = new StoredEvaluations({
    evaluator,
    evaluations: folder.evaluations,
    finalists: folder.finalists,
    modelVersion,
    clock,
    signal,
    onAnswer: (job: Job, _: EvaluationSummary, fresh: boolean) =>
      progress.answered(fresh, job.request.fidelity === 'screen' ? SCREEN_COST : 1),
  });
  const spaces = architecturesOf(study);
  const searched = await searchStudy({ study, folder, spaces, stored, clock, progress });
  const judged = await judgeFinalists({ study, spaces, search: searched.result, stored, progress });
  progress.note(`The search ended because ${searched.result.stoppedBecause}.`);
  return assembleResults(gatherEvidence({ study, spaces, searched, judged, modelVersion, toolVersion }));
}

/** A missing or failing browser takes only the PDF. */
async function report(folder: string, results: StudyResults, facts: RunFacts, { browser, progress }: RunStudyOptions) {
  const note = (sentence: string) => progress.note(sentence);
  if (browser === null)
    return { written: await writeReport(folder, results, facts, { pdf: false, note }), noBrowser: null };
  const found = await browser().catch((error: Error) => error);
  if (found instanceof Error) {
    if (found.name !== 'NoBrowserError') throw found;
    return { written: await writeReport(folder, results, facts, { pdf: false, note }), noBrowser: found };
  }
  try {
    return { written: await writeReport(folder, results, facts, { pdf: true, browser: found, note }), noBrowser: null };
  } catch (error) {
    // The HTML was written first.
    if (!(error instanceof Error) || error.name !== 'PrintError') throw error;
    return { written: [join(folder, HTML_FILE)], noBrowser: new Error(notPrinted(error), { cause: error }) };
  }
}

/** When the study was first started: a run that goes on keeps the date of its first night. */
async function startOf(folder: string, options: RunStudyOptions): Promise<string> {
  if (!options.fresh) {
    try {
      const { startedAt } = JSON.parse(await readFile(join(folder, RUN_FILE), 'utf8'));
      if (!Number.isNaN(Date.parse(startedAt))) return startedAt;
    } catch {
      // The first run, or a damaged file that matters to nothing else.
    }
  }
  const startedAt = options.now().toISOString();
  await writeFacts(folder, { ...machine(options), startedAt, wallTimeSeconds: 0 });
  return startedAt;
}

function machine({ workers }: RunStudyOptions) {
  return { workers, node: process.version, platform: `${process.platform} ${process.arch}` };
}

async function writeFacts(folder: string, facts: RunFacts): Promise<void> {
  await writeDurably(join(folder, RUN_FILE), `${JSON.stringify(facts, null, 2)}\n`);
}
