/**
 * An append-only log of records, each line with its own checksum (see record-line.ts).
 *
 * An append is acknowledged once it lies on the disk (fdatasync). Appends that arrive while the disk works share the next
 * write. Opening proves every line: damaged ones are set aside beside the log, named to the caller, and the rest is kept.
 * Only an index of keys and file positions stays in memory (see key-index.ts): 50 MB for a million records.
 */

import { readSync } from 'node:fs';
import type { FileHandle } from 'node:fs/promises';
import { appendFile, open, rename } from 'node:fs/promises';
import { basename } from 'node:path';
import { syncFolderOf } from './durable-file.ts';
import { KeyIndex } from './key-index.ts';
import { decodeLine, encodeLine, isProven, KEY_OFFSET, type LogRecord, provenKey } from './record-line.ts';
import { StoreError, writeFailure } from './store-error.ts';

/** A line that could not be trusted. */
export interface DamagedLine {
  line: number;
  bytes: number;
  /** torn: the last line, cut short by a stop in the middle of a write. */
  kind: 'torn' | 'corrupted';
}

const CHUNK = 1 << 22;
/** A cached stretch of file for reads in the order of writing. */
const READ_AHEAD = 1 << 17;

interface Pending {
  lines: Buffer;
  keys: { key: string; offset: number }[];
  done: () => void;
  failed: (error: unknown) => void;
}

export class RecordLog {
  readonly path: string;
  /** What opening had to leave out, sentence by sentence; empty for a sound log. */
  readonly repairs: readonly string[];
  readonly #file: FileHandle;
  readonly #positions: KeyIndex;
  #end: number;
  #queue: Pending[] = [];
  #writing: Promise<void> | null = null;
  #broken: StoreError | null = null;
  #cache = Buffer.alloc(0);
  #cacheStart = 0;

  private constructor(path: string, file: FileHandle, positions: KeyIndex, end: number, repairs: string[]) {
    this.path = path;
    this.#file = file;
    this.#positions = positions;
    this.#end = end;
    this.repairs = repairs;
  }

  /**
   * Opens or creates a log and proves it.
   * @throws {StoreError} when it can be neither read nor written
   */
  static async open(path: string): Promise<RecordLog> {
    try {
      let file = await open(path, 'a+');
      const scan = await scanLog(file);
      const repairs: string[] = [];
      if (scan.damaged.length > 0) {
        await setAside(path, file, scan);
        await file.close();
        file = await open(path, 'a+');
        repairs.push(...describeDamage(path, scan.damaged, scan.positions.size));
        const again = await scanLog(file);
        return new RecordLog(path, file, again.positions, again.end, repairs);
      }
      await syncFolderOf(path);
      return new RecordLog(path, file, scan.positions, scan.end, repairs);
    } catch (error) {
      throw writeFailure(path, error);
    }
  }

  get size(): number {
    return this.#positions.size;
  }

  /** Bytes on disk. */
  get bytes(): number {
    return this.#end;
  }

  has(key: string): boolean {
    return this.#positions.get(key) !== undefined;
  }

