import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { digestOf } from '../../src/config/canonical.ts';
import { configurationJsonSchema } from '../../src/config/json-schema.ts';
import { formatProblem } from '../../src/config/problems.ts';
import { readStudy } from '../../src/config/read-study.ts';
import { DEPTH_LIMIT, TEXT_LIMIT } from '../../src/config/source-text.ts';
import type { Study } from '../../src/config/study.ts';

const SMALLEST = `study: smallest
explore:
  intakes: [reed]
  feeds: [{fuel: propane, mode: premixed}]
  reed: {}
`;

function study(text: string): Study {
  const reading = readStudy(text, 'study.yaml');
  if (!reading.ok) throw new Error(reading.problems.map(formatProblem).join('\n'));
  return reading.study;
}

function problems(text: string): string[] {
  const reading = readStudy(text, 'study.yaml');
  return reading.ok ? [] : reading.problems.map(formatProblem);
}

describe('reading a study', () => {
  it.each(['configs/demo-quick.yaml', 'configs/demo-night.yaml'])(
    '%s is read without a mistake and says that it is invented',
    (file) => {
      const made = study(readFileSync(file, 'utf8'));
      expect(made.report.invented).toBe(true);
      expect(`configs/${made.slug}.yaml`).toBe(file);
    },
  );

  it('fills in everything that may be left out', () => {
    const made = study(SMALLEST);
    expect(made.site).toEqual({ pressure: 101325, temperature: 288.15 });
    expect(made.brief.wanted.thrust).toBeNull();
    expect(made.brief.limits.operatorDistance).toBe(5);
    expect(made.search.draws).toBeGreaterThanOrEqual(64);
    expect(made.space.poppet).toBeNull();
    expect(made.space.reed?.thicknesses).toEqual([0.00015, 0.0002, 0.00025, 0.0003]);
  });

  it('reads JSON as well as YAML, to the same study', () => {
    const json = JSON.stringify({
      study: 'smallest',
      explore: { intakes: ['reed'], feeds: [{ fuel: 'propane', mode: 'premixed' }], reed: {} },
    });
    expect(digestOf(study(json))).toBe(digestOf(study(SMALLEST)));
  });

  it('writes one digest for one meaning, and another for another', () => {
    const inInches = study(`${SMALLEST}wanted: {thrust: 40 lbf, max-length: 100 in}`);
    const inMetres = study(`wanted: {max-length: 2.54 m, thrust: 40 lbf}\n${SMALLEST}`);
    expect(digestOf(inInches)).toBe(digestOf(inMetres));
    expect(digestOf(inInches)).not.toBe(digestOf(study(SMALLEST)));
  });

  // ISO 2533 standard atmosphere: 898.76 hPa and 8.5 degC at 1000 m (geopotential).
  it('takes pressure and temperature from the altitude', () => {
    const { site } = study(`${SMALLEST}site: {altitude: 1000 m}`);
    expect(site.pressure / 89876).toBeCloseTo(1, 4);
    expect(site.temperature).toBeCloseTo(281.65, 6);
  });

  it.each([
    ['"120 to 200 mm"', 0.12, 0.2],
    ['[120 mm, 0.2 m]', 0.12, 0.2],
    ['150 mm', 0.15, 0.15],
    ['4.5 in to 8 in', 0.1143, 0.2032],
  ])('a range can be written %s', (text, low, high) => {
    const made = study(SMALLEST.replace('  reed: {}', `  reed: {}\n  geometry: {chamber-diameter: ${text}}`));
    expect(made.space.geometry.chamberDiameter).toEqual({ low, high });
  });
});

