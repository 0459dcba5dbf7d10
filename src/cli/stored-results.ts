/** Reads what a finished study left in its folder. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { RunFacts, StudyResults } from '../ranking/results.ts';
import { StoreError } from '../store/store-error.ts';
import { RESULTS_FILE, RUN_FILE } from '../store/study-folder.ts';

export interface StoredResults {
  results: StudyResults;
  facts: RunFacts;
}

/** @throws {StoreError} when the folder holds no finished study, or one that cannot be read */
export async function readStoredResults(folder: string): Promise<StoredResults> {
  const results = (await readJson(folder, RESULTS_FILE)) as StudyResults;
  const facts = (await readJson(folder, RUN_FILE)) as RunFacts;
  if (results.formatVersion !== 1 || !Array.isArray(results.candidates) || typeof facts.startedAt !== 'string') {
    throw new StoreError(
      'damaged',
      `${folder} was written by another version of this tool, or edited; run the study again.`,
    );
  }
  return { results, facts };
}

async function readJson(folder: string, name: string): Promise<unknown> {
  const path = join(folder, name);
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    const why = code === 'ENOENT' ? 'there is no such file' : (error as Error).message;
    throw new StoreError(
      'missing',
      `${path} cannot be read: ${why}. A study has one once "pulsejet-study run" has finished it.`,
    );
  }
  try {
    return JSON.parse(text);
  } catch {
    throw new StoreError(
      'damaged',
      `${path} is damaged. Run the study again: stored evaluations are used, and the file is written anew.`,
    );
  }
}
