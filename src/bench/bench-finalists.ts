/** The finalists of a stored study, as many as a measurement of the report wants. */
import { readStoredResults, type StoredResults } from '../cli/stored-results.ts';

/**
 * Reads a finished study and repeats its finalists, or leaves the last of them out, until there are `count`.
 * @throws {StoreError} when the folder holds no finished study
 * @throws {Error} when the study has no finalist
 */
export async function readFinalists(folder: string, count: number): Promise<StoredResults> {
  const stored = await readStoredResults(folder);
  const { candidates } = stored.results;
  if (candidates.length === 0) throw new Error(`${folder} has no finalist to repeat.`);
  stored.results.candidates = Array.from({ length: count }, (_, i) => ({
    ...candidates[i % candidates.length],
    id: `C${i + 1}`,
    rank: i + 1,
  }));
  return stored;
}
