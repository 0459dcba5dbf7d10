/**
 * One record of a log: a line of JSON that starts with its own checksum and its key.
 *
 *     {"check":"1c291ca3","key":"<64 hexadecimal digits>",…}
 *
 * The checksum is the CRC-32 of every byte after `{"check":"1c291ca3",`, so a line is proved by itself and any reader of
 * newline-delimited JSON reads it without knowing that.
 */
import { crc32 } from './crc32.ts';

export interface LogRecord {
  /** 64 hexadecimal digits that name the record's content. */
  key: string;
  [name: string]: unknown;
}

const PREFIX = '{"check":"';
const BODY_START = PREFIX.length + 8 + 2;
const KEY_START = BODY_START + '"key":"'.length;
const KEY_LENGTH = 64;

function checksumText(body: Uint8Array): string {
  return crc32(body).toString(16).padStart(8, '0');
}

/** The record as a line with its newline. */
export function encodeLine(record: LogRecord): Buffer {
  const { key, ...rest } = record;
  const body = Buffer.from(`${JSON.stringify({ key, ...rest }).slice(1)}\n`);
  const head = Buffer.from(`${PREFIX}${checksumText(body.subarray(0, body.length - 1))}",`);
  return Buffer.concat([head, body]);
}

/** The key of a line (without newline) whose checksum holds; null when the line is damaged. */
export function provenKey(line: Buffer): string | null {
  if (line.length < KEY_START + KEY_LENGTH + 2) return null;
  if (line.toString('latin1', 0, PREFIX.length) !== PREFIX) return null;
  if (line.toString('latin1', BODY_START - 2, KEY_START) !== '","key":"') return null;
  if (checksumText(line.subarray(BODY_START)) !== line.toString('latin1', PREFIX.length, PREFIX.length + 8))
    return null;
  return line.toString('latin1', KEY_START, KEY_START + KEY_LENGTH);
}

/** Reads a proven line (without newline). */
export function decodeLine(line: Buffer): LogRecord {
  const { check: _, ...record } = JSON.parse(line.toString('utf8'));
  return record as LogRecord;
}
