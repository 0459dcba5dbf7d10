/**
 * An append-only log of records, each line with its own checksum (see record-line.ts).
 *
 * An append is acknowledged once it lies on the disk (fdatasync). Appends that arrive while the disk works share the next
 * write. Opening proves every line: damaged ones are set aside beside the log, named to the caller, and the rest is kept.
 * Only an index of keys and file positions stays in memory (see key-index.ts): 50 MB for a million records.
 *
 * Notes lie between the records: lines of whoever wrote these (see search-notes.ts), proven like them, found by position only.
 */

import { readSync } from 'node:fs';
import type { FileHandle } from 'node:fs/promises';
import { open } from 'node:fs/promises';
import { syncFolderOf } from './durable-file.ts';
import type { KeyIndex } from './key-index.ts';
import { describeDamage, type Scan, scanLog, setAside } from './log-scan.ts';
import { decodeLine, encodeLine, encodeNote, isProven, type LogRecord, provenKey } from './record-line.ts';
import { StoreError, writeFailure } from './store-error.ts';

/** A cached stretch of file for reads in the order of writing, and for a read out of order. */
const READ_AHEAD = 1 << 17;
const READ_ONE = 1 << 11;

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
  readonly #notes: number[];
  #end: number;
  #queue: Pending[] = [];
  #writing: Promise<void> | null = null;
  #broken: StoreError | null = null;
  #room = Buffer.alloc(0);
  #cache = this.#room;
  #cacheStart = 0;

  private constructor(path: string, file: FileHandle, { positions, notes, end }: Scan, repairs: string[]) {
    this.path = path;
    this.#file = file;
    this.#positions = positions;
    this.#notes = notes;
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
        return new RecordLog(path, file, await scanLog(file), repairs);
      }
      await syncFolderOf(path);
      return new RecordLog(path, file, scan, repairs);
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

  /** Byte at which the record of a key begins; undefined when there is none. */
  positionOf(key: string): number | undefined {
    return this.#positions.get(key);
  }

  /** The record or note that begins at a byte; null where none does. */
  at(position: number): LogRecord | null {
    if (!(position >= 0 && position < this.#end)) return null;
    const line = this.#lineAt(position, READ_ONE);
    return isProven(line, 0, line.length) ? decodeLine(line) : null;
  }

  /** Bytes at which notes begin, rising. */
  get notes(): readonly number[] {
    return this.#notes;
  }

  /**
   * Appends a note, which learns the byte where it begins: a note that says it proves that nothing before it was taken out.
   * Resolves to that byte when it is on the disk; throws as `append` does.
   */
  async note(content: (position: number) => object): Promise<number> {
    while (this.#writing) await this.#writing;
    if (this.#broken) throw this.#broken;
    const position = this.#end;
    await new Promise<void>((done, failed) => {
      this.#queue.push({ lines: encodeNote(content(position)), keys: [], done, failed });
      this.#writing = this.#drain();
    });
    this.#notes.push(position);
    return position;
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

  /** Holds until the next call. */
  #lineAt(position: number, least = READ_AHEAD): Buffer {
    for (let ahead = least; ; ahead *= 4) {
      const inside = position - this.#cacheStart;
      if (inside >= 0 && inside < this.#cache.length) {
        const stop = this.#cache.indexOf(10, inside);
        if (stop >= 0) return this.#cache.subarray(inside, stop);
      }
      const length = Math.min(ahead, this.#end - position);
      // The same room again and again: thousands of buffers a second would pile up until they are collected.
      if (this.#room.length < length) this.#room = Buffer.allocUnsafe(length);
      const read = readSync(this.#file.fd, this.#room, 0, length, position);
      this.#cache = this.#room.subarray(0, read);
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
