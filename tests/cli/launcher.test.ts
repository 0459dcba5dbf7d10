import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, inject, test } from 'vitest';
import { buildEntry, entryFile, modelVersion } from '../../src/cli/build.mjs';
import { LAUNCHER, startProgram } from './support.ts';

describe('the launcher', () => {
  test('runs the command from any folder, through two starts at once', async () => {
    const started = [1, 2].map(() => startProgram([LAUNCHER, '--version']).ended);
    for (const { code, stdout } of await Promise.all(started)) {
      expect(stdout).toMatch(/^pulsejet-study \d+\.\d+\.\d+, performance model [0-9a-f]{12}$/m);
      expect(code).toBe(0);
    }
  });

  test.each([['no-such-entry'], ['../main'], ['']])('refuses the entry "%s" in words', async (name) => {
    const { code, stderr } = await startProgram([LAUNCHER, '--entry', name]).ended;
    expect(stderr).toMatch(/cannot start: .*entry/);
    expect(code).toBe(70);
  });

  test('finds the commands for developers', () => {
    expect(entryFile('validate')).toMatch(/validate\.ts$/);
    expect(entryFile('bench-search')).toMatch(/search\.ts$/);
  });

  test('names a model by its code, 64 digits, the same twice', async () => {
    const version = await modelVersion();
    expect(version).toMatch(/^[0-9a-f]{64}$/);
    expect(await modelVersion()).toBe(version);
  });

  test('uses a build again, and writes the model’s version beside it', async () => {
    const build = await buildEntry('main');
    expect(await buildEntry('main')).toBe(build);
    expect(readFileSync(join(inject('build'), 'model-version'), 'utf8')).toMatch(/^[0-9a-f]{64}$/);
  });
});
