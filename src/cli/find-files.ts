/** Names and patterns on the command line → files, sorted, each once. */
import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import fastGlob from 'fast-glob';
import { UsageError } from './output.ts';

/**
 * A name that exists is taken as it is, even with characters that mean something in a pattern.
 * @throws {UsageError} when a name or pattern finds nothing
 */
export async function findFiles(patterns: readonly string[]): Promise<string[]> {
  const found: string[] = [];
  const nothing: string[] = [];
  for (const pattern of patterns) {
    const files = existsSync(pattern)
      ? [pattern]
      : await fastGlob(pattern.replaceAll('\\', '/'), {
          onlyFiles: true,
          followSymbolicLinks: false,
          ignore: ['**/node_modules/**'],
        });
    if (files.length === 0) nothing.push(`"${pattern}" finds no file.`);
    found.push(...files.sort());
  }
  if (nothing.length > 0) throw new UsageError(nothing.join('\n'));
  const seen = new Set<string>();
  return found.filter((file) => !seen.has(resolve(file)) && seen.add(resolve(file)));
}
