/** Opens configuration files. Everything that reads a disk stands here, apart from the readers. */
import { open } from 'node:fs/promises';
import type { ConfigProblem } from './problems.ts';
import { type EngineReading, readEngineFile } from './read-engine.ts';
import { readStudy, type StudyReading } from './read-study.ts';
import { TEXT_LIMIT } from './source-text.ts';

/** Greatest size of a file that is opened at all, bytes: a character takes at most four. */
const BYTE_LIMIT = TEXT_LIMIT * 4;

type TextReading = { ok: true; text: string } | { ok: false; problems: ConfigProblem[] };

/** Opens and reads a study file; an unreadable file is a problem, not an exception. */
export async function loadStudy(path: string): Promise<StudyReading> {
  const reading = await loadText(path);
  return reading.ok ? readStudy(reading.text, path) : reading;
}

/** Opens and reads an engine file; an unreadable file is a problem, not an exception. */
export async function loadEngine(path: string): Promise<EngineReading> {
  const reading = await loadText(path);
  return reading.ok ? readEngineFile(reading.text, path) : reading;
}

async function loadText(path: string): Promise<TextReading> {
  let bytes: Uint8Array;
  try {
    bytes = await readAtMost(path, BYTE_LIMIT + 1);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown fault';
    return refuse(path, 1, 1, 'a file that can be read', REASONS[code] ?? code);
  }
  if (bytes.length > BYTE_LIMIT) return refuse(path, 1, 1, `a file of at most ${BYTE_LIMIT} bytes`, 'a larger one');
  return decodeText(bytes, path);
}

const REASONS: Record<string, string> = {
  ENOENT: 'no such file',
  EISDIR: 'a folder',
  EACCES: 'a file without leave to read it',
  ENAMETOOLONG: 'a name that is too long',
  ELOOP: 'a link that leads back to itself',
};

async function readAtMost(path: string, limit: number): Promise<Uint8Array> {
  const file = await open(path, 'r');
  try {
    const state = await file.stat();
    if (state.isDirectory()) throw Object.assign(new Error('folder'), { code: 'EISDIR' });
    if (!state.isFile())
      throw Object.assign(new Error('no regular file'), { code: 'something that is no regular file' });
    const buffer = new Uint8Array(Math.min(state.size + 1, limit));
    let length = 0;
    while (length < buffer.length) {
      const { bytesRead } = await file.read(buffer, length, buffer.length - length, length);
      if (bytesRead === 0) break;
      length += bytesRead;
    }
    return buffer.subarray(0, length);
  } finally {
    await file.close();
  }
}

/** UTF-8 bytes, with or without a byte-order mark → text; other encodings are refused at the place of their first odd byte. */
export function decodeText(bytes: Uint8Array, file: string): TextReading {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
    return refuse(file, 1, 1, 'text in UTF-8 (save the file as UTF-8)', 'UTF-16');
  }
  try {
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    const good = new TextDecoder('utf-8').decode(bytes);
    const offset = Math.max(0, good.indexOf('\ufffd'));
    const before = good.slice(0, offset).split('\n');
    return refuse(
      file,
      before.length,
      before[before.length - 1].length + 1,
      'text in UTF-8 (save the file as UTF-8)',
      'a byte of another encoding',
    );
  }
}

function refuse(file: string, line: number, column: number, expected: string, found: string): TextReading {
  return { ok: false, problems: [{ file, line, column, path: '', expected, found }] };
}
