import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { checkpointFile } from '../../src/store/checkpoint.ts';
import { CheckpointDue } from '../../src/store/checkpoint-due.ts';
import { KeyIndex } from '../../src/store/key-index.ts';
import { StudyClock } from '../../src/store/study-clock.ts';

const basis = { format: 1, modelVersion: 'a' };
const shared = { worth: Infinity, x: [-0, 0.1] };
const state = { first: shared, again: [shared], known: Uint32Array.of(1, 4294967295) };
let path: string;
beforeEach(async () => {
  path = join(mkdtempSync(join(tmpdir(), 'checkpoint-')), 'search.checkpoint');
  await checkpointFile(path, basis).write(state, 10);
});

describe('a checkpoint', () => {
  test('gives back the same values, signed zeros, infinities and shared parts included', async () => {
    const found = (await checkpointFile(path, basis).read(10)) as typeof state;
    expect(found).toStrictEqual(state);
    expect(Object.is(found.first.x[0], -0)).toBe(true);
    expect(found.again[0]).toBe(found.first);
  });

  test('is not used with another model, another format, or a log that lost records', async () => {
    expect(await checkpointFile(path, { ...basis, modelVersion: 'b' }).read(10)).toBeNull();
    expect(await checkpointFile(path, { ...basis, format: 2 }).read(10)).toBeNull();
    expect(await checkpointFile(path, basis).read(9)).toBeNull();
    expect(await checkpointFile(path, basis).read(11)).not.toBeNull();
    expect(await checkpointFile(`${path}-none`, basis).read(11)).toBeNull();
  });

  test('cut short, or with one byte changed anywhere, is not used', async () => {
    const whole = readFileSync(path);
    for (let at = 0; at < whole.length; at += 3) {
      writeFileSync(path, whole.subarray(0, at));
      expect(await checkpointFile(path, basis).read(10)).toBeNull();
      const bytes = Buffer.from(whole);
      bytes[at] ^= 1;
      writeFileSync(path, bytes);
      const found = await checkpointFile(path, basis).read(10);
      // Only the count of records is outside the checks; a smaller one would still be a true state.
      if (found !== null) expect(found).toStrictEqual(state);
    }
  });

  test('that cannot be written is said in words', async () => {
    const file = checkpointFile(join(path, 'below', 'a-file'), basis);
    await expect(file.write(state, 1)).rejects.toMatchObject({ fault: 'cannot write' });
    expect(existsSync(join(path, 'below'))).toBe(false);
  });
});

test('checkpoints come after many answers or a long time, later the more there are', async () => {
  let now = 0;
  const clock = new StudyClock(() => now);
  const due = new CheckpointDue(clock, 0);
  expect(due.at(4999)).toBe(false);
  expect(due.at(5000)).toBe(true);
  expect(due.at(5001)).toBe(false);
  now = 10;
  clock.stamp();
  expect(due.at(5002)).toBe(true);
  await due.during(async () => {});
  expect(due.at(9000)).toBe(false);
  const late = new CheckpointDue(clock, 1_000_000);
  expect(late.at(1_004_900)).toBe(false);
  expect(late.at(1_005_100)).toBe(true);
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
