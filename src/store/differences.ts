/** What differs between two plain values, for people. */
import { canonicalJson } from '../config/canonical.ts';

/** One line a difference, by path: `search.seed: it was "spring", now it is "autumn"`. */
export function differences(before: unknown, now: unknown, path = ''): string[] {
  if (isSection(before) && isSection(now)) {
    const names = [...new Set([...Object.keys(before), ...Object.keys(now)])].sort();
    return names.flatMap((name) => differences(before[name], now[name], path ? `${path}.${name}` : name));
  }
  const [was, is] = [describe(before), describe(now)];
  return was === is ? [] : [`${path}: it was ${was}, now it is ${is}`];
}

function isSection(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}

function describe(value: unknown): string {
  return value === undefined ? 'not set' : canonicalJson(value);
}
