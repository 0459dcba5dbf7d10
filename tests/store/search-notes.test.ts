import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { digestOf } from '../../src/config/canonical.ts';
import { KeyIndex } from '../../src/store/key-index.ts';
import { NoteDue } from '../../src/store/note-due.ts';
import { RecordLog } from '../../src/store/record-log.ts';
import { type NoteBasis, searchNotes } from '../../src/store/search-notes.ts';

const basis = { format: 1, modelVersion: 'a' };
const shared = { worth: Infinity, x: [-0, 0.1] };
const stateAt = (n: number) => ({ n, first: shared, again: [shared], known: Uint32Array.of(1, 4294967295) });
const record = (n: number) => ({ key: digestOf(n), n });
let path: string;

/** Records 0 to 3, each followed by a note of the state after it. */
beforeEach(async () => {
  path = join(mkdtempSync(join(tmpdir(), 'notes-')), 'evaluations.ndjson');
  const log = await RecordLog.open(path);
  const notes = searchNotes(log, basis);
  for (let n = 0; n < 4; n++) {
    await log.append([record(n)]);
    await notes.write(stateAt(n), { added: n });
  }
  await log.close();
});

interface Found {
  state: ReturnType<typeof stateAt>;
  growths: unknown[];
}

async function latest(by: NoteBasis = basis, accept = (_: Found) => true): Promise<Found | null> {
  const log = await RecordLog.open(path);
  const found = searchNotes(log, by).read((state, growths) => {
    const offered = { state, growths: growths() } as Found;
    return accept(offered) ? offered : null;
  });
  await log.close();
  return found;
}

describe('notes in a log', () => {
  test('are no records: neither counted nor listed, and found again by their place', async () => {
    const log = await RecordLog.open(path);
    expect(log.size).toBe(4);
    expect([...log.keys()]).toEqual([0, 1, 2, 3].map((n) => record(n).key));
    expect(log.notes).toHaveLength(8);
    for (const position of log.notes) expect(log.at(position)?.note).toMatchObject({ at: position });
    expect(log.at(log.positionOf(record(2).key) as number)?.n).toBe(2);
    expect(log.at(5)).toBeNull();
    expect(log.at(log.bytes)).toBeNull();
    await log.close();
  });

  test('give back the latest state with all that has grown, signed zeros, infinities and shared parts included', async () => {
    const found = await latest();
    expect(found?.state).toStrictEqual(stateAt(3));
    expect(found?.growths).toEqual([0, 1, 2, 3].map((added) => ({ added })));
    expect(Object.is(found?.state.first.x[0], -0)).toBe(true);
    expect(found?.state.again[0]).toBe(found?.state.first);
  });

  test('are not used with another model or format; one that does not do or throws leaves it to the one before', async () => {
    expect(await latest({ ...basis, modelVersion: 'b' })).toBeNull();
    expect(await latest({ ...basis, format: 2 })).toBeNull();
    expect((await latest(basis, ({ state }) => state.n < 2))?.state.n).toBe(1);
    const refuse = ({ state }: Found) => {
      if (state.n > 0) throw new RangeError('no');
      return true;
    };
    expect((await latest(basis, refuse))?.growths).toEqual([{ added: 0 }]);
  });

  test('written after going on from an earlier one point to that one, not to what it passed over', async () => {
    const log = await RecordLog.open(path);
    const notes = searchNotes(log, basis);
    notes.read((state) => ((state as Found['state']).n === 1 ? true : null));
    await notes.write(stateAt(9), { added: 9 });
    await log.close();
    expect((await latest())?.growths).toEqual([{ added: 0 }, { added: 1 }, { added: 9 }]);
  });

  test('with one bit changed anywhere, or a line before them gone, are passed over for those before', async () => {
    const whole = readFileSync(path);
    const lines = whole.toString('latin1').trimEnd().split('\n');
    const start = lines.slice(0, 8).join('\n').length + 1;
    for (let at = start; at < start + lines[8].length; at += 11) {
      const bytes = Buffer.from(whole);
      bytes[at] ^= 1;
      writeFileSync(path, bytes);
      expect((await latest())?.state.n).toBe(1);
    }
    for (const [gone, left] of [
      [0, null],
      [2, null],
      [3, 0],
      [6, 1],
      [9, 2],
      [10, 2],
      [11, 2],
    ] as const) {
      writeFileSync(path, `${lines.toSpliced(gone, 1).join('\n')}\n`);
      expect((await latest())?.state.n ?? null).toBe(left);
    }
  });
});

test('notes are due after many answers since the last one', () => {
  const due = new NoteDue(1_000_000);
  expect(due.at(1_002_999)).toBe(false);
  expect(due.at(1_003_100)).toBe(true);
  expect(due.at(1_006_000)).toBe(false);
  expect(due.at(1_006_100)).toBe(true);
  expect(new NoteDue(0, 1).at(1)).toBe(true);
});

test('the index of keys finds each of many, and nothing else', () => {
  const index = new KeyIndex();
  const key = (n: number) => Buffer.from(`${n}`.padStart(32, '0')).toString('hex').split('').reverse().join('');
  for (let n = 0; n < 5000; n++) index.set(key(n), 3 * n);
  index.set(key(7), 1);
  expect(index.size).toBe(5000);
  for (let n = 0; n < 5000; n++) expect(index.get(key(n))).toBe(n === 7 ? 1 : 3 * n);
  expect(index.get(key(5000))).toBeUndefined();
  expect(index.positions()).toHaveLength(5000);
});
