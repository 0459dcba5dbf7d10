/**
 * Where a search stood, noted in its log now and then, so that a run that goes on need not ask for a million stored answers
 * again. The log holds both, so neither is ever without the other.
 *
 * A note is two lines: of what only grows, what is new since the note before it, to which it points; and a small state, whole.
 * Each says at which byte it begins; where that is no longer so, something before it was taken out, and it is not used. Contents
 * are structured clones, which keep shared members shared, infinities and signed zeros; deflated, in base 64.
 */
import { deserialize, serialize } from 'node:v8';
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { digestOf } from '../config/canonical.ts';
import type { RecordLog } from './record-log.ts';

/** What must agree for a note to be used. Plain data. */
export interface NoteBasis {
  [name: string]: string | number;
}

export interface SearchNotes {
  /** @throws {StoreError} when the disk refuses */
  write(state: unknown, growth: unknown): Promise<void>;
  /**
   * What the latest note gives that rests on the same basis, and that `use` can use: its answer, null when there is none.
   * Later writes go on from that note.
   * @param use gets a state and all that has grown up to it; null or an error: the note before is tried
   */
  read<T>(use: (state: unknown, growths: () => unknown[]) => T | null): T | null;
}

interface Growth {
  at: number;
  /** Where the growth of the note before begins. */
  before: number | null;
  basis: string;
  growth: string;
}

interface State {
  at: number;
  /** Where the growth that belongs to it begins. */
  grown: number;
  state: string;
}

const packed = (value: unknown) => deflateRawSync(serialize(value), { level: 3 }).toString('base64');
const unpacked = (text: string): unknown => deserialize(inflateRawSync(Buffer.from(text, 'base64')));

export function searchNotes(log: RecordLog, basis: NoteBasis): SearchNotes {
  const digest = digestOf(basis);
  let before: number | null = null;

  /** The line that begins at a byte; null when it is not to be used. */
  function lineAt<T extends Growth | State>(at: number): T | null {
    const { note } = (log.at(at) ?? {}) as { note?: T };
    return note?.at === at ? note : null;
  }

  /**
   * All that has grown, oldest first, up to the line that begins at a byte; null when a part of it is not to be used.
   * @param read lines that were read before: many states may be tried, and all of them rest on the same first ones
   */
  function growthsUpTo(position: number, read: Map<number, Growth | null>): string[] | null {
    const growths: string[] = [];
    for (let at: number | null = position; at !== null; ) {
      let line = read.get(at);
      if (line === undefined) {
        line = lineAt<Growth>(at);
        read.set(at, line);
      }
      if (line?.basis !== digest || (line.before !== null && !(line.before < at))) return null;
      growths.push(line.growth);
      at = line.before;
    }
    return growths.reverse();
  }

  return {
    async write(state, growth) {
      const content = { state: packed(state), growth: packed(growth) };
      const grown = await log.note((at): Growth => ({ at, before, basis: digest, growth: content.growth }));
      await log.note((at): State => ({ at, grown, state: content.state }));
      before = grown;
    },
    read(use) {
      const lines = new Map<number, Growth | null>();
      for (const position of log.notes.toReversed()) {
        const line = lineAt<State>(position);
        const growths = line?.state === undefined ? null : growthsUpTo(line.grown, lines);
        if (!line || !growths) continue;
        try {
          const found = use(unpacked(line.state), () => growths.map(unpacked));
          if (found === null) continue;
          before = line.grown;
          return found;
        } catch {
          // Written by a run that was not what it seems; an earlier note may do.
        }
      }
      return null;
    },
  };
}
