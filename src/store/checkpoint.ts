/**
 * Where a search stood, kept so that a run that goes on need not ask for a million stored answers again.
 *
 * A checkpoint only saves time: one that is damaged, or that rests on something else than this run, is not used, and the
 * search is led through the log instead, to the same end. It is one line of JSON (what it rests on, length and CRC-32 of
 * the rest), then the state as a structured clone, which keeps shared members shared, infinities and signed zeros.
 */
import { readFile } from 'node:fs/promises';
import { deserialize, serialize } from 'node:v8';
import { canonicalJson } from '../config/canonical.ts';
import { crc32 } from './crc32.ts';
import { writeDurably } from './durable-file.ts';

/** What must agree for a checkpoint to be used. Plain data. */
export interface CheckpointBasis {
  [name: string]: string | number;
}

export interface CheckpointFile {
  /** @throws {StoreError} when the disk refuses */
  write(state: unknown, records: number): Promise<void>;
  /** The state; null when there is none that can be trusted for a log of this many records. */
  read(records: number): Promise<unknown>;
}

export function checkpointFile(path: string, basis: CheckpointBasis): CheckpointFile {
  return {
    async write(state, records) {
      const body = serialize(state);
      const head = { basis, records, bytes: body.length, check: crc32(body) };
      await writeDurably(path, Buffer.concat([Buffer.from(`${JSON.stringify(head)}\n`), body]));
    },
    async read(records) {
      try {
        const bytes = await readFile(path);
        const stop = bytes.indexOf(10);
        const head = JSON.parse(bytes.toString('utf8', 0, stop));
        const body = bytes.subarray(stop + 1);
        // A log that holds fewer records was damaged or exchanged since.
        if (canonicalJson(head.basis) !== canonicalJson(basis) || !(head.records <= records)) return null;
        return body.length === head.bytes && crc32(body) === head.check ? deserialize(body) : null;
      } catch {
        return null;
      }
    },
  };
}
