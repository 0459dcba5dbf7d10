import { execFileSync } from 'node:child_process';
import { mkdir, readFile, symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readTar } from '../../src/report/printing/tar.ts';
import { scratchFolder } from './fixture.ts';

let folder: string;
beforeAll(async () => {
  folder = await scratchFolder();
  await mkdir(path.join(folder, 'lib'));
  await writeFile(path.join(folder, 'lib', 'run.so'), 'x'.repeat(1300), { mode: 0o755 });
  await writeFile(path.join(folder, 'lib', 'empty'), '', { mode: 0o644 });
});

/** Archives written by the system's tar, an independent implementation. */
async function archive(name: string, ...args: string[]): Promise<Buffer> {
  execFileSync('tar', ['--format=ustar', '-cf', `${name}.tar`, ...args], { cwd: folder });
  return readFile(path.join(folder, `${name}.tar`));
}

describe('readTar', () => {
  it('reads files, sizes and the executable mark', async () => {
    const files = readTar(await archive('good', 'lib'));
    const run = files.find((file) => file.name === 'lib/run.so');
    expect(run?.data.toString()).toBe('x'.repeat(1300));
    expect(run?.executable).toBe(true);
    expect(files.find((file) => file.name === 'lib/empty')).toMatchObject({ executable: false });
  });

  it('refuses names that leave the folder', async () => {
    expect(() => readTar(Buffer.from([]))).toThrow(/end mark/);
    const up = await archive('up', '--transform=s,^lib,../out,', 'lib/run.so', '-P');
    expect(() => readTar(up)).toThrow(/leave its folder/);
    const absolute = await archive('absolute', '-P', path.join(folder, 'lib', 'run.so'));
    expect(() => readTar(absolute)).toThrow(/leave its folder/);
  });

  it('refuses links', async () => {
    await symlink('/etc/passwd', path.join(folder, 'lib', 'link'));
    const link = await archive('link', 'lib/link');
    expect(() => readTar(link)).toThrow(/only files and folders/);
  });

  it('notices damage and a cut', async () => {
    const good = await archive('damaged', 'lib/run.so');
    const damaged = Buffer.from(good);
    damaged[2] ^= 1;
    expect(() => readTar(damaged)).toThrow(/checksum/);
    expect(() => readTar(good.subarray(0, 1024))).toThrow(/cut short/);
  });
});
