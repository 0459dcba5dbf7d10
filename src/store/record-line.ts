/**
 * One record of a log: a line of JSON that starts with its own checksum and its key.
 *
 *     {"check":"1c291ca3","key":"<64 hexadecimal digits>",…}
 *
 * The checksum is the CRC-32 of every byte after `{"check":"1c291ca3",`, so a line is proved by itself and any reader of
 * newline-delimited JSON reads it without knowing that.
 */
import { createHash } from 'node:crypto';
import { crc32 } from './crc32.ts';
import { hexWord } from './key-index.ts';

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

/** A note as a line with its newline: `{"check":"…","key":"<its SHA-256>","note":…}`. */
export function encodeNote(note: object): Buffer {
  return encodeLine({ key: createHash('sha256').update(JSON.stringify(note)).digest('hex'), note });
}

const NOTE_BYTES = Buffer.from('","note":');
const PREFIX_BYTES = Buffer.from(PREFIX);
const MIDDLE_BYTES = Buffer.from('","key":"');
const LEAST = KEY_START + KEY_LENGTH + 2;

/** Where the key's digits of a proven line begin, bytes after the line's start. */
export const KEY_OFFSET = KEY_START;

/** True when the bytes from start to stop (without newline) are a line whose checksum holds. */
export function isProven(bytes: Buffer, start: number, stop: number): boolean {
  if (stop - start < LEAST) return false;
  for (let i = 0; i < PREFIX_BYTES.length; i++) if (bytes[start + i] !== PREFIX_BYTES[i]) return false;
  for (let i = 0; i < MIDDLE_BYTES.length; i++) if (bytes[start + BODY_START - 2 + i] !== MIDDLE_BYTES[i]) return false;
  // Plainer than a Buffer, and a third of its cost.
  const body = new Uint8Array(bytes.buffer, bytes.byteOffset + start + BODY_START, stop - start - BODY_START);
  return crc32(body) === hexWord(bytes, start + PREFIX_BYTES.length);
}

/** True when a proven line that begins at `start` is a note. */
export function isNote(bytes: Buffer, start: number): boolean {
  const at = start + KEY_START + KEY_LENGTH;
  for (let i = 0; i < NOTE_BYTES.length; i++) if (bytes[at + i] !== NOTE_BYTES[i]) return false;
  return true;
}

/** The key of a line (without newline) whose checksum holds; null when the line is damaged. */
export function provenKey(line: Buffer): string | null {
  return isProven(line, 0, line.length) ? line.toString('latin1', KEY_START, KEY_START + KEY_LENGTH) : null;
}

/** Reads a proven line (without newline). */
export function decodeLine(line: Buffer): LogRecord {
  const { check: _, ...record } = JSON.parse(line.toString('utf8'));
  return record as LogRecord;
}
