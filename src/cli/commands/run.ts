/** `run`: one or many studies, one after the other. */
import { basename } from 'node:path';
import type { Study } from '../../config/study.ts';
import { checkDelivery, deliver } from '../../delivery/deliver.ts';
import { Interrupted } from '../../evaluation/evaluation.ts';
import type { QueueEvaluator } from '../../evaluation/queue/index.ts';
import { defaultWorkers, WorkerPool } from '../../evaluation/worker-pool.ts';
import { findBrowser, type ProvenBrowser } from '../../report/printing/find-browser.ts';
import { architecturesOf } from '../../space/architectures.ts';
import { EXIT, type ExitCode, gravest } from '../exit-codes.ts';
import { tellFailure } from '../failure.ts';
import { findFiles } from '../find-files.ts';
import { type Interruption, listenForInterruption } from '../interruption.ts';
import { Ended, tell, UsageError, writeData } from '../output.ts';
import { createProgress, type Progress } from '../progress.ts';
import { readStudies } from '../read-configuration.ts';
import { type RunOutcome, runStudy } from '../run-study.ts';
import { refuseSmallBudget } from '../search-study.ts';
import { modelVersion, toolVersion } from '../versions.ts';
import { candidateLine } from '../wording.ts';

export interface RunOptions {
  out: string;
  workers?: number;
  /** Address of a queue, or true: the environment's. */
  queue?: string | true;
  evaluations?: number;
  seed?: string;
  pdf: boolean;
  fresh?: boolean;
}

/** Candidates named on the terminal. */
const BEST = 3;

const monotonic = () => performance.now() / 1000;

export async function runCommand(patterns: readonly string[], options: RunOptions): Promise<void> {
  const files = await findFiles(patterns);
  const studies = (await readStudies(files)).map(({ file, study }) => ({ file, study: withOverrides(study, options) }));
  refuseSameName(studies);
  for (const { study } of studies) refuseSmallBudget(study, architecturesOf(study));
  for (const { study } of studies) if (study.delivery) checkDelivery(study.delivery, process.env);
  const workers = options.workers ?? defaultWorkers();
  const progress = createProgress(process.stderr, monotonic);
  const pool = new WorkerPool({ workers, onFault: (sentence) => progress.note(sentence) });
  const queue = options.queue === undefined ? null : await openQueue(options.queue, pool, progress);
  const interruption = listenForInterruption();
  const browser = options.pdf ? browserInAdvance(progress) : null;
  // Evaluations in hand get a moment to end and be stored; one that hangs does not hold up a stop.
  interruption.signal.addEventListener('abort', () => void setTimeout(() => pool.close(), GRACE * 1000).unref());
  const codes: ExitCode[] = [];
  try {
    for (const { study } of studies) {
      if (studies.length > 1) progress.note(`\n${study.slug}: ${study.report.title}`);
      codes.push(await runOne(study, { options, pool, queue, workers, browser, progress, interruption }));
      if (interruption.signal.aborted) break;
    }
  } finally {
    progress.close();
    await queue?.close();
    await pool.close();
    interruption.release();
  }
  const code = gravest(codes);
  if (code !== EXIT.done) throw new Ended(code);
}

/** s. */
const GRACE = 3;

interface Context {
  options: RunOptions;
  pool: WorkerPool;
  /** Evaluates instead of the pool, where one was asked for. */
  queue: QueueEvaluator | null;
  workers: number;
  browser: (() => Promise<ProvenBrowser>) | null;
  progress: Progress;
  interruption: Interruption;
}

/** The queue's room and its library are loaded only here, so that a run on threads needs neither. */
async function openQueue(option: string | true, local: WorkerPool, progress: Progress): Promise<QueueEvaluator> {
  const { QueueEvaluator, queueAddress } = await import('../../evaluation/queue/index.ts');
  const onNote = (sentence: string) => progress.note(sentence);
  return QueueEvaluator.open({ address: queueAddress(option, process.env), modelVersion, local, onNote });
}

/** A study that fails does not keep the next from its turn. */
async function runOne(study: Study, context: Context): Promise<ExitCode> {
  const { options, pool, queue, workers, browser, progress, interruption } = context;
  try {
    const outcome = await runStudy(study, {
      out: options.out,
      evaluator: queue ?? pool,
      // Known only when workers have come.
      get workers() {
        return queue?.mostThreads ?? workers;
      },
      fresh: options.fresh ?? false,
      modelVersion,
      toolVersion,
      progress,
      signal: interruption.signal,
      monotonic,
      now: () => new Date(),
      browser,
    });
    progress.close();
    tellOutcome(outcome);
    return gravest([codeOf(outcome), await mail(outcome, interruption)]);
  } catch (error) {
    progress.close();
    if (error instanceof Interrupted || interruption.signal.aborted) {
      tell(
        `Stopped. Everything evaluated is kept in ${options.out}; the same command (without --fresh) goes on from there.`,
      );
      return EXIT.interrupted;
    }
    return tellFailure(error);
  }
}

function tellOutcome({ results, written, noBrowser }: RunOutcome): void {
  for (const file of written) writeData(`${basename(file)}: ${file}`);
  const { candidates, study } = results;
  for (const candidate of candidates.slice(0, BEST)) writeData(candidateLine(candidate, study.brief.currency));
  if (!candidates.some(({ feasible }) => feasible))
    writeData('No feasible candidate; the report says what stopped each architecture.');
  if (noBrowser) tell(noBrowser.message);
}

function codeOf({ results, noBrowser }: RunOutcome): ExitCode {
  if (results.candidates.some(({ feasible }) => feasible)) return noBrowser ? EXIT.noBrowser : EXIT.done;
  const failed = results.architectures
    .flatMap(({ failures }) => failures)
    .filter(({ reason }) => reason === 'model failure');
  const failures = failed.reduce((sum, { count }) => sum + count, 0);
  return failures > 0 && failures >= results.evaluations.screen + results.evaluations.full
    ? EXIT.modelFailure
    : EXIT.noFeasibleCandidate;
}

async function mail({ results, folder }: RunOutcome, { signal }: Interruption): Promise<ExitCode> {
  const { delivery } = results.study;
  if (delivery === null) return EXIT.done;
  try {
    const receipt = await deliver({ results, folder }, delivery, process.env, { signal, onNote: tell });
    for (const note of receipt.notes) tell(note);
    tell(`Mailed to ${receipt.accepted.join(', ')}.`);
    return EXIT.done;
  } catch (error) {
    if (signal.aborted) throw new Interrupted();
    return tellFailure(error);
  }
}

function withOverrides(study: Study, { evaluations, seed }: RunOptions): Study {
  const { search } = study;
  return { ...study, search: { ...search, evaluations: evaluations ?? search.evaluations, seed: seed ?? search.seed } };
}

/** Two files with one study name would share one folder. */
function refuseSameName(studies: readonly { file: string; study: Study }[]): void {
  const seen = new Map<string, string>();
  for (const { file, study } of studies) {
    const other = seen.get(study.slug.toLowerCase());
    if (other !== undefined)
      throw new UsageError(`${other} and ${file} both call their study "${study.slug}"; give one another name.`);
    seen.set(study.slug.toLowerCase(), file);
  }
}

/** Looks for a browser while the search works, so that a missing one is known in the evening, not in the morning. */
function browserInAdvance(progress: Progress): () => Promise<ProvenBrowser> {
  const found = findBrowser();
  found.catch(() =>
    progress.note(
      'No browser is found that can print the PDF; the search goes on, and the HTML report will be complete.',
    ),
  );
  return () => found;
}