  /** Keys in the order of writing, read from disk. */
  *keys(): IterableIterator<string> {
    for (const position of this.#positions.positions()) yield decodeLine(this.#lineAt(position)).key;
  }

  /** The record of a key, read from disk; null when there is none. */
  get(key: string): LogRecord | null {
    const position = this.#positions.get(key);
    if (position === undefined) return null;
    const line = this.#lineAt(position);
    if (provenKey(line) !== key) {
      throw new StoreError(
        'damaged',
        `${this.path} changed while it was in use: the record at byte ${position} no longer checks. Give the same command again; the log is then proved anew.`,
      );
    }
    return decodeLine(line);
  }

  /**
   * Appends records; resolves when they are on the disk. A key that is there already is not written twice.
   * @throws {StoreError} when the disk refuses; nothing that was acknowledged before is lost
   */
  append(records: readonly LogRecord[]): Promise<void> {
    if (this.#broken) return Promise.reject(this.#broken);
    const lines: Buffer[] = [];
    const keys: Pending['keys'] = [];
    let offset = 0;
    for (const record of records) {
      if (this.has(record.key)) continue;
      const line = encodeLine(record);
      lines.push(line);
      keys.push({ key: record.key, offset });
      offset += line.length;
    }
    if (lines.length === 0) return this.#writing ?? Promise.resolve();
    return new Promise((done, failed) => {
      this.#queue.push({ lines: Buffer.concat(lines), keys, done, failed });
      this.#writing ??= this.#drain();
    });
  }

  async #drain(): Promise<void> {
    while (this.#queue.length > 0) {
      const batch = this.#queue;
      this.#queue = [];
      try {
        if (this.#broken) throw this.#broken;
        await this.#write(Buffer.concat(batch.map((item) => item.lines)));
      } catch (error) {
        this.#broken = writeFailure(this.path, error);
        for (const item of batch) item.failed(this.#broken);
        continue;
      }
      for (const item of batch) {
        for (const { key, offset } of item.keys) this.#positions.set(key, this.#end + offset);
        this.#end += item.lines.length;
      }
      for (const item of batch) item.done();
    }
    this.#writing = null;
  }

  async #write(bytes: Buffer): Promise<void> {
    try {
      let written = 0;
      while (written < bytes.length) written += (await this.#file.write(bytes, written)).bytesWritten;
      await this.#file.datasync();
    } catch (error) {
      // Half a batch would read as damage at the next start; try to take it back.
      await this.#file.truncate(this.#end).catch(() => {});
      throw error;
    }
  }

  #lineAt(position: number): Buffer {
    for (let ahead = READ_AHEAD; ; ahead *= 4) {
      const inside = position - this.#cacheStart;
      if (inside >= 0 && inside < this.#cache.length) {
        const stop = this.#cache.indexOf(10, inside);
        if (stop >= 0) return this.#cache.subarray(inside, stop);
      }
      const length = Math.min(ahead, this.#end - position);
      const bytes = Buffer.allocUnsafe(length);
      const read = readSync(this.#file.fd, bytes, 0, length, position);
      this.#cache = bytes.subarray(0, read);
      this.#cacheStart = position;
      if (position + read >= this.#end && this.#cache.indexOf(10) < 0) return this.#cache;
    }
  }

  /** Waits for what was appended and closes the file. */
  async close(): Promise<void> {
    await this.#writing;
    await this.#file.close();
  }
}

interface Scan {
  positions: KeyIndex;
  /** Bytes up to the end of the last sound line. */
  end: number;
  damaged: (DamagedLine & { start: number })[];
  /** Bytes of the file. */
  size: number;
}

/** Room before each chunk for the beginning of a line that the last one ended in. */
const HEADROOM = 1 << 20;

/** Reads the log once from end to end and proves each line, while the next chunk is being read. */
async function scanLog(file: FileHandle): Promise<Scan> {
  const scan: Scan = { positions: new KeyIndex(), end: 0, damaged: [], size: 0 };
  const buffers = [0, 1].map(() => Buffer.allocUnsafe(HEADROOM + CHUNK));
  const read = (turn: number, position: number) => file.read(buffers[turn & 1], HEADROOM, CHUNK, position);
  let rest = Buffer.alloc(0);
  let lineNumber = 0;
  let coming = read(0, 0);
  for (let turn = 0; ; turn++) {
    const { bytesRead } = await coming;
    if (bytesRead === 0) break;
    let bytes = buffers[turn & 1];
    let start = HEADROOM - rest.length;
    let stop = HEADROOM + bytesRead;
    if (start >= 0) rest.copy(bytes, start);
    else {
      // A line longer than the headroom.
      bytes = Buffer.concat([rest, bytes.subarray(HEADROOM, stop)]);
      [start, stop] = [0, bytes.length];
    }
    const base = scan.size - rest.length - start;
    scan.size += bytesRead;
    coming = read(turn + 1, scan.size);
    for (let end = bytes.indexOf(10, start); end >= 0 && end < stop; end = bytes.indexOf(10, start)) {
      lineNumber++;
      if (isProven(bytes, start, end)) {
        scan.positions.setFrom(bytes, start + KEY_OFFSET, base + start);
        scan.end = base + end + 1;
      } else scan.damaged.push({ line: lineNumber, bytes: end - start + 1, kind: 'corrupted', start: base + start });
      start = end + 1;
    }
    rest = Buffer.from(bytes.subarray(start, stop));
  }
  if (rest.length > 0)
    scan.damaged.push({ line: lineNumber + 1, bytes: rest.length, kind: 'torn', start: scan.size - rest.length });
  return scan;
}

/** Moves the damaged bytes to <log>.damaged and leaves only sound lines, so that a stop in between loses nothing. */
async function setAside(path: string, file: FileHandle, scan: Scan): Promise<void> {
  for (const fault of scan.damaged) {
    const bytes = Buffer.alloc(fault.bytes);
    await file.read(bytes, 0, fault.bytes, fault.start);
    await appendFile(`${path}.damaged`, fault.kind === 'torn' ? Buffer.concat([bytes, Buffer.from('\n')]) : bytes);
  }
  const onlyTail = scan.damaged[0].start >= scan.end;
  if (onlyTail) {
    await file.truncate(scan.end);
    await file.datasync();
    return;
  }
  const sound = await open(`${path}.repaired`, 'w');
  let position = 0;
  const faults = [...scan.damaged, { start: scan.size, bytes: 0 }];
  for (const fault of faults) {
    while (position < fault.start) {
      const bytes = Buffer.allocUnsafe(Math.min(CHUNK, fault.start - position));
      const { bytesRead } = await file.read(bytes, 0, bytes.length, position);
      await sound.writeFile(bytes.subarray(0, bytesRead));
      position += bytesRead;
    }
    position = fault.start + fault.bytes;
  }
  await sound.sync();
  await sound.close();
  await rename(`${path}.repaired`, path);
  await syncFolderOf(path);
}

function describeDamage(path: string, damaged: readonly DamagedLine[], kept: number): string[] {
  const name = basename(path);
  const shown = damaged
    .slice(0, 5)
    .map((fault) =>
      fault.kind === 'torn'
        ? `${name}, line ${fault.line}: cut short by a stop in the middle of a write (${fault.bytes} bytes).`
        : `${name}, line ${fault.line}: its checksum does not hold (${fault.bytes} bytes).`,
    );
  if (damaged.length > 5) shown.push(`${name}: ${damaged.length - 5} more lines do not check.`);
  shown.push(
    `${name}: ${kept} sound records are kept; the damaged lines lie in ${name}.damaged and will be computed again.`,
  );
  return shown;
}
