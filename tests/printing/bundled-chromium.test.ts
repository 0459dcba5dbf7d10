import { execFileSync } from 'node:child_process';
import { chmod, mkdir, readdir, readFile, rm, stat, symlink, utimes, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { brotliCompressSync } from 'node:zlib';
import { beforeEach, describe, expect, it } from 'vitest';
import { bundledPackageFolder, prepareBundledChromium } from '../../src/report/printing/bundled-chromium.ts';
import { userCacheFolder, whyNotTrusted } from '../../src/report/printing/user-cache.ts';
import { scratchFolder } from './fixture.ts';

/** A package of the same layout with a small script in place of the browser, so that faults are quick to try. */
async function smallPackage(folder: string): Promise<string> {
  const root = path.join(folder, 'package');
  await mkdir(path.join(root, 'bin'), { recursive: true });
  await mkdir(path.join(folder, 'lib'), { recursive: true });
  await mkdir(path.join(folder, 'fonts', 'F'), { recursive: true });
  await writeFile(path.join(root, 'package.json'), '{"version":"1.2.3"}');
  await writeFile(path.join(folder, 'lib', 'liba.so'), 'library');
  await writeFile(path.join(folder, 'fonts', 'F', 'f.ttf'), 'font');
  await writeFile(path.join(folder, 'fonts.conf'), 'foreign');
  for (const [archive, parts] of [
    ['al2023', ['lib']],
    ['fonts', ['fonts.conf', 'fonts']],
  ] as const) {
    const tar = execFileSync('tar', ['--format=ustar', '-cf', '-', ...parts], { cwd: folder });
    await writeFile(path.join(root, 'bin', `${archive}.tar.br`), brotliCompressSync(tar));
  }
  await writeFile(path.join(root, 'bin', 'chromium.br'), brotliCompressSync(Buffer.from('#!/bin/sh\necho hello\n')));
  return root;
}

let folder: string;
let root: string;
let cache: string;
let env: NodeJS.ProcessEnv;

beforeEach(async () => {
  folder = await scratchFolder();
  root = await smallPackage(folder);
  cache = path.join(folder, 'cache');
  env = { PULSEJET_CACHE_DIR: cache };
});

describe('the bundled browser', () => {
  it('is unpacked once, whole, for this user only', async () => {
    const first = await prepareBundledChromium(env, root);
    expect(execFileSync(first.executablePath).toString()).toBe('hello\n');
    expect(await readFile(path.join(first.env.LD_LIBRARY_PATH, 'liba.so'), 'utf8')).toBe('library');
    const conf = await readFile(first.env.FONTCONFIG_FILE, 'utf8');
    expect(conf).toContain(`<dir>${path.join(path.dirname(first.executablePath), 'fonts')}</dir>`);
    expect((await stat(cache)).mode & 0o077).toBe(0);
    expect(first.temporaryFolder).toBeNull();
    const before = await stat(first.executablePath);
    const again = await prepareBundledChromium(env, root);
    expect(again).toEqual(first);
    expect((await stat(again.executablePath)).ino).toBe(before.ino);
    expect((await readdir(cache)).length).toBe(1);
  });

  it('is unpacked anew when a file of it was cut short', async () => {
    const first = await prepareBundledChromium(env, root);
    await writeFile(first.executablePath, '#!/bin/sh');
    const again = await prepareBundledChromium(env, root);
    expect(again.executablePath).toBe(first.executablePath);
    expect(execFileSync(again.executablePath).toString()).toBe('hello\n');
  });

  it('comes out whole when several processes start at once', async () => {
    const all = await Promise.all(Array.from({ length: 6 }, () => prepareBundledChromium(env, root)));
    expect(new Set(all.map((one) => one.executablePath)).size).toBe(1);
    expect(execFileSync(all[0].executablePath).toString()).toBe('hello\n');
    expect((await readdir(cache)).filter((name) => name.startsWith('.unpack-'))).toEqual([]);
  });

  it('clears what a killed process left, but not what another one is writing', async () => {
    await mkdir(path.join(cache, '.unpack-old'), { recursive: true });
    await mkdir(path.join(cache, '.unpack-new'));
    await chmod(cache, 0o700);
    await utimes(path.join(cache, '.unpack-old'), 1e9, 1e9);
    await prepareBundledChromium(env, root);
    const left = await readdir(cache);
    expect(left).not.toContain('.unpack-old');
    expect(left).toContain('.unpack-new');
  });

  it('goes to a private temporary folder, with a note, when others may write to the cache', async () => {
    await mkdir(cache);
    await chmod(cache, 0o777);
    expect(await whyNotTrusted(cache)).toContain('other users may write');
    const found = await prepareBundledChromium(env, root);
    expect(found.temporaryFolder).not.toBeNull();
    expect(found.executablePath.startsWith(found.temporaryFolder!)).toBe(true);
    expect(found.notes.join()).toContain('other users may write');
    expect(execFileSync(found.executablePath).toString()).toBe('hello\n');
    await rm(found.temporaryFolder!, { recursive: true });
  });

  it('goes to a private temporary folder when the cache cannot be made', async () => {
    await writeFile(path.join(folder, 'file'), '');
    const found = await prepareBundledChromium({ PULSEJET_CACHE_DIR: path.join(folder, 'file', 'cache') }, root);
    expect(found.notes.join()).toMatch(/ENOTDIR/);
    await rm(found.temporaryFolder!, { recursive: true });
  });

  it('says why a damaged package cannot be used and leaves nothing behind', async () => {
    await writeFile(path.join(root, 'bin', 'chromium.br'), 'no brotli');
    await expect(prepareBundledChromium(env, root)).rejects.toThrow();
    expect(await readdir(cache)).toEqual([]);
  });

  it('is offered only where it runs', () => {
    expect(() => bundledPackageFolder('darwin', 'arm64')).toThrow(/darwin on arm64/);
    expect(() => bundledPackageFolder('linux', 'arm64')).toThrow(/Linux on x64/);
  });
});

describe('the cache folder', () => {
  it('is not trusted behind a link into a folder that others may write to', async () => {
    const open = path.join(folder, 'open');
    await mkdir(path.join(open, 'inner'), { recursive: true, mode: 0o700 });
    await chmod(open, 0o777);
    await symlink(path.join(open, 'inner'), path.join(folder, 'link'));
    expect(await whyNotTrusted(path.join(folder, 'link'))).toContain(open);
  });

  it('lies where each system keeps such things', () => {
    expect(userCacheFolder({ HOME: '/h' }, 'linux')).toBe('/h/.cache/pulsejet-study');
    expect(userCacheFolder({ HOME: '/h', XDG_CACHE_HOME: '/x' }, 'linux')).toBe('/x/pulsejet-study');
    expect(userCacheFolder({ HOME: '/h', XDG_CACHE_HOME: 'relative' }, 'linux')).toBe('/h/.cache/pulsejet-study');
    expect(userCacheFolder({ HOME: '/h' }, 'darwin')).toBe('/h/Library/Caches/pulsejet-study');
  });
});
