/** One text for one value, so that equal values have equal digests on every machine. */
import { createHash } from 'node:crypto';

/**
 * JSON with sorted keys and no spaces; members that are undefined are left out, as JSON.stringify does.
 * Numbers print as the shortest text that reads back to the same bits, so the text is exact.
 *
 * @throws {RangeError} for a number that is not finite: JSON would turn it into null without a word
 */
export function canonicalJson(value: unknown): string {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`a number that is not finite (${value}) cannot be stored`);
    return JSON.stringify(value);
  }
  if (Array.isArray(value))
    return `[${value.map((item) => canonicalJson(item === undefined ? null : item)).join(',')}]`;
  if (value !== null && typeof value === 'object') {
    const members = Object.entries(value)
      .filter(([, member]) => member !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
      .map(([name, member]) => `${JSON.stringify(name)}:${canonicalJson(member)}`);
    return `{${members.join(',')}}`;
  }
  return JSON.stringify(value) ?? 'null';
}

/** SHA-256 of a text, 64 hexadecimal digits. */
export function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

/** SHA-256 of a value's canonical JSON. */
export function digestOf(value: unknown): string {
  return sha256(canonicalJson(value));
}
