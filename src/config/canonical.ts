/** One text for one value: sorted keys, shortest numbers that read back the same, no dates, no machine. And its digest. */
import { createHash } from 'node:crypto';

/**
 * JSON with sorted keys. Lists of plain values stand on one line; sections are indented by two spaces when `indent` is true.
 * Keys without value are left out.
 * @throws RangeError for NaN and infinities, which JSON cannot hold, with the place.
 */
export function canonicalJson(value: unknown, indent = false): string {
  return write(value, '', '$', indent);
}

/** SHA-256 of the canonical text, 64 hexadecimal digits. */
export function digestOf(value: unknown): string {
  return createHash('sha256').update(canonicalJson(value)).digest('hex');
}

function write(value: unknown, margin: string, place: string, indent: boolean): string {
  if (value === null) return 'null';
  switch (typeof value) {
    case 'number':
      if (!Number.isFinite(value)) throw new RangeError(`${place}: a finite number was expected, found ${value}`);
      return JSON.stringify(value === 0 ? 0 : value);
    case 'string':
    case 'boolean':
      return JSON.stringify(value);
    case 'object':
      return Array.isArray(value)
        ? writeList(value, margin, place, indent)
        : writeSection(value as object, margin, place, indent);
    default:
      throw new TypeError(`${place}: plain data was expected, found a ${typeof value}`);
  }
}

function writeList(list: unknown[], margin: string, place: string, indent: boolean): string {
  if (list.length === 0) return '[]';
  const inner = `${margin}  `;
  const items = list.map((item, i) => write(item ?? null, inner, `${place}[${i}]`, indent));
  const plain = list.every((item) => typeof item !== 'object' || item === null);
  return plain || !indent ? `[${items.join(',')}]` : `[\n${items.map((item) => inner + item).join(',\n')}\n${margin}]`;
}

function writeSection(section: object, margin: string, place: string, indent: boolean): string {
  const inner = `${margin}  `;
  const entries = Object.entries(section)
    .filter(([, value]) => value !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(
      ([key, value]) => `${JSON.stringify(key)}:${indent ? ' ' : ''}${write(value, inner, `${place}.${key}`, indent)}`,
    );
  if (entries.length === 0) return '{}';
  return indent ? `{\n${entries.map((entry) => inner + entry).join(',\n')}\n${margin}}` : `{${entries.join(',')}}`;
}
