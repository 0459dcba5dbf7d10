import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { beforeAll, describe, expect, inject, test } from 'vitest';
import { EXIT } from '../../src/cli/exit-codes.ts';
import { run, start, startProgram, TINY, temporaryFolder } from './support.ts';

const TIMEOUT = 300_000;
const read = (...path: string[]) => readFileSync(join(...path), 'utf8');
const study = (out: string, ...more: string[]) => ['run', TINY, '--out', out, '--no-pdf', ...more];
const count = (out: string) => {
  const log = join(out, 'tiny', 'evaluations.ndjson');
  return existsSync(log) ? read(log).split('\n').length - 1 : 0;
};
/** Bash with its arguments as "$1", "$2" … */
const shell = (script: string, ...args: string[]) => startProgram(['-c', script, 'bash', ...args], {}, 'bash').ended;
const main = () => join(inject('build'), 'main.js');

let out: string;
let results: string;
let ranking: string;
beforeAll(async () => {
  out = temporaryFolder();
  await run(study(out, '--workers', '2'));
  results = read(out, 'tiny', 'results.json');
  ranking = read(out, 'tiny', 'ranking.csv');
}, TIMEOUT);

/** The same command once more ends with the bytes of a run that nothing disturbed. */
async function expectSameEnd(folder: string): Promise<string> {
  const { stderr } = await run(study(folder, '--workers', '2'));
  expect(read(folder, 'tiny', 'results.json')).toBe(results);
  expect(read(folder, 'tiny', 'ranking.csv')).toBe(ranking);
  return stderr;
}

describe('a stop', () => {
  test(
    'by Ctrl-C, SIGTERM or a closed terminal ends with code 130, says how to go on, and loses nothing',
    async () => {
      const other = temporaryFolder();
      let kept = 0;
      for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
        const { child, ended } = start(study(other, '--workers', '1'));
        while (count(other) < kept + 2 && child.exitCode === null) await sleep(10);
        child.kill(signal);
        const { code, stderr } = await ended;
        expect(stderr).toContain('the same command (without --fresh) goes on from there');
        expect(code).toBe(EXIT.interrupted);
        expect(existsSync(join(other, 'tiny', 'lock'))).toBe(false);
        if (kept > 0) expect(stderr).toContain(`${kept} stored evaluations are used again`);
        kept = count(other);
        expect(kept).toBeLessThan(count(out));
      }
      await expectSameEnd(other);
      expect(count(other)).toBe(count(out));
    },
    TIMEOUT,
  );
});

test(
  'a terminal that is gone, and with it every place to write to, stops a run as cleanly',
  async () => {
    const other = temporaryFolder();
    const { child, ended } = start(study(other, '--workers', '1'));
    while (count(other) < 2 && child.exitCode === null) await sleep(10);
    child.stdout?.destroy();
    child.stderr?.destroy();
    child.kill('SIGHUP');
    expect((await ended).code).toBe(EXIT.interrupted);
    expect(existsSync(join(other, 'tiny', 'lock'))).toBe(false);
    expect(await expectSameEnd(other)).toContain('stored evaluations are used again');
  },
  TIMEOUT,
);

