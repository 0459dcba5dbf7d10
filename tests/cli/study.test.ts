import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, test } from 'vitest';
import { EXIT } from '../../src/cli/exit-codes.ts';
import { resultsSchema } from '../../src/cli/schemas/results.ts';
import { run, start, TINY, temporaryFolder } from './support.ts';

const TIMEOUT = 300_000;
const read = (...path: string[]) => readFileSync(join(...path), 'utf8');
const lines = (out: string) => read(out, 'tiny', 'evaluations.ndjson').trimEnd().split('\n');
const study = (out: string, ...more: string[]) => ['run', TINY, '--out', out, ...more];

async function until(condition: () => boolean): Promise<void> {
  for (let tries = 0; !condition(); tries++) {
    if (tries > 3000) throw new Error('it never came to that');
    await sleep(20);
  }
}

let out: string;
let results: string;
beforeAll(async () => {
  out = temporaryFolder();
  const ended = await run(study(out, '--workers', '2'));
  expect(ended.stderr).not.toContain('fault');
  expect([EXIT.done, EXIT.noFeasibleCandidate, EXIT.noBrowser]).toContain(ended.code);
  expect(ended.stdout).toContain(join(out, 'tiny', 'report.html'));
  expect(ended.stdout).toMatch(/^C1 {2}reed valves/m);
  results = read(out, 'tiny', 'results.json');
}, TIMEOUT);

describe('a small study on the real model', () => {
  test('writes results that keep their schema, the ranking, and patterns', () => {
    const { candidates, evaluations, study } = resultsSchema.parse(JSON.parse(results));
    expect(study.slug).toBe('tiny');
    expect(candidates.length).toBeGreaterThan(0);
    expect(evaluations.screen).toBeGreaterThan(0);
    expect(read(out, 'tiny', 'ranking.csv').trimEnd().split('\r\n')).toHaveLength(candidates.length + 1);
    const patterns = readdirSync(join(out, 'tiny', 'patterns'));
    expect(patterns.filter((name) => name.endsWith('.dxf')).length).toBeGreaterThan(3);
    expect(readdirSync(join(out, 'tiny')).filter((name) => /lock|\.part$/.test(name))).toEqual([]);
  });

  test('every stored line is JSON of its own, with checksum, key, design and answer', () => {
    const stored = lines(out).map((line) => JSON.parse(line));
    expect(new Set(stored.map(({ key }) => key)).size).toBe(stored.length);
    for (const row of stored)
      expect(row).toMatchObject({
        check: expect.stringMatching(/^[0-9a-f]{8}$/),
        architecture: expect.any(String),
        status: expect.any(String),
      });
  });

  test('keeps the configuration’s text as text in the HTML', () => {
    const html = read(out, 'tiny', 'report.html');
    expect(html).toContain('Tiny &lt;b&gt;study&lt;/b&gt; &amp;');
    expect(html).not.toContain('<b>study</b>');
  });

  test('prints a PDF with its text, pages and outline', async ({ skip }) => {
    const file = join(out, 'tiny', 'report.pdf');
    if (!existsSync(file)) skip('no browser on this machine');
    const pdf = await getDocument({ data: new Uint8Array(readFileSync(file)), useSystemFonts: true }).promise;
    expect(pdf.numPages).toBeGreaterThan(5);
    const outline = await pdf.getOutline();
    expect(outline[0].title).toContain('Tiny');
    expect(outline[0].items.length).toBeGreaterThan(5);
    const text = await (await pdf.getPage(1)).getTextContent();
    expect(text.items.map((item) => ('str' in item ? item.str : '')).join('')).toContain('Tiny <b>study</b>');
    await pdf.destroy();
  });

  test(
    'one worker gives the same bytes as two',
    async () => {
      const other = temporaryFolder();
      await run(study(other, '--workers', '1', '--no-pdf'));
      expect(read(other, 'tiny', 'results.json')).toBe(results);
      expect(read(other, 'tiny', 'ranking.csv')).toBe(read(out, 'tiny', 'ranking.csv'));
    },
    TIMEOUT,
  );

  test(
    'the same command again evaluates nothing and gives the same bytes; "report" too',
    async () => {
      const before = lines(out).length;
      const html = read(out, 'tiny', 'report.html');
      await run(study(out, '--no-pdf', '--workers', '2'));
      expect(lines(out)).toHaveLength(before);
      expect(read(out, 'tiny', 'results.json')).toBe(results);
      expect(read(out, 'tiny', 'report.html')).toBe(html);
      const again = await run(['report', join(out, 'tiny'), '--no-pdf']);
      expect(again.code).toBe(0);
      expect(read(out, 'tiny', 'report.html')).toBe(html);
    },
    TIMEOUT,
  );

  test('refuses to go on with another study in the same folder and shows the difference', async () => {
    const { code, stderr } = await run(study(out, '--seed', 'other', '--no-pdf'));
    expect(stderr).toContain('search.seed: it was "tiny", now it is "other"');
    expect(stderr).toContain('--fresh');
    expect(code).toBe(EXIT.badConfiguration);
    expect(read(out, 'tiny', 'results.json')).toBe(results);
  });

  test('refuses results that were damaged, in words', async () => {
    const other = temporaryFolder();
    writeFileSync(join(other, 'results.json'), results.slice(0, 1000));
    writeFileSync(join(other, 'run.json'), read(out, 'tiny', 'run.json'));
    const { code, stderr } = await run(['report', other]);
    expect(stderr).toContain('is damaged');
    expect(code).toBe(EXIT.cannotWrite);
  });
});

