/** Names and patterns on the command line → files, sorted, each once. */
import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import fastGlob from 'fast-glob';
import { UsageError } from './output.ts';

/** Longest pattern, characters; how long a name may be is the system's affair. */
const PATTERN_LIMIT = 256;

/**
 * A name that exists is taken as it is, even with characters that mean something in a pattern.
 * @throws {UsageError} when a name or pattern finds nothing, or is no pattern
 */
export async function findFiles(patterns: readonly string[]): Promise<string[]> {
  const found: string[] = [];
  const nothing: string[] = [];
  for (const pattern of patterns) {
    const files = existsSync(pattern) ? [pattern] : await matching(pattern);
    if (files.length === 0) {
      const shown = pattern.length > PATTERN_LIMIT ? `${pattern.slice(0, 60)}…` : pattern;
      nothing.push(`"${shown}" finds no file.`);
    }
    found.push(...files.sort());
  }
  if (nothing.length > 0) throw new UsageError(nothing.join('\n'));
  const seen = new Set<string>();
  return found.filter((file) => !seen.has(resolve(file)) && seen.add(resolve(file)));
}

async function matching(pattern: string): Promise<string[]> {
  if (pattern === '' || pattern.includes('\0') || pattern.length > PATTERN_LIMIT) return [];
  return fastGlob(pattern.replaceAll('\\', '/'), {
    onlyFiles: true,
    followSymbolicLinks: false,
    ignore: ['**/node_modules/**'],
    // Shells expand braces themselves; a few pairs of them in one pattern would take all memory.
    braceExpansion: false,
  });
}
