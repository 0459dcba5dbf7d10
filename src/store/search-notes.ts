/**
 * Where a search stood, noted in its log now and then, so that a run that goes on need not ask for a million stored answers
 * again. The log holds both, so neither is ever without the other.
 *
 * A note says at which byte it begins; where that is no longer so, something before it was taken out, and it is not used. It
 * holds a small state whole and, of what only grows, what is new since the note before it, to which it points. Contents are
 * structured clones, which keep shared members shared, infinities and signed zeros; deflated, in base 64.
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
  read<T>(use: (state: unknown, growths: unknown[]) => T | null): T | null;
}

interface Note {
  at: number;
  before: number | null;
  basis: string;
  state: string;
  growth: string;
}

const packed = (value: unknown) => deflateRawSync(serialize(value), { level: 3 }).toString('base64');
const unpacked = (text: string): unknown => deserialize(inflateRawSync(Buffer.from(text, 'base64')));

export function searchNotes(log: RecordLog, basis: NoteBasis): SearchNotes {
  const digest = digestOf(basis);
  let before: number | null = null;

  /** The note that begins at a byte, and all that led to it, oldest first. */
  function chain(position: number): Note[] | null {
    const notes: Note[] = [];
    for (let at: number | null = position; at !== null; at = notes[notes.length - 1].before) {
      const { note } = (log.at(at) ?? {}) as { note?: Note };
      if (note?.at !== at || note.basis !== digest || (note.before !== null && !(note.before < at))) return null;
      notes.push(note);
    }
    return notes.reverse();
  }

  return {
    async write(state, growth) {
      const content = { state: packed(state), growth: packed(growth) };
      before = await log.note((at): Note => ({ at, before, basis: digest, ...content }));
    },
    read(use) {
      for (const position of log.notes.toReversed()) {
        const notes = chain(position);
        if (notes === null) continue;
        try {
          const found = use(
            unpacked(notes[notes.length - 1].state),
            notes.map(({ growth }) => unpacked(growth)),
          );
          if (found === null) continue;
          before = position;
          return found;
        } catch {
          // Written by a run that was not what it seems; an earlier note may do.
        }
      }
      return null;
    },
  };
}
