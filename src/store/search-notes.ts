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
  read<T>(use: (state: unknown, growths: () => unknown[]) => T | null): T | null;
}

interface Note {
  at: number;
  before: number | null;
  basis: string;
  state: string;
  growth: string;
}

type Link = Pick<Note, 'before' | 'growth'>;

const packed = (value: unknown) => deflateRawSync(serialize(value), { level: 3 }).toString('base64');
const unpacked = (text: string): unknown => deserialize(inflateRawSync(Buffer.from(text, 'base64')));

export function searchNotes(log: RecordLog, basis: NoteBasis): SearchNotes {
  const digest = digestOf(basis);
  let before: number | null = null;

  function noteAt(at: number): Note | null {
    const { note } = (log.at(at) ?? {}) as { note?: Note };
    const sound = note?.at === at && note.basis === digest && (note.before === null || note.before < at);
    return sound ? note : null;
  }

  /**
   * All that has grown up to the note that begins at a byte, oldest first; null when a part of it is not to be used.
   * @param links notes read before: many states may be tried, and all of them rest on the same first ones
   */
  function growthsUpTo(position: number, links: Map<number, Link | null>): string[] | null {
    const growths: string[] = [];
    for (let at: number | null = position; at !== null; ) {
      let link = links.get(at);
      if (link === undefined) {
        const note = noteAt(at);
        link = note && { before: note.before, growth: note.growth };
        links.set(at, link);
      }
      if (link === null) return null;
      growths.push(link.growth);
      at = link.before;
    }
    return growths.reverse();
  }

  return {
    async write(state, growth) {
      const content = { state: packed(state), growth: packed(growth) };
      before = await log.note((at): Note => ({ at, before, basis: digest, ...content }));
    },
    read(use) {
      const links = new Map<number, Link | null>();
      for (const position of log.notes.toReversed()) {
        const note = noteAt(position);
        const growths = note && growthsUpTo(position, links);
        if (!note || !growths) continue;
        try {
          const found = use(unpacked(note.state), () => growths.map(unpacked));
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
