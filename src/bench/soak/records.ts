/**
 * A study of very many stored evaluations: written, gone on with from its log, and from a log without the notes of where the
 * search stood. The evaluations are invented (see invented-evaluator.ts); search and store are the real ones.
 */
import { createReadStream, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { isNote } from '../../store/record-line.ts';
import { memoryInWords } from './memory.ts';
import { budgetFor, MOST_MEGABYTES, runRecords } from './records-run.ts';
import { countFault, emptyTally, type Tally } from './tally.ts';

/** What a resume of a million evaluations may take. Without notes time is only told. */
const RESUME_SECONDS = 10;
/** Byte of a note's line that is damaged: behind its checksum and key, in what it says. */
const NOTE_MIDDLE = 200;
/** End of a log in which its last note surely begins, bytes: a note follows every 3000 answers. */
const NOTE_WITHIN = 1 << 25;

export interface SoakRecordsInput {
  records: number;
  /** The built program soak-records. */
  program: string;
  onProgress: (done: number) => void;
}

/** A bit of the log's last note turned over, as a failing disk does it. Throws Error when there is none. */
async function damageLastNote(path: string): Promise<void> {
  const file = await open(path, 'r+');
  const { size } = await file.stat();
  const from = Math.max(0, size - NOTE_WITHIN);
  const { buffer: tail } = await file.read(Buffer.alloc(size - from), 0, size - from, from);
  let start = tail.length - 1;
  do {
    start = tail.lastIndexOf(10, start - 1);
    if (start < 0) throw new Error(`${path} has no note at its end`);
  } while (!isNote(tail, start + 1));
  const inside = start + 1 + NOTE_MIDDLE;
  await file.write(Buffer.of(tail[inside] ^ 1), 0, 1, from + inside);
  await file.close();
}

/** As if no note could be used: the search is led through every answer. */
async function removeNotes(path: string): Promise<void> {
  const bare = `${path}.bare`;
  const file = await open(bare, 'w');
  let lines: string[] = [];
  const flush = async () => {
    await file.write(lines.join(''));
    lines = [];
  };
  for await (const line of createInterface({ input: createReadStream(path) })) {
    if (!isNote(Buffer.from(line.slice(0, 120)), 0)) lines.push(`${line}\n`);
    if (lines.length === 5000) await flush();
  }
  await flush();
  await file.close();
  renameSync(bare, path);
}

export async function soakRecords({ records, program, onProgress }: SoakRecordsInput): Promise<Tally> {
  const tally = emptyTally('stored evaluations gone on with');
  const out = mkdtempSync(join(tmpdir(), 'soak-records-'));
  const evaluations = budgetFor(records);
  try {
    const written = await runRecords(program, out, evaluations);
    onProgress(written.records);
    tally.tried = written.records;
    tally.notes.push(
      `${written.records} evaluations written in ${written.ended.toFixed(0)} s: ${(written.logBytes / written.records).toFixed(0)} bytes of log each, ${written.notes} notes included`,
      `memory ${memoryInWords(written.samples)}`,
    );
    if (written.records < records) countFault(tally, 'wrong', `only ${written.records} evaluations were made`);
    const log = join(written.folder, 'evaluations.ndjson');
    const ways: { way: string; spoil: (path: string) => Promise<void>; bare?: boolean }[] = [
      { way: 'log', spoil: async () => {} },
      { way: 'log with its last note damaged', spoil: damageLastNote },
      { way: 'log without its notes', spoil: removeNotes, bare: true },
    ];
    for (const { way, spoil, bare } of ways) {
      await spoil(log);
      const again = await runRecords(program, out, evaluations);
      tally.notes.push(
        `gone on from the ${way}: opened after ${again.opened.toFixed(1)} s, search at its end after ${again.ended.toFixed(1)} s (processor time ${again.processor.toFixed(1)} s), at most ${again.peak.toFixed(0)} MB`,
      );
      if (again.fresh > 0) countFault(tally, 'lost', `from the ${way}: ${again.fresh} evaluations were asked again`);
      if (again.digest !== written.digest) countFault(tally, 'wrong', `from the ${way}: the search ends elsewhere`);
      if (again.peak > MOST_MEGABYTES || (!bare && again.ended > RESUME_SECONDS))
        countFault(tally, 'wrong', `from the ${way}: more than ${RESUME_SECONDS} s or ${MOST_MEGABYTES} MB`);
    }
  } finally {
    rmSync(out, { recursive: true, force: true });
  }
  return tally;
}