describe('a run that is disturbed', () => {
  test(
    'kill −9 at several moments, then the same command: same bytes, nothing paid twice',
    async () => {
      const other = temporaryFolder();
      const log = join(other, 'tiny', 'evaluations.ndjson');
      for (const stored of [1, 7, 16]) {
        const { child, ended } = start(study(other, '--workers', '2', '--no-pdf'));
        await until(() => existsSync(log) && read(log).split('\n').length > stored);
        child.kill('SIGKILL');
        expect((await ended).signal).toBe('SIGKILL');
      }
      // A stop in the middle of a write leaves half a line.
      writeFileSync(log, `${read(log)}{"check":"0123`);
      const last = await run(study(other, '--workers', '2', '--no-pdf'));
      expect(last.stderr).toContain('cut short by a stop in the middle of a write');
      expect(read(other, 'tiny', 'results.json')).toBe(results);
      expect(lines(other)).toHaveLength(lines(out).length);
    },
    TIMEOUT,
  );

  test(
    'a second run on the folder is refused while the first works, and Ctrl-C stops the first cleanly',
    async () => {
      const other = temporaryFolder();
      // Far more evaluations than the second run takes to be refused.
      const long = ['--no-pdf', '--evaluations', '2000'];
      const first = start(study(other, '--workers', '1', ...long));
      await until(() => existsSync(join(other, 'tiny', 'evaluations.ndjson')));
      const second = await run(study(other, ...long));
      expect(second.stderr).toContain('is already working on');
      expect(second.code).toBe(EXIT.cannotWrite);
      first.child.kill('SIGINT');
      const { code, stderr } = await first.ended;
      expect(code).toBe(EXIT.interrupted);
      expect(stderr).toContain('the same command');
      expect(existsSync(join(other, 'tiny', 'lock'))).toBe(false);
      expect(existsSync(join(other, 'tiny', 'results.json'))).toBe(false);
    },
    TIMEOUT,
  );

  test(
    'without a browser the HTML stands, and the code says so',
    async () => {
      const ended = await run(study(out, '--workers', '2'), { PUPPETEER_EXECUTABLE_PATH: '/nowhere/chrome' });
      expect(ended.stderr).toContain('PUPPETEER_EXECUTABLE_PATH');
      expect([EXIT.noBrowser, EXIT.noFeasibleCandidate]).toContain(ended.code);
      expect(existsSync(join(out, 'tiny', 'report.html'))).toBe(true);
      expect(existsSync(join(out, 'tiny', 'report.pdf'))).toBe(false);
    },
    TIMEOUT,
  );
});
