import { readFileSync } from 'node:fs';
import fastGlob from 'fast-glob';
import { describe, expect, test } from 'vitest';
import { faultOf } from '../../src/bench/soak/designs.ts';
import { soakFiles } from '../../src/bench/soak/files.ts';
import { growthOf } from '../../src/bench/soak/long-study.ts';
import { randomEngine } from '../../src/bench/soak/random-engine.ts';
import { readEngineFile } from '../../src/config/read-engine.ts';
import { evaluateRequest } from '../../src/evaluation/evaluate-request.ts';
import type { EvaluationResult } from '../../src/evaluation/evaluation.ts';
import { failedResult } from '../../src/evaluation/failed-result.ts';
import { childRandom } from '../../src/search/random.ts';
import { ENGINE } from './support.ts';

const reading = readEngineFile(readFileSync(ENGINE, 'utf8'), ENGINE);
if (!reading.ok) throw new Error('the engine file does not read');
const { engine, brief } = reading;
const sound = evaluateRequest({ engine, brief, fidelity: 'screen', constantsDraw: null });

/** The running engine with some figures replaced. */
function spoilt(change: (running: NonNullable<EvaluationResult['performance']['running']>) => void): EvaluationResult {
  const result = structuredClone(sound);
  if (!result.performance.running) throw new Error('the engine does not run');
  change(result.performance.running);
  return result;
}

describe('the soak’s judge', () => {
  test('accepts a sound result and a failure with its reason', () => {
    expect(faultOf(sound)).toBeNull();
    expect(faultOf(failedResult('the gas is lost'))).toBeNull();
  });

  test.each<[string, EvaluationResult, RegExp]>([
    [
      'a number that is none',
      spoilt(({ traces }) => void traces.thrust.splice(3, 1, Number.NaN)),
      /thrust\[3\] is not/,
    ],
    ['no frequency', spoilt((running) => void Object.assign(running, { frequency: 0 })), /frequency .* is 0/],
    [
      'books that do not balance',
      spoilt(({ audits }) => void Object.assign(audits, { massError: 0.1, closed: true })),
      /audits/,
    ],
    ['no reason', failedResult(' '), /no reason/],
  ])('finds %s', (_, result, words) => expect(faultOf(result)).toMatch(words));
});

test('random engines from ranges wider than sane: a verdict or a failure with its reason, the same twice', () => {
  const kinds = new Set<string>();
  for (let index = 0; index < 30; index++) {
    const odd = randomEngine(childRandom('test', `design ${index}`), `design ${index}`);
    expect(randomEngine(childRandom('test', `design ${index}`), `design ${index}`)).toEqual(odd);
    const result = evaluateRequest({ engine: odd, brief, fidelity: 'screen', constantsDraw: null });
    expect(faultOf(result), `design ${index}`).toBeNull();
    kinds.add(result.performance.verdict.kind);
  }
  expect(kinds.size).toBeGreaterThan(2);
}, 300_000);

test('mutated configuration files never throw, and every mistake has its line and column', () => {
  const sources = fastGlob.sync(['configs/*.yaml', 'configs/engines/*.yaml']).sort();
  const { tried, lost, wrong, faults } = soakFiles({ files: 600, seed: 'test', sources, onProgress: () => {} });
  expect(faults).toEqual([]);
  expect([tried, lost, wrong]).toEqual([600, 0, 0]);
}, 300_000);

// Found by the soak: an endless section was stepped through for ever.
test.each([Number.NaN, Number.POSITIVE_INFINITY])('a length of %s is refused with its place', (length) => {
  const [first, ...rest] = engine.sections;
  const odd = { ...engine, sections: [{ ...first, length }, ...rest] };
  const { verdict } = evaluateRequest({ engine: odd, brief, fidelity: 'screen', constantsDraw: null }).performance;
  expect(verdict).toEqual({
    kind: 'model failure',
    message: 'sections[0].length of the engine is not a finite number',
  });
});

test('memory grows when the end of a study holds more than the most of its first half', () => {
  const at = (done: number, heap: number, resident: number) => ({ done, heap, resident });
  expect(growthOf([at(1, 50, 300), at(2, 52, 310), at(3, 51, 340), at(4, 60, 305)])).toEqual({ heap: 8, resident: -5 });
  expect(growthOf([at(1, 50, 300)])).toEqual({ heap: 0, resident: 0 });
});
