/** A long study of real evaluations, the night's demo with a larger budget: the main process and its threads grow no memory. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type MemorySample, memoryInWords } from './memory.ts';
import { budgetFor, MOST_MEGABYTES, runRecords } from './records-run.ts';
import { countFault, emptyTally, type Tally } from './tally.ts';

/**
 * What may be added between the first half of a study and its end, MB. Archives and kept designs fill up to their bounds; the
 * index of keys, which lies beside the heap, takes 0.05 kB an evaluation.
 */
const HEAP_GROWTH = 5;
const RESIDENT_GROWTH = 40;

export interface SoakLongStudyInput {
  /** Evaluations that are stored at the least. */
  real: number;
  threads: number;
  /** The built program soak-records. */
  program: string;
}

export async function soakLongStudy({ real, threads, program }: SoakLongStudyInput): Promise<Tally> {
  const tally = emptyTally('real evaluations of one long study');
  const out = mkdtempSync(join(tmpdir(), 'soak-real-'));
  try {
    const { records, samples, ended, peak, status } = await runRecords(program, out, budgetFor(real), threads);
    tally.tried = records;
    const counts = Object.entries(status).map(([name, count]) => `${count} ${name}`);
    tally.notes.push(
      `stored and searched in ${(ended / 60).toFixed(0)} min on ${threads} threads, ${(records / ended).toFixed(0)} a second: ${counts.join(', ')}`,
      `memory ${memoryInWords(samples)}; at most ${peak.toFixed(0)} MB`,
    );
    if (records < real) countFault(tally, 'wrong', `only ${records} evaluations were made`);
    if (peak > MOST_MEGABYTES) countFault(tally, 'wrong', `more than ${MOST_MEGABYTES} MB`);
    const growth = growthOf(samples);
    if (growth.heap > HEAP_GROWTH || growth.resident > RESIDENT_GROWTH)
      countFault(
        tally,
        'wrong',
        `heap grew by ${growth.heap.toFixed(1)} MB, resident memory by ${growth.resident.toFixed(1)} MB`,
      );
  } finally {
    rmSync(out, { recursive: true, force: true });
  }
  return tally;
}

/** MB from the most that the first half held to the last; nothing when there are too few looks to have halves. */
export function growthOf(samples: readonly MemorySample[]): { heap: number; resident: number } {
  const half = samples.slice(0, Math.floor(samples.length / 2));
  const last = samples.at(-1);
  if (half.length === 0 || last === undefined) return { heap: 0, resident: 0 };
  const most = (part: 'heap' | 'resident') => Math.max(...half.map((sample) => sample[part]));
  return { heap: last.heap - most('heap'), resident: last.resident - most('resident') };
}
