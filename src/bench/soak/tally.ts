/** What one part of the soak tried and found. */

export interface Tally {
  name: string;
  tried: number;
  /** Something acknowledged or asked for that never came: a stored evaluation gone, a worker or a process that crashed or hung. */
  lost: number;
  /** Something that came and is not right: other bytes, a number that means nothing, a message without a place. */
  wrong: number;
  /** Counts for the record. */
  notes: string[];
  /** The first faults, each so that it can be repeated. */
  faults: string[];
}

/** Faults that are told in full; the rest is counted. */
const TOLD = 20;

export function emptyTally(name: string): Tally {
  return { name, tried: 0, lost: 0, wrong: 0, notes: [], faults: [] };
}

export function countFault(tally: Tally, kind: 'lost' | 'wrong', sentence: string): void {
  tally[kind]++;
  if (tally.faults.length < TOLD) tally.faults.push(`${kind}: ${sentence}`);
}

/** "3 of this, 2 of that", most first. */
export function countsInWords(counts: ReadonlyMap<string, number>): string {
  return [...counts]
    .sort(([a, n], [b, m]) => m - n || (a < b ? -1 : 1))
    .map(([name, count]) => `${count} ${name}`)
    .join(', ');
}
