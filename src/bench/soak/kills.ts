/** kill −9 of a small study at random moments, then the same command again, until it ends: the same bytes, nothing lost. */
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { V8_FLAGS } from '../../cli/v8-flags.mjs';
import { childRandom } from '../../search/random.ts';
import { provenKey } from '../../store/record-line.ts';
import { RANKING_FILE, RESULTS_FILE } from '../../store/study-folder.ts';
import { countFault, emptyTally, type Tally } from './tally.ts';

export interface SoakKillsInput {
  kills: number;
  seed: string;
  /** The built command, and the study that it runs. */
  program: string;
  studyFile: string;
  slug: string;
  workers: number;
  onProgress: (done: number) => void;
}

interface RunEnd {
  killed: boolean;
  code: number | null;
  stderr: string;
  seconds: number;
}

/** As the launcher sets it. */
const LOGS = ['evaluations.ndjson', 'finalists.ndjson'];
const ENDS = [RESULTS_FILE, RANKING_FILE];
/**
 * Kills come within this many times an undisturbed run's time, which is what a run takes beside another: some come while the
 * program loads, some in the search, some among the last files, and a study whose kill comes too late has ended.
 */
const REACH = 2;
/** Studies that are killed side by side, so that one starts while another computes. */
const LANES = 2;
/** A run that takes this many times as long as an undisturbed one hangs. */
const HANGS = 30;

/** Keys of the whole, sound lines of a folder's logs: what was acknowledged at the least. */
function storedKeys(folder: string): Map<string, string[]> {
  return new Map(
    LOGS.map((name) => {
      const path = join(folder, name);
      const bytes = existsSync(path) ? readFileSync(path) : Buffer.alloc(0);
      const keys: string[] = [];
      let start = 0;
      for (let stop = bytes.indexOf(10); stop >= 0; stop = bytes.indexOf(10, start)) {
        const key = provenKey(bytes.subarray(start, stop));
        if (key !== null) keys.push(key);
        start = stop + 1;
      }
      return [name, keys];
    }),
  );
}

export async function soakKills(input: SoakKillsInput): Promise<Tally> {
  const { kills, seed, program, studyFile, slug, workers, onProgress } = input;
  const tally = emptyTally('kill −9 of a small study');
  const random = childRandom(seed, 'kills');

  /** @param killAfter s; null: let it end */
  const run = (out: string, killAfter: number | null, limit: number) =>
    new Promise<RunEnd>((resolve) => {
      const began = performance.now();
      const args = [...V8_FLAGS, program, 'run', studyFile, '--out', out, '--no-pdf', '--workers', String(workers)];
      const child = spawn(process.execPath, args, { stdio: ['ignore', 'ignore', 'pipe'] });
      let stderr = '';
      child.stderr.setEncoding('utf8').on('data', (text) => {
        stderr += text;
      });
      const timer = setTimeout(() => child.kill('SIGKILL'), (killAfter ?? limit) * 1000);
      child.on('close', (code, signal) => {
        clearTimeout(timer);
        resolve({ killed: signal === 'SIGKILL', code, stderr, seconds: (performance.now() - began) / 1000 });
      });
    });
  const temporary = () => mkdtempSync(join(tmpdir(), 'soak-'));

  const reference = temporary();
  const undisturbed = await run(reference, null, 3600);
  const folder = join(reference, slug);
  if (!ENDS.every((name) => existsSync(join(folder, name)))) {
    countFault(
      tally,
      'wrong',
      `the undisturbed study ends with code ${undisturbed.code}: ${undisturbed.stderr.slice(-500)}`,
    );
    return tally;
  }
  const wanted = ENDS.map((name) => readFileSync(join(folder, name), 'utf8'));
  const whole = storedKeys(folder);
  const limit = Math.max(120, HANGS * undisturbed.seconds);

  let studies = 0;
  let torn = 0;
  let begun = 0;
  const lane = async () => {
    while (begun < kills) {
      const study = studies++;
      const out = temporary();
      let before = new Map<string, string[]>();
      for (;;) {
        const last = begun >= kills;
        if (!last) begun++;
        const end = await run(out, last ? null : random.uniform() * undisturbed.seconds * REACH, limit);
        if (/cut short by a stop/.test(end.stderr)) torn++;
        const after = storedKeys(join(out, slug));
        judgeLogs(study, before, after);
        before = after;
        if (!end.killed) {
          // A run that ended before its kill came gives the kill back.
          if (!last) begun--;
          judgeEnd(study, out, end, after);
          break;
        }
        if (last) {
          countFault(tally, 'lost', `study ${study}: no end within ${limit.toFixed(0)} s`);
          break;
        }
        tally.tried++;
        if (tally.tried % 10 === 0) onProgress(tally.tried);
      }
      rmSync(out, { recursive: true, force: true });
    }
  };
  await Promise.all(Array.from({ length: LANES }, lane));
  rmSync(reference, { recursive: true, force: true });
  const evaluations = LOGS.map((name) => whole.get(name)?.length ?? 0).reduce((a, b) => a + b, 0);
  tally.notes.push(`${studies} studies of ${evaluations} evaluations brought to their end, ${workers} workers, no PDF`);
  tally.notes.push(`an undisturbed study takes ${undisturbed.seconds.toFixed(1)} s`);
  tally.notes.push(`${torn} times a torn last line was found and set aside`);
  return tally;

  function judgeLogs(study: number, before: Map<string, string[]>, after: Map<string, string[]>): void {
    for (const [name, keys] of before) {
      const held = new Set(after.get(name));
      for (const key of keys)
        if (!held.has(key)) countFault(tally, 'lost', `study ${study}: a record of ${name} is gone: ${key}`);
    }
    for (const [name, keys] of after)
      if (new Set(keys).size !== keys.length)
        countFault(tally, 'wrong', `study ${study}: ${name} holds a record twice`);
  }

  function judgeEnd(study: number, out: string, { code, stderr }: RunEnd, after: Map<string, string[]>): void {
    ENDS.forEach((name, i) => {
      const path = join(out, slug, name);
      if (!existsSync(path))
        countFault(tally, 'wrong', `study ${study}: no ${name}; code ${code}: ${stderr.slice(-500)}`);
      else if (readFileSync(path, 'utf8') !== wanted[i])
        countFault(tally, 'wrong', `study ${study}: ${name} has other bytes`);
    });
    for (const name of LOGS) {
      // A design evaluated again under another name would show as a record more.
      const [is, was] = [after.get(name)?.length, whole.get(name)?.length];
      if (is !== was) countFault(tally, 'wrong', `study ${study}: ${name} holds ${is} records instead of ${was}`);
    }
  }
}
