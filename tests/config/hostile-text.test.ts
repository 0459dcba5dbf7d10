import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeText, loadStudy } from '../../src/config/files.ts';
import { formatProblem } from '../../src/config/problems.ts';
import { readEngineFile } from '../../src/config/read-engine.ts';
import { readStudy } from '../../src/config/read-study.ts';

const STUDY = readFileSync('configs/demo-quick.yaml', 'utf8');
const PLACE = /^f\.yaml:\d+:\d+( [^\n]+)?: expected [^\n]+, found [^\n]+$/;

function expectPlaces(reading: ReturnType<typeof readStudy> | ReturnType<typeof readEngineFile>): void {
  if (reading.ok) return;
  expect(reading.problems.length).toBeGreaterThan(0);
  for (const problem of reading.problems) expect(formatProblem(problem)).toMatch(PLACE);
}

describe('hostile text never throws and always has a place', () => {
  it('any text', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'binary', maxLength: 200 }), fc.string({ unit: 'grapheme-ascii', maxLength: 200 })),
        (text) => {
          expectPlaces(readStudy(text, 'f.yaml'));
          expectPlaces(readEngineFile(text, 'f.yaml'));
        },
      ),
      { numRuns: 1500, seed: 7 },
    );
  });

  it('any JSON value', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => expectPlaces(readStudy(JSON.stringify(value), 'f.yaml'))),
      { numRuns: 800, seed: 8 },
    );
  });

  it('a good study with a stretch replaced', () => {
    const splice = fc.record({
      at: fc.nat(STUDY.length),
      drop: fc.nat(20),
      put: fc.oneof(
        fc.string({ maxLength: 12 }),
        fc.constantFrom(
          '{',
          '[',
          ': ',
          '\n',
          '"',
          '&a ',
          '*a',
          '!!x ',
          '1e999',
          '-',
          'null',
          '40 lb',
          '\t',
          '? ',
          '| ',
          '%',
          '18 gauge',
        ),
      ),
    });
    fc.assert(
      fc.property(fc.array(splice, { minLength: 1, maxLength: 4 }), (splices) => {
        let text = STUDY;
        for (const { at, drop, put } of splices) text = text.slice(0, at) + put + text.slice(at + drop);
        expectPlaces(readStudy(text, 'f.yaml'));
      }),
      { numRuns: 400, seed: 9 },
    );
  });
});

describe('bytes', () => {
  it('UTF-16 is refused', () => {
    expect(decodeText(new Uint8Array([0xff, 0xfe, 0x73, 0]), 'f.yaml')).toMatchObject({
      ok: false,
      problems: [{ line: 1, column: 1, found: 'UTF-16' }],
    });
  });

  it('a byte of Latin-1 is refused at its place', () => {
    const bytes = new Uint8Array([...new TextEncoder().encode('study: x\ntitle: '), 0xe9, 0x0a]);
    expect(decodeText(bytes, 'f.yaml')).toMatchObject({ ok: false, problems: [{ line: 2, column: 8 }] });
  });

  it('a byte-order mark is allowed', () => {
    const bytes = new Uint8Array([0xef, 0xbb, 0xbf, ...new TextEncoder().encode('study: x')]);
    expect(decodeText(bytes, 'f.yaml')).toEqual({ ok: true, text: 'study: x' });
  });

  it('missing files, folders and devices are problems, not exceptions', async () => {
    for (const path of ['configs/none.yaml', 'configs', '/dev/zero', 'a\u0000b']) {
      const reading = await loadStudy(path);
      expect(reading.ok).toBe(false);
      if (!reading.ok)
        expect(formatProblem(reading.problems[0])).toMatch(/:1:1: expected a file that can be read, found .+/);
    }
  });
});
