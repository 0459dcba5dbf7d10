import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { EXIT, EXIT_MEANINGS, gravest } from '../../src/cli/exit-codes.ts';
import { evaluationSchema } from '../../src/cli/schemas/json-schemas.ts';
import { ENGINE, run, TINY, temporaryFolder } from './support.ts';

describe('the command line', () => {
  test.each([
    [['rum'], 'Did you mean run?'],
    [['run', TINY, '--worker', '2'], 'Did you mean --workers?'],
    [['run', TINY, '--workers', '0'], 'whole number from 1'],
    [['run', TINY, '--workers', '1.5'], 'whole number from 1'],
    [['run', TINY, '--seed', '\u001b[2J'], 'letters, digits'],
    [['run', 'no-such-*.yaml'], '"no-such-*.yaml" finds no file'],
    [['run', TINY, TINY.replace('tiny-', './tiny-'), '--evaluations', '1'], 'too small'],
    [['evaluate'], "missing required argument 'file'"],
    [['evaluate', 'missing.yaml'], 'no such file'],
    [['schema', '--engine', '--results'], 'cannot be used with'],
    [['compare', '.'], 'two or more studies'],
    [[], 'Usage: pulsejet-study'],
  ])('%j is refused in words', async (args, words) => {
    const folder = temporaryFolder();
    const { code, stdout, stderr } = await run(args[0] === 'run' ? [...args, '--out', folder, '--no-pdf'] : args);
    expect(stderr).toContain(words);
    expect(stderr).not.toMatch(/\n\s+at /);
    expect(stdout).toBe('');
    expect(code).toBe(EXIT.badConfiguration);
  });

  test('every command has help, and the program lists every exit code', async () => {
    for (const command of ['run', 'worker', 'evaluate', 'report', 'compare', 'send', 'schema']) {
      const { code, stdout } = await run([command, '--help']);
      expect(stdout).toContain(`Usage: pulsejet-study ${command}`);
      expect(code).toBe(0);
    }
    const { stdout } = await run(['--help']);
    for (const [code, meaning] of EXIT_MEANINGS) expect(stdout).toContain(`${code}  ${meaning}`);
  });

  test('of several codes the gravest counts', () => {
    expect(gravest([EXIT.done, EXIT.noBrowser, EXIT.noFeasibleCandidate])).toBe(EXIT.noFeasibleCandidate);
    expect(gravest([EXIT.done, EXIT.done])).toBe(EXIT.done);
    expect(gravest([EXIT.interrupted, EXIT.fault])).toBe(EXIT.interrupted);
  });

  test('every mistake in every file is told at once with its place, and nothing starts', async () => {
    const folder = temporaryFolder();
    const bad = join(folder, 'bad.yaml');
    writeFileSync(bad, readFileSync(TINY, 'utf8').replace('5 lbf', '5 litres').replace('petals: 12', 'petals: many'));
    const out = join(folder, 'out');
    const { code, stderr } = await run(['run', bad, TINY, '--out', out]);
    expect(stderr).toMatch(/bad\.yaml:\d+:\d+ wanted\.thrust: expected .*, found/);
    expect(stderr).toMatch(/bad\.yaml:\d+:\d+ explore\.reed\.petals: expected/);
    expect(stderr).toContain('nothing was started');
    expect(code).toBe(EXIT.badConfiguration);
    expect(() => readFileSync(join(out, 'tiny', 'study.json'))).toThrow();
  });

  test('a budget that is too small leaves nothing behind', async () => {
    const out = join(temporaryFolder(), 'out');
    const { code, stderr } = await run(['run', TINY, '--out', out, '--evaluations', '1']);
    expect(stderr).toContain('which takes 2 at the least');
    expect(code).toBe(EXIT.badConfiguration);
    expect(existsSync(out)).toBe(false);
  });

  test('an engine file given for a study, and the other way round, is told apart', async () => {
    const [engine, study] = await Promise.all([run(['run', ENGINE]), run(['evaluate', TINY])]);
    expect(engine.stderr).toContain('looks like an engine file: "pulsejet-study evaluate" takes it');
    expect(study.stderr).toContain('looks like a study file: "pulsejet-study run" takes it');
    expect([engine.code, study.code]).toEqual([EXIT.badConfiguration, EXIT.badConfiguration]);
  });

  test.each([['schema'], ['schema --engine'], ['schema --results'], ['schema --evaluation']])(
    '%s prints JSON Schema',
    async (line) => {
      const { code, stdout } = await run(line.split(' '));
      expect(JSON.parse(stdout)).toMatchObject({
        $schema: 'https://json-schema.org/draft/2020-12/schema',
        type: 'object',
      });
      expect(code).toBe(0);
    },
  );

  test('an output path that cannot be written fails before anything is evaluated', async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'file'), '');
    const { code, stderr } = await run(['run', TINY, '--out', join(folder, 'file'), '--no-pdf']);
    expect(stderr).toMatch(/cannot write .*a file stands where a folder is needed/s);
    expect(stderr).not.toContain('Searching');
    expect(code).toBe(EXIT.cannotWrite);

    mkdirSync(join(folder, 'out', 'tiny', 'report.pdf'), { recursive: true });
    const obstructed = await run(['run', TINY, '--out', join(folder, 'out'), '--no-pdf']);
    expect(obstructed.stderr).toContain('report.pdf');
    expect(obstructed.stderr).not.toContain('Searching');
    expect(obstructed.code).toBe(EXIT.cannotWrite);
  });
});

describe('evaluate', () => {
  test('says verdict, both units, audits, life and every check', async () => {
    const { code, stdout, stderr } = await run(['evaluate', ENGINE]);
    expect(stderr).toBe('');
    expect(code).toBe(0);
    for (const words of [
      'Verdict: self-sustaining',
      'kg/(N·h)',
      'lb/(lbf·h)',
      'Frequency',
      'Audit',
      'Life, 5–50–95 %',
      'limit',
    ]) {
      expect(stdout).toContain(words);
    }
  });

  test('prints JSON that keeps its schema, and one cycle as CSV whose mean thrust is the thrust', async () => {
    const trace = join(temporaryFolder(), 'trace.csv');
    const { code, stdout } = await run(['evaluate', ENGINE, '--json', '--trace', trace]);
    expect(code).toBe(0);
    const evaluation = evaluationSchema.parse(JSON.parse(stdout));
    expect(evaluation.performance.verdict.kind).toBe('self-sustaining');
    const [header, ...rows] = readFileSync(trace, 'utf8')
      .trimEnd()
      .split('\n')
      .map((line) => line.split(','));
    expect(header).toHaveLength(8);
    const column = header.indexOf('thrust_N');
    const mean = rows.slice(0, -1).reduce((sum, row) => sum + Number(row[column]), 0) / (rows.length - 1);
    const { running } = evaluation.performance;
    expect(Math.abs(mean - (running?.bareThrust ?? 0))).toBeLessThan(0.05 * (running?.bareThrust ?? 0));
  });
});
