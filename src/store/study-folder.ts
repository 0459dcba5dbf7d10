/**
 * The folder of one study: what it is, everything evaluated for it, and what came out.
 *
 *     study.json          the canonical configuration with its digest and the model's version
 *     evaluations.ndjson  every evaluation, in short (see record-line.ts), and where the search stood (see search-notes.ts)
 *     finalists.ndjson    full results of the finalists
 *     results.json ranking.csv run.json report.html report.pdf patterns/
 */
import { existsSync } from 'node:fs';
import { access, constants, mkdir, readdir, readFile, rename, stat, unlink } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { canonicalJson, digestOf } from '../config/canonical.ts';
import type { Study } from '../config/study.ts';
import { differences } from './differences.ts';
import { writeDurably } from './durable-file.ts';
import { type FolderLock, lockFolder } from './folder-lock.ts';
import { RecordLog } from './record-log.ts';
import { type NoteBasis, type SearchNotes, searchNotes } from './search-notes.ts';
import { StoreError, writeFailure } from './store-error.ts';

export const STUDY_FILE = 'study.json';
export const RESULTS_FILE = 'results.json';
export const RANKING_FILE = 'ranking.csv';
export const RUN_FILE = 'run.json';
export const HTML_FILE = 'report.html';
export const PDF_FILE = 'report.pdf';
export const PATTERNS_FOLDER = 'patterns';
const EVALUATIONS_FILE = 'evaluations.ndjson';
const FINALISTS_FILE = 'finalists.ndjson';
const WRITTEN_FILES = [
  STUDY_FILE,
  EVALUATIONS_FILE,
  FINALISTS_FILE,
  RESULTS_FILE,
  RANKING_FILE,
  RUN_FILE,
  HTML_FILE,
  PDF_FILE,
];

/** Differences that are shown; the rest is counted. */
const SHOWN = 12;

/** What a study's evaluations rest on. */
export interface StudyIdentity {
  formatVersion: 1;
  toolVersion: string;
  modelVersion: string;
  configurationDigest: string;
  study: Study;
}

export interface OpenFolderOptions {
  /** Folder that holds the folders of all studies. */
  out: string;
  modelVersion: string;
  toolVersion: string;
  /** Put earlier evaluations aside and begin anew. */
  fresh: boolean;
}

export interface StudyFolder {
  path: string;
  identity: StudyIdentity;
  evaluations: RecordLog;
  finalists: RecordLog;
  /** @param basis what else must agree for them to be used, besides model, tool and configuration */
  searchNotes(basis: NoteBasis): SearchNotes;
  /** Sentences for the user: repairs, a lock taken over, evaluations found. */
  notes: string[];
  /** Closes the logs and frees the folder. */
  close(): Promise<void>;
}

/** Path of a study's folder; the slug was checked by the configuration and is checked again, since it names a folder. */
export function studyFolderPath(out: string, slug: string): string {
  if (!/^[A-Za-z0-9][A-Za-z0-9-]*$/.test(slug))
    throw new StoreError('cannot write', `"${slug}" cannot name a folder: letters, digits and hyphens expected`);
  return join(resolve(out), slug);
}

/**
 * Makes or opens the folder of a study, locks it and proves its logs. Fails before anything is evaluated.
 * @throws {StoreError} when it cannot be written, is in use, or holds another study
 */
export async function openStudyFolder(study: Study, options: OpenFolderOptions): Promise<StudyFolder> {
  const { modelVersion, toolVersion } = options;
  const path = studyFolderPath(options.out, study.slug);
  try {
    await mkdir(path, { recursive: true });
  } catch (error) {
    throw writeFailure(path, error);
  }
  const lock = await lockFolder(path);
  const open: RecordLog[] = [];
  try {
    await refuseObstacles(path);
    await removeHalfFiles(path);
    const identity: StudyIdentity = {
      formatVersion: 1,
      toolVersion,
      modelVersion,
      configurationDigest: digestOf(study),
      study,
    };
    const notes = lock.takenOver
      ? ['An earlier run on this folder ended without a word; this one goes on from what it stored.']
      : [];
    if (options.fresh) notes.push(...(await putAside(path)));
    else refuseDifference(path, await readIdentity(path), identity);
    await writeDurably(join(path, STUDY_FILE), `${canonicalJson(identity, true)}\n`);
    for (const name of [EVALUATIONS_FILE, FINALISTS_FILE]) open.push(await RecordLog.open(join(path, name)));
    for (const log of open) notes.push(...log.repairs);
    const [evaluations, finalists] = open;
    if (evaluations.size > 0) notes.push(`${evaluations.size} stored evaluations are used again.`);
    const notesOf = (basis: NoteBasis) =>
      searchNotes(evaluations, { ...basis, modelVersion, toolVersion, foundation: digestOf(foundation(identity)) });
    return { path, identity, evaluations, finalists, searchNotes: notesOf, notes, close: () => closeAll(open, lock) };
  } catch (error) {
    await closeAll(open, lock);
    throw error;
  }
}