describe('a disk that refuses', () => {
  test(
    'a file that may not grow stops the run in words; the same command goes on later',
    async () => {
      const other = temporaryFolder();
      // 1024-byte blocks in bash: enough for study.json, not for all evaluations.
      const { code, stderr } = await shell(
        'ulimit -f 8; exec "$@"',
        process.execPath,
        main(),
        ...study(other, '--workers', '2'),
      );
      expect(stderr).toMatch(/cannot write .*evaluations\.ndjson: .*greatest size.*give the same command again/s);
      expect(stderr).not.toMatch(/\n\s+at /);
      expect(code).toBe(EXIT.cannotWrite);
      const kept = count(other);
      expect(kept).toBeGreaterThan(0);
      expect(await expectSameEnd(other)).toContain(`${kept} stored evaluations are used again`);
    },
    TIMEOUT,
  );

  test(
    'a full disk stops the run in words, and once there is room the same command goes on; a read-only one refuses at once',
    async ({ skip }) => {
      if (spawnSync('unshare', ['-rm', 'mount', '-t', 'tmpfs', 'none', '/mnt']).status !== 0)
        skip('this system lets nobody mount a small disk');
      const disk = temporaryFolder();
      const saved = temporaryFolder();
      const script = `
        mount -t tmpfs -o size=24k none "$1" || exit 90
        disk="$1"; saved="$2"; shift 2
        "$@"; echo "full: $?"
        mount -o remount,ro "$disk"; "$@"; echo "read-only: $?"
        mount -o remount,rw,size=16m "$disk"; "$@"; echo "room: $?"
        cp "$disk/tiny/results.json" "$saved"`;
      const { stdout, stderr } = await shell(
        'exec unshare -rm bash -c "$@"',
        script,
        'bash',
        disk,
        saved,
        process.execPath,
        main(),
        ...study(disk, '--workers', '2'),
      );
      expect(stdout).toContain(`full: ${EXIT.cannotWrite}\n`);
      expect(stderr).toContain('the disk is full. Free some space');
      expect(stdout).toContain(`read-only: ${EXIT.cannotWrite}\n`);
      expect(stderr).toContain('the disk is read-only');
      expect(stdout).toMatch(new RegExp(`room: (${EXIT.done}|${EXIT.noFeasibleCandidate})\n`));
      expect(stderr).not.toMatch(/\n\s+at /);
      expect(read(saved, 'results.json')).toBe(results);
    },
    TIMEOUT,
  );
});

describe('a log that was damaged', () => {
  test(
    'a flipped bit and a lost end are named, and only those evaluations are computed again',
    async () => {
      const other = temporaryFolder();
      await run(study(other, '--workers', '2'));
      const log = join(other, 'tiny', 'evaluations.ndjson');
      const bytes = readFileSync(log);
      bytes[bytes.indexOf(10) + 100] ^= 1;
      writeFileSync(log, bytes.subarray(0, bytes.length - 40));
      const stderr = await expectSameEnd(other);
      expect(stderr).toContain('evaluations.ndjson, line 2: its checksum does not hold');
      expect(stderr).toContain(`evaluations.ndjson, line ${count(out)}: cut short`);
      expect(stderr).toContain(`${count(out) - 2} stored evaluations are used again`);
      expect(count(other)).toBe(count(out));
    },
    TIMEOUT,
  );
});

describe('compare', () => {
  test(
    'puts finished studies side by side, as HTML and PDF, the same bytes each time',
    async () => {
      const other = temporaryFolder();
      for (const name of ['results.json', 'run.json']) {
        writeFileSync(join(other, name), read(out, 'tiny', name).replaceAll('Tiny <b>study</b>', 'Second study'));
      }
      const target = temporaryFolder();
      const { code, stdout } = await run(['compare', join(out, 'tiny'), other, '--out', target]);
      expect(stdout).toContain(join(target, 'comparison.html'));
      expect([EXIT.done, EXIT.noBrowser]).toContain(code);
      if (code === EXIT.done) expect(read(target, 'comparison.pdf').slice(0, 5)).toBe('%PDF-');
      const html = read(target, 'comparison.html');
      expect(html).toContain('Tiny &lt;b&gt;study&lt;/b&gt;');
      expect(html).toContain('Second study');
      await run(['compare', join(out, 'tiny'), other, '--out', target, '--no-pdf']);
      expect(read(target, 'comparison.html')).toBe(html);
    },
    TIMEOUT,
  );

  test('refuses a folder without a finished study', async () => {
    const { code, stderr } = await run(['compare', join(out, 'tiny'), temporaryFolder(), '--no-pdf']);
    expect(stderr).toMatch(/results\.json cannot be read: there is no such file/);
    expect(code).toBe(EXIT.cannotWrite);
  });
});
