/**
 * A study of very many stored evaluations: written, gone on with from its log, and from a log without the notes of where the
 * search stood. The evaluations are invented (see invented-evaluator.ts); search and store are the real ones.
 */
import { spawn } from 'node:child_process';
import { createReadStream, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { V8_FLAGS } from '../../cli/v8-flags.mjs';
import { isNote } from '../../store/record-line.ts';
import type { RecordsMeasured } from '../soak-records.ts';
import { memoryInWords } from './memory.ts';
import { countFault, emptyTally, type Tally } from './tally.ts';

/** What a resume of a million evaluations may take. Without notes time is only told. */
const RESUME_SECONDS = 10;
const RESUME_MEGABYTES = 500;
/** Stored evaluations that a budget of one full evaluation brings, at the least: screening runs are cheap. */
const RECORDS_A_UNIT = 1.65;

export interface SoakRecordsInput {
  records: number;
  /** The built program soak-records. */
  program: string;
  onProgress: (done: number) => void;
}

function run(program: string, out: string, evaluations: number): Promise<RecordsMeasured> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...V8_FLAGS, program, '--out', out, '--evaluations', String(evaluations)], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    let text = '';
    child.stdout.setEncoding('utf8').on('data', (part) => {
      text += part;
    });
    child.on('close', (code, signal) => {
      if (code === 0) resolve(JSON.parse(text));
      else reject(new Error(`the run on ${out} ended with ${signal ?? code}`));
    });
  });
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
  const evaluations = Math.ceil(records / RECORDS_A_UNIT);
  try {
    const written = await run(program, out, evaluations);
    onProgress(written.records);
    tally.tried = written.records;
    tally.notes.push(
      `${written.records} evaluations written in ${written.ended.toFixed(0)} s: ${(written.logBytes / written.records).toFixed(0)} bytes of log each, ${written.notes} notes included`,
      `memory ${memoryInWords(written.samples)}`,
    );
    if (written.records < records) countFault(tally, 'wrong', `only ${written.records} evaluations were made`);
    for (const [way, bare] of [
      ['log', false],
      ['log without its notes', true],
    ] as const) {
      if (bare) await removeNotes(join(written.folder, 'evaluations.ndjson'));
      const again = await run(program, out, evaluations);
      tally.notes.push(
        `gone on from the ${way}: opened after ${again.opened.toFixed(1)} s, search at its end after ${again.ended.toFixed(1)} s (processor time ${again.processor.toFixed(1)} s), at most ${again.peak.toFixed(0)} MB`,
      );
      if (again.fresh > 0) countFault(tally, 'lost', `from the ${way}: ${again.fresh} evaluations were asked again`);
      if (again.digest !== written.digest) countFault(tally, 'wrong', `from the ${way}: the search ends elsewhere`);
      if (again.peak > RESUME_MEGABYTES || (!bare && again.ended > RESUME_SECONDS))
        countFault(tally, 'wrong', `from the ${way}: more than ${RESUME_SECONDS} s or ${RESUME_MEGABYTES} MB`);
    }
  } finally {
    rmSync(out, { recursive: true, force: true });
  }
  return tally;
}
