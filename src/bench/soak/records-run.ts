/** One run of the program soak-records, as a process of its own (see soak-records.ts). */
import { spawn } from 'node:child_process';
import { V8_FLAGS } from '../../cli/v8-flags.mjs';
import type { RecordsMeasured } from '../soak-records.ts';

/** Stored evaluations that a budget of one full evaluation brings, at the least: screening runs are cheap. */
const RECORDS_A_UNIT = 1.65;

/** What the main process may hold while it makes or reads a million stored evaluations, MB. */
export const MOST_MEGABYTES = 500;

/** The budget that brings this many stored evaluations. */
export function budgetFor(records: number): number {
  return Math.ceil(records / RECORDS_A_UNIT);
}

/**
 * Runs or goes on with the study in `out`. With `threads` the model answers, else invented evaluations. Throws Error when the
 * process does not come to its end.
 */
export function runRecords(
  program: string,
  out: string,
  evaluations: number,
  threads: number | null = null,
): Promise<RecordsMeasured> {
  const args = [...V8_FLAGS, program, '--out', out, '--evaluations', String(evaluations)];
  if (threads !== null) args.push('--real', String(threads));
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
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
