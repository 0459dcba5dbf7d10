/** A search through the real store, cut and gone on with. The evaluations are invented; everything else is what a night runs. */
import { existsSync, mkdtempSync, readFileSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { INVENTED } from '../../src/bench/soak/invented-evaluator.ts';
import { SILENT } from '../../src/cli/progress.ts';
import { searchStudy } from '../../src/cli/search-study.ts';
import { digestOf } from '../../src/config/canonical.ts';
import { loadStudy } from '../../src/config/files.ts';
import type { Study } from '../../src/config/study.ts';
import type { Evaluator } from '../../src/evaluation/evaluation.ts';
import { architecturesOf } from '../../src/space/architectures.ts';
import { StoredEvaluations } from '../../src/store/stored-evaluations.ts';
import { StudyClock } from '../../src/store/study-clock.ts';
import { openStudyFolder } from '../../src/store/study-folder.ts';

const BUDGET = 400;
let study: Study;
let uncut: Run;

interface Run {
  out: string;
  digest: string;
  fresh: number;
  /** Answers that the search asked for, stored ones included. */
  heard: number;
  stored: number;
  records: number;
  /** Notes of where the search stood, in the log. */
  notes: number;
  /** Path of a file in the study's folder. */
  file: (name: string) => string;
}

const folder = () => mkdtempSync(join(tmpdir(), 'resume-'));

/** Dies before its answer number `at`, in the middle of a batch. */
function dying(at: number): Evaluator {
  let answered = 0;
  return {
    ...INVENTED,
    evaluate: (requests, options) =>
      INVENTED.evaluate(requests, {
        ...options,
        onResult: async (index, result) => {
          if (answered++ >= at) throw new Error('power cut');
          await options?.onResult?.(index, result);
        },
      }),
  };
}

interface RunOptions {
  evaluator?: Evaluator;
  evaluations?: number;
  /** Seconds that pass with each answer. */
  pace?: () => number;
}

async function run(
  out: string,
  { evaluator = INVENTED, evaluations = BUDGET, pace = () => 1 }: RunOptions = {},
): Promise<Run> {
  const own: Study = { ...study, search: { ...study.search, evaluations, timeLimit: null } };
  const opened = await openStudyFolder(own, { out, modelVersion: 'm'.repeat(64), toolVersion: '1', fresh: false });
  const stored = opened.evaluations.size;
  let now = 1000;
  const clock = new StudyClock(() => {
    now += pace();
    return now;
  });
  let fresh = 0;
  let heard = 0;
  try {
    const answers = new StoredEvaluations({
      evaluator,
      evaluations: opened.evaluations,
      finalists: opened.finalists,
      modelVersion: 'm'.repeat(64),
      clock,
      onAnswer: (_, __, isFresh) => {
        heard++;
        if (isFresh) fresh++;
      },
    });
    const { result, asked, kept } = await searchStudy({
      study: own,
      folder: opened,
      spaces: architecturesOf(own),
      stored: answers,
      clock,
      progress: SILENT,
      // Each generation leaves a note.
      noteEvery: 1,
    });
    const designs = [...kept].map(([id, { designs, running, feasible }]) => ({ id, designs, running, feasible }));
    const digest = digestOf(JSON.parse(JSON.stringify({ result, asked, designs })));
    return {
      out,
      digest,
      fresh,
      heard,
      stored,
      records: opened.evaluations.size,
      notes: opened.evaluations.notes.length,
      file: (name) => join(opened.path, name),
    };
  } finally {
    await opened.close();
  }
}

beforeAll(async () => {
  const reading = await loadStudy('configs/demo-quick.yaml');
  if (!reading.ok) throw new Error('the demo study does not read');
  study = reading.study;
  uncut = await run(folder());
});

describe('a search that was cut', () => {
  test.each([3, 150, 400, 600])('after %i answers goes on to the same end and pays for nothing twice', async (at) => {
    const out = folder();
    await expect(run(out, { evaluator: dying(at) })).rejects.toThrow('power cut');
    const again = await run(out);
    expect(again.stored).toBeGreaterThanOrEqual(at);
    expect(again.stored + again.fresh).toBe(uncut.records);
    expect(again.records).toBe(uncut.records);
    expect(again.digest).toBe(uncut.digest);
    expect(again.notes).toBeGreaterThan(3);
  });

  test('goes on from its latest note: what lies before is not asked again', async () => {
    // Two designs may build the same engine, which is then heard of twice and paid for once.
    expect(uncut.heard).toBeGreaterThanOrEqual(uncut.records);
    const { digest, heard, fresh } = await run(uncut.out);
    expect(heard).toBeLessThan(0.2 * uncut.records);
    expect(fresh).toBe(0);
    expect(digest).toBe(uncut.digest);
  });

  test('in many runs with a clock that stands still or goes back', async () => {
    const out = folder();
    let turn = 0;
    const pace = () => [3, -50, 0, 2][turn++ % 4];
    for (const at of [100, 200, 150])
      await expect(run(out, { evaluator: dying(at), pace })).rejects.toThrow('power cut');
    expect((await run(out, { pace })).digest).toBe(uncut.digest);
  });

  const isNote = (line: string) => /^.{91}","note":/.test(line);
  test.each<[string, (lines: string[]) => string[]]>([
    ['no notes', (lines) => lines.filter((line) => !isNote(line))],
    ['its last note changed', (lines) => lines.with(lines.findLastIndex(isNote), '{"check":"00000000"}')],
    ['its first note gone', (lines) => lines.toSpliced(lines.findIndex(isNote), 1)],
    ['a torn end', (lines) => [...lines.slice(0, -1), lines[lines.length - 1].slice(0, 100)]],
  ])('with %s in its log goes on to the same end', async (_, harm) => {
    const out = folder();
    await expect(run(out, { evaluator: dying(500) })).rejects.toThrow('power cut');
    const log = join(out, study.slug, 'evaluations.ndjson');
    const lines = readFileSync(log, 'utf8').trimEnd().split('\n');
    expect(lines.filter(isNote).length).toBeGreaterThan(3);
    writeFileSync(log, harm(lines).join('\n') + (harm(lines).length === lines.length ? '' : '\n'));
    const again = await run(out);
    expect(again.stored).toBeGreaterThanOrEqual(499);
    expect(again.stored + again.fresh).toBe(uncut.records);
    expect(again.digest).toBe(uncut.digest);
  });

  test.each([0.2, 0.7])(
    'with an answer lost at %f of its log asks for it again, whatever notes know of it',
    async (share) => {
      const out = folder();
      await run(out);
      const log = join(out, study.slug, 'evaluations.ndjson');
      const lines = readFileSync(log, 'utf8').trimEnd().split('\n');
      const lost = lines.findIndex((line, n) => n >= share * lines.length && !isNote(line));
      expect(lines.slice(lost).filter(isNote).length).toBeGreaterThan(1);
      writeFileSync(log, lines.with(lost, lines[lost].replace('"id":', '"ID":')).join('\n'));
      // Also when a run in between ends before it comes to the place.
      await expect(run(out, { evaluator: dying(0) })).rejects.toThrow('power cut');
      const again = await run(out);
      expect(again.records).toBe(uncut.records);
      expect(again.digest).toBe(uncut.digest);
    },
  );

  test('with a log that lost its end goes on from the note before', async () => {
    const out = folder();
    await expect(run(out, { evaluator: dying(500) })).rejects.toThrow('power cut');
    const log = join(out, study.slug, 'evaluations.ndjson');
    truncateSync(log, statSync(log).size >> 1);
    const again = await run(out);
    expect(again.stored).toBeLessThan(400);
    expect(again.records).toBe(uncut.records);
    expect(again.digest).toBe(uncut.digest);
  });

  test('with a larger or smaller budget ends as if that had been its budget', async () => {
    for (const evaluations of [BUDGET + 200, BUDGET - 200]) {
      const whole = await run(folder(), { evaluations });
      const out = folder();
      await run(out);
      const again = await run(out, { evaluations });
      expect(again.digest).toBe(whole.digest);
    }
  });

  test('leaves no half-written files of a killed run, and foreign files alone', async () => {
    const out = folder();
    const { file } = await run(out);
    for (const name of ['study.json.123-0a1b2c.part', 'results.json.9-ffffff.part', 'notes.part'])
      writeFileSync(file(name), 'half');
    await run(out);
    expect(existsSync(file('study.json.123-0a1b2c.part'))).toBe(false);
    expect(existsSync(file('results.json.9-ffffff.part'))).toBe(false);
    expect(existsSync(file('notes.part'))).toBe(true);
  });
});
