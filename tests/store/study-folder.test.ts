import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { readStudy } from '../../src/config/read-study.ts';
import type { Study } from '../../src/config/study.ts';
import { differences } from '../../src/store/differences.ts';
import { StudyClock } from '../../src/store/study-clock.ts';
import { type OpenFolderOptions, openStudyFolder, studyFolderPath } from '../../src/store/study-folder.ts';

const reading = readStudy(readFileSync(new URL('../cli/tiny-study.yaml', import.meta.url), 'utf8'), 'tiny-study.yaml');
if (!reading.ok) throw new Error('the test study does not read');
const study = reading.study;
const model = (digit: string) => digit.repeat(64);

let options: OpenFolderOptions;
beforeEach(() => {
  options = { out: mkdtempSync(join(tmpdir(), 'folder-')), modelVersion: model('a'), toolVersion: '1', fresh: false };
});

async function visit(changed: Study = study, more: Partial<OpenFolderOptions> = {}): Promise<string[]> {
  const folder = await openStudyFolder(changed, { ...options, ...more });
  await folder.evaluations.append([{ key: 'k'.repeat(64), n: 1 }]);
  await folder.close();
  return folder.notes;
}

describe('a study’s folder', () => {
  test('is opened again by the same study, by other words of the report, and by a larger budget', async () => {
    await visit();
    expect(await visit()).toEqual(['1 stored evaluations are used again.']);
    await visit({ ...study, report: { ...study.report, title: 'Another title' } });
    await visit({ ...study, search: { ...study.search, evaluations: 5000 } });
  });

  test('refuses another model or brief by name, and keeps what is there', async () => {
    await visit();
    const other = { ...study, brief: { ...study.brief, wanted: { ...study.brief.wanted, thrust: 1 } } };
    await expect(visit(other, { modelVersion: model('b') })).rejects.toMatchObject({
      fault: 'different study',
      message: expect.stringMatching(
        /performance model: it was version a{12}, now it is b{12}.*brief\.wanted\.thrust: it was .*, now it is 1.*--fresh/s,
      ),
    });
    expect(await visit()).toContain('1 stored evaluations are used again.');
  });

  test('--fresh puts earlier evaluations aside, each time under another name', async () => {
    await visit();
    for (const number of [1, 2]) {
      expect(await visit(study, { fresh: true })).toEqual([`Earlier evaluations are put aside as before-${number}-*.`]);
      expect(readdirSync(join(options.out, 'tiny'))).toContain(`before-${number}-evaluations.ndjson`);
    }
  });

  test('a study.json that was edited by hand is not believed', async () => {
    await visit();
    const file = join(options.out, 'tiny', 'study.json');
    writeFileSync(file, readFileSync(file, 'utf8').replace('"seed": "tiny"', '"seed": "TINY"'));
    await expect(visit()).rejects.toMatchObject({ fault: 'damaged' });
  });

  test.each(['../up', 'a/b', '', '.', 'a\0b', '-x'])('refuses %j as a name', (slug) => {
    expect(() => studyFolderPath(options.out, slug)).toThrow(/cannot name a folder/);
  });
});

test('differences name the path and both values, whatever the order of keys', () => {
  expect(differences({ a: [{ x: 1, y: 2 }], b: { c: 1 } }, { b: { c: 2, d: null }, a: [{ y: 2, x: 1 }] })).toEqual([
    'b.c: it was 1, now it is 2',
    'b.d: it was not set, now it is null',
  ]);
});

test('the study’s clock gives a run that goes on the times of the one that was stopped', () => {
  let now = 100;
  const clock = new StudyClock(() => now);
  now = 103.5;
  expect(clock.stamp()).toBe(3.5);
  now = 104;
  expect(clock.stamp()).toBe(4);
  now = 9000;
  const again = new StudyClock(() => now);
  again.recall(4);
  again.recall(3.5);
  expect(again.latest).toBe(4);
  now = 9001;
  expect(again.stamp()).toBe(5);
  // A clock that goes back costs no time.
  now = 8000;
  expect(again.stamp()).toBe(5);
});