describe('mistakes', () => {
  it('are all listed at once, in the order of the file, each with its line and column', () => {
    const listed = problems(`study: two words
site: {altitude: 300 m, pressure: 1 bar, temperature: 12 C}
wanted: {thrust: 40 lb, endurance: 45, thrust: 30 lbf}
explore:
  intakes: [poppet, reeed]
  feeds: [{fuel: propane, mode: premixed}]
  geometry:
    chamber-diameter: 0.2 m to 0.1 m
    cone-angel: 8 deg
ranking: {method: life-at-bounded-tsfc}
`);
    const starts = [
      'study.yaml:1:8 study: ',
      'study.yaml:2:7 site: expected either altitude or pressure',
      'study.yaml:2:55 site.temperature: ',
      'study.yaml:3:18 wanted.thrust: ',
      'study.yaml:3:36 wanted.endurance: ',
      'study.yaml:3:40 wanted.thrust: expected every key once',
      'study.yaml:4:1 explore.poppet: expected ranges for the intake "poppet"',
      'study.yaml:5:21 explore.intakes[1]: expected one of reed, poppet, valveless-straight, valveless-u; did you mean "reed"?, found "reeed"',
      'study.yaml:8:23 explore.geometry.chamber-diameter: expected a range whose low end comes first, found 0.2 m to 0.1 m',
      'study.yaml:9:5 explore.geometry.cone-angel: expected "cone-angle" (did you mean it?)',
      'study.yaml:10:1 ranking.tsfc-bound: ',
    ];
    expect(listed.length).toBe(starts.length);
    listed.forEach((line, index) => {
      expect(line.startsWith(starts[index]), `${line}\n${starts[index]}`).toBe(true);
    });
  });

  it('valveless intakes with premixed feeds only are a contradiction', () => {
    const text = SMALLEST.replace('[reed]', '[valveless-u]').replace('reed:', 'valveless:');
    expect(problems(text)).toEqual([
      expect.stringContaining('study.yaml:4:10 explore.feeds: expected a feed that injects fuel'),
    ]);
  });

  it.each([
    ['an alias', 'study: &a x\ntitle: *a\n', 'study.yaml:1:11 study: '],
    ['an alias bomb', 'a: &a [x,x]\nb: &b [*a,*a]\nc: &c [*b,*b]\n', 'study.yaml:1:7 a: '],
    ['a tag', 'study: !!js/function x\n', 'study.yaml:1:8'],
    ['an odd tag', 'study: !x y\n', 'study.yaml:1:8'],
    ['two documents', `${SMALLEST}---\nstudy: other\n`, 'study.yaml:6:1'],
    ['tabs', 'study: x\n\texplore: 1\n', 'study.yaml:2:1'],
    ['an unfinished list', 'study: [', 'study.yaml:1:9'],
    ['nothing', '', 'study.yaml:1:1'],
    ['a list', '- a\n- b\n', 'study.yaml:1:1'],
    ['a control character', 'study: x\nnotes: "a\u0007b"\n', 'study.yaml:2:10'],
    ['half a surrogate pair', 'study: x\nnotes: \ud800\n', 'study.yaml:2:8'],
    ['a key that would reach the prototype', 'study: x\n__proto__: {a: 1}\n', 'study.yaml:2:1'],
    ['a complex key', 'study: x\n? [a, b]\n: c\n', 'study.yaml:2:3'],
    ['deep flow nesting', `study: ${'['.repeat(50000)}`, 'study.yaml:1:'],
    ['deep block nesting', '- '.repeat(50000), 'study.yaml:1:'],
    ['a huge text', `# ${'x'.repeat(TEXT_LIMIT)}`, `study.yaml:1:${TEXT_LIMIT + 1}`],
  ])('%s is refused with its place', (_name, text, start) => {
    const listed = problems(text);
    expect(listed.length).toBeGreaterThan(0);
    expect(
      listed.some((line) => line.startsWith(start)),
      listed.join('\n'),
    ).toBe(true);
    for (const line of listed) expect(line).toMatch(/^study\.yaml:\d+:\d+( \S.*)?: expected .+, found .+$/u);
  });

  it('names the number of levels that it takes', () => {
    expect(problems(`study: ${'['.repeat(DEPTH_LIMIT + 5)}`)[0]).toContain(`at most ${DEPTH_LIMIT} levels`);
  });

  it('refuses huge numbers', () => {
    const listed = problems(
      `${SMALLEST}search: {evaluations: 1e999, population: 99999999999999999999, finalists: .nan}`,
    );
    expect(listed.length).toBe(3);
  });

  it('keeps messages on one line without control characters, whatever the text holds', () => {
    const listed = problems('"stu\\ndy": 1\n"\\u001b[31m": "\\u202e"\n');
    expect(listed.length).toBeGreaterThan(1);
    for (const line of listed) expect(line).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  });
});

describe('the JSON Schema', () => {
  it('describes the keys for editors', () => {
    const schema = configurationJsonSchema();
    expect(schema.required).toEqual(['study', 'explore']);
    expect(Object.keys(schema.properties ?? {})).toContain('starting-air');
    expect(schema.additionalProperties).toBe(false);
  });
});
