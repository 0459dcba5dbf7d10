import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { LOCK_NAME, lockFolder } from '../../src/store/folder-lock.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lock-'));
});
const leave = (owner: object | string) =>
  writeFileSync(join(folder, LOCK_NAME), typeof owner === 'string' ? owner : JSON.stringify(owner));

describe('the folder lock', () => {
  test('refuses a second run and frees the folder afterwards', async () => {
    const lock = await lockFolder(folder);
    await expect(lockFolder(folder)).rejects.toMatchObject({
      fault: 'locked',
      message: expect.stringContaining(String(process.pid)),
    });
    lock.release();
    expect(readdirSync(folder)).toEqual([]);
    (await lockFolder(folder)).release();
  });

  test('takes over the lock of a dead process', async () => {
    const { pid } = spawnSync(process.execPath, ['-e', '']);
    leave({ pid, host: hostname(), started: '1', token: 'x' });
    const lock = await lockFolder(folder);
    expect(lock.takenOver).toBe(true);
    lock.release();
  });

  test('tells a living process from one that only inherited the number', async () => {
    const child = spawn(process.execPath, ['-e', 'setTimeout(() => {}, 60000)']);
    try {
      leave({ pid: child.pid, host: hostname(), started: null, token: 'x' });
      await expect(lockFolder(folder)).rejects.toMatchObject({ fault: 'locked' });
      if (process.platform === 'linux') {
        leave({ pid: child.pid, host: hostname(), started: '1', token: 'x' });
        (await lockFolder(folder)).release();
      }
    } finally {
      child.kill();
    }
  });

  test('leaves the lock of another machine and foreign files alone', async () => {
    leave({ pid: 1, host: 'another-machine', started: null, token: 'x' });
    await expect(lockFolder(folder)).rejects.toThrow(/another-machine/);
    leave('something else');
    await expect(lockFolder(folder)).rejects.toThrow(/not a lock that this tool wrote/);
    expect(existsSync(join(folder, LOCK_NAME))).toBe(true);
  });

  test('of many starts at once on a stale lock, one wins', async () => {
    for (let round = 0; round < 30; round++) {
      leave({ pid: 2 ** 22 + 1, host: hostname(), started: '1', token: 'x' });
      const outcomes = await Promise.allSettled(Array.from({ length: 8 }, () => lockFolder(folder)));
      const won = outcomes.flatMap((outcome) => (outcome.status === 'fulfilled' ? [outcome.value] : []));
      expect(won).toHaveLength(1);
      won[0].release();
      expect(readdirSync(folder)).toEqual([]);
    }
  });

  test('a folder that cannot be written is said', async () => {
    await expect(lockFolder(join(folder, 'missing'))).rejects.toMatchObject({ fault: 'cannot write' });
  });
});
