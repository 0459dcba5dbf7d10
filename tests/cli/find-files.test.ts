import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { findFiles } from '../../src/cli/find-files.ts';
import { UsageError } from '../../src/cli/output.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'find-'));
  mkdirSync(join(folder, 'inner'));
  for (const name of ['a.yaml', 'b.yaml', '[c].yaml', '$(touch d).yaml', 'inner/e.yaml'])
    writeFileSync(join(folder, name), '');
  symlinkSync('..', join(folder, 'inner', 'loop'));
});
const find = async (...patterns: string[]) =>
  (await findFiles(patterns.map((pattern) => (pattern === '' ? '' : join(folder, pattern))))).map((path) =>
    path.slice(folder.length + 1),
  );

describe('names and patterns', () => {
  test('each file once, sorted, however often it is named', async () => {
    expect(await find('b.yaml', '?.yaml', 'inner/../a.yaml')).toEqual(['b.yaml', 'a.yaml']);
  });

  test('a name that exists is that file, whatever its characters mean elsewhere', async () => {
    expect(await find('[c].yaml', '$(touch d).yaml')).toEqual(['[c].yaml', '$(touch d).yaml']);
  });

  test('links are not followed, so that a loop of them ends', async () => {
    expect(await find('**/e.yaml')).toEqual(['inner/e.yaml']);
  });

  test.each([
    ['nothing', ''],
    ['a zero byte', 'a\0.yaml'],
    ['twenty-four pairs of braces', '{a,b}'.repeat(24)],
    ['a range of braces', 'x{1..99999999}.yaml'],
    ['a very long pattern', 'a*'.repeat(40_000)],
    ['nested alternatives', `${'+(a|aa)'.repeat(12)}*b`],
    ['an open bracket', '['],
  ])('%s finds no file, and that is said at once', async (_, pattern) => {
    await expect(find(pattern)).rejects.toThrow(UsageError);
    await expect(find(pattern)).rejects.toThrow(/^"[^\n]{0,400}" finds no file\.$/);
  });
});
