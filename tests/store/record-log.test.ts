import { appendFileSync, existsSync, mkdtempSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { digestOf } from '../../src/config/canonical.ts';
import { crc32, crc32ByTable } from '../../src/store/crc32.ts';
import { RecordLog } from '../../src/store/record-log.ts';
import { StoreError } from '../../src/store/store-error.ts';

const record = (n: number, text = `line ${n}`) => ({ key: digestOf(n), n, text });
let path: string;
beforeEach(() => {
  path = join(mkdtempSync(join(tmpdir(), 'log-')), 'evaluations.ndjson');
});
afterEach(() => vi.restoreAllMocks());

async function write(count: number): Promise<void> {
  const log = await RecordLog.open(path);
  await log.append(Array.from({ length: count }, (_, n) => record(n)));
  await log.close();
}

async function reopen(): Promise<{ found: number[]; repairs: readonly string[] }> {
  const log = await RecordLog.open(path);
  const found = [...log.keys()].map((key) => log.get(key)?.n as number);
  await log.close();
  return { found, repairs: log.repairs };
}

describe('CRC-32', () => {
  test('gives the check value of the published catalogue for "123456789": cbf43926', () => {
    expect(crc32(Buffer.from('123456789')).toString(16)).toBe('cbf43926');
    expect(crc32ByTable(Buffer.from('123456789')).toString(16)).toBe('cbf43926');
  });
});

describe('the record log', () => {
  test('gives back what was appended, after reopening, in any text', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.string({ unit: 'binary' }), { minLength: 1, maxLength: 20 }), async (texts) => {
        path = join(mkdtempSync(join(tmpdir(), 'log-')), 'log.ndjson');
        const log = await RecordLog.open(path);
        await log.append(texts.map((text, n) => record(n, text)));
        await log.close();
        const again = await RecordLog.open(path);
        expect(again.repairs).toEqual([]);
        expect([...again.keys()].map((key) => again.get(key)?.text)).toEqual(texts);
        await again.close();
      }),
      { numRuns: 10 },
    );
  });

  test('is newline-delimited JSON that any reader reads', async () => {
    await write(3);
    const lines = readFileSync(path, 'utf8')
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(lines.map((line) => line.n)).toEqual([0, 1, 2]);
  });

  test('shares writes between appends that come together, and writes no key twice', async () => {
    const log = await RecordLog.open(path);
    await Promise.all(Array.from({ length: 50 }, (_, n) => log.append([record(n)])));
    await log.append([record(7), record(50)]);
    expect(log.size).toBe(51);
    await log.close();
    expect((await reopen()).found.toSorted((a, b) => a - b)).toEqual(Array.from({ length: 51 }, (_, n) => n));
    expect(readFileSync(path, 'utf8').trimEnd().split('\n')).toHaveLength(51);
  });

  test('cut at any byte, keeps every whole line, names the torn one, and goes on', async () => {
    await write(4);
    const whole = readFileSync(path);
    const ends = [0];
    for (let i = 0; i < whole.length; i++) if (whole[i] === 10) ends.push(i + 1);
    for (let cut = 1; cut < whole.length; cut += 7) {
      writeFileSync(path, whole);
      truncateSync(path, cut);
      const kept = ends.filter((end) => end > 0 && end <= cut).length;
      const { found, repairs } = await reopen();
      expect(found).toEqual(Array.from({ length: kept }, (_, n) => n));
      if (!ends.includes(cut)) expect(repairs[0]).toContain(`line ${kept + 1}: cut short`);
      else expect(repairs).toEqual([]);
    }
    const log = await RecordLog.open(path);
    await log.append([record(99)]);
    await log.close();
    const after = await reopen();
    expect(after.repairs).toEqual([]);
    expect(after.found.at(-1)).toBe(99);
  });

  test('one flipped bit anywhere in a line costs that line only and is named', async () => {
    await write(5);
    const whole = readFileSync(path);
    const start = whole.indexOf(10, whole.indexOf(10) + 1) + 1;
    const stop = whole.indexOf(10, start);
    for (let at = start; at < stop; at += 3) {
      const bytes = Buffer.from(whole);
      bytes[at] ^= 4;
      writeFileSync(path, bytes);
      const { found, repairs } = await reopen();
      expect(found).toEqual([0, 1, 3, 4]);
      expect(repairs[0]).toContain('line 3: its checksum does not hold');
      expect((await reopen()).repairs).toEqual([]);
    }
    expect(existsSync(`${path}.damaged`)).toBe(true);
  });

  test('foreign text and zeros in the middle or at the end are set aside', async () => {
    await write(2);
    appendFileSync(path, 'not a record\n\0\0\0\0\0\0\0\0\n');
    const sound = readFileSync(path);
    writeFileSync(path, Buffer.concat([Buffer.from('hello\n'), sound, Buffer.alloc(4096)]));
    const { found, repairs } = await reopen();
    expect(found).toEqual([0, 1]);
    expect(repairs).toHaveLength(5);
  });

  test('a full disk is said in words, loses nothing acknowledged, and the log goes on later', async () => {
    const log = await RecordLog.open(path);
    await log.append([record(0), record(1)]);
    const handle = await open(path);
    const prototype = Object.getPrototypeOf(handle);
    await handle.close();
    const write = prototype.write;
    vi.spyOn(prototype, 'write').mockImplementationOnce(async function (this: unknown, bytes: unknown) {
      // A full disk takes part of the batch before it refuses.
      await write.call(this, (bytes as Buffer).subarray(0, 30));
      throw Object.assign(new Error('ENOSPC'), { code: 'ENOSPC' });
    });
    const refused = log.append([record(2)]);
    await expect(refused).rejects.toThrow(/the disk is full.*same command/s);
    await expect(refused).rejects.toMatchObject({ fault: 'disk full' });
    await expect(log.append([record(3)])).rejects.toBeInstanceOf(StoreError);
    await log.close();
    expect(await reopen()).toEqual({ found: [0, 1], repairs: [] });
  });

  test('a path that cannot be written fails at opening', async () => {
    await expect(RecordLog.open(join(path, 'x', 'y'))).rejects.toMatchObject({ fault: 'cannot write' });
  });

  test('a record changed on disk while the log is open is refused, not believed', async () => {
    const log = await RecordLog.open(path);
    await log.append([record(0)]);
    const bytes = readFileSync(path);
    bytes[bytes.length - 4] ^= 1;
    writeFileSync(path, bytes);
    expect(() => log.get(record(0).key)).toThrow(/no longer checks/);
    await log.close();
  });
});