async function closeAll(logs: RecordLog[], lock: FolderLock): Promise<void> {
  await Promise.allSettled(logs.map((log) => log.close()));
  lock.release();
}

/** A path that a night's results cannot be written to fails before the night. */
async function refuseObstacles(path: string): Promise<void> {
  for (const name of WRITTEN_FILES) {
    const file = join(path, name);
    if (!existsSync(file)) continue;
    if ((await stat(file)).isDirectory()) throw writeFailure(file, Object.assign(new Error(), { code: 'EISDIR' }));
    await access(file, constants.W_OK).catch((error) => {
      throw writeFailure(file, error);
    });
  }
}

/** What a killed run left half written beside its files (see durable-file.ts). Nobody else writes under the lock. */
async function removeHalfFiles(path: string): Promise<void> {
  const names = WRITTEN_FILES.map((name) => name.replaceAll('.', '\\.')).join('|');
  const half = new RegExp(`^(${names})\\.\\d+-[0-9a-f]{6}\\.part$`);
  for (const name of await readdir(path)) if (half.test(name)) await unlink(join(path, name)).catch(() => {});
}

/**
 * What study.json says; null when there is none.
 * @throws {StoreError} when the file is damaged
 */
export async function readIdentity(path: string): Promise<StudyIdentity | null> {
  const file = join(path, STUDY_FILE);
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch {
    return null;
  }
  try {
    const identity = JSON.parse(text) as StudyIdentity;
    if (identity.formatVersion === 1 && digestOf(identity.study) === identity.configurationDigest) return identity;
  } catch {
    // Told below, like any other damage.
  }
  throw new StoreError(
    'damaged',
    `${file} is damaged or was edited by hand: its digest does not hold. Give the command again with --fresh to begin this study anew; earlier evaluations are put aside, not deleted.`,
  );
}

/**
 * Parts of a study that its evaluations do not rest on: words and paper of the report, delivery, and how long to go on.
 * They may change between runs; a larger budget goes on from the smaller one.
 */
function foundation(identity: StudyIdentity): unknown {
  const { report: _, delivery: __, search, ...rest } = identity.study;
  const { evaluations: ___, timeLimit: ____, ...lasting } = search;
  return { ...rest, search: lasting };
}

function refuseDifference(path: string, before: StudyIdentity | null, now: StudyIdentity): void {
  if (before === null) return;
  const found = differences(foundation(before), foundation(now));
  if (before.modelVersion !== now.modelVersion) {
    found.unshift(
      `performance model: it was version ${before.modelVersion.slice(0, 12)}, now it is ${now.modelVersion.slice(0, 12)}`,
    );
  }
  if (found.length === 0) return;
  const shown = found.slice(0, SHOWN).map((line) => `  ${line}`);
  if (found.length > SHOWN) shown.push(`  and ${found.length - SHOWN} more`);
  throw new StoreError(
    'different study',
    [
      `${path} holds a study that differs from this one:`,
      ...shown,
      'Its evaluations would not fit. Give the command with --fresh to begin anew here (the earlier ones are put aside), or give the study another name.',
    ].join('\n'),
  );
}

/** Renames what an earlier study left, so that nothing is deleted. */
async function putAside(path: string): Promise<string[]> {
  const names = [STUDY_FILE, EVALUATIONS_FILE, FINALISTS_FILE].filter((name) => existsSync(join(path, name)));
  if (names.length === 0) return [];
  let number = 1;
  while (names.some((name) => existsSync(join(path, `before-${number}-${name}`)))) number++;
  for (const name of names) {
    await rename(join(path, name), join(path, `before-${number}-${name}`)).catch((error) => {
      throw writeFailure(path, error);
    });
  }
  return [`Earlier evaluations are put aside as before-${number}-*.`];
}
