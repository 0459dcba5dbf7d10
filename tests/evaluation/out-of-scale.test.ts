import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Engine } from '../../shared/engine/engine.ts';
import { readEngineFile } from '../../src/config/read-engine.ts';
import { evaluateRequest } from '../../src/evaluation/evaluate-request.ts';
import { outOfScale } from '../../src/evaluation/out-of-scale.ts';

function read(name: string) {
  const reading = readEngineFile(readFileSync(`configs/engines/${name}.yaml`, 'utf8'), name);
  if (!reading.ok) throw new Error(`${name} does not read`);
  return reading;
}
const reed = read('class-50-cm');
const poppet = read('twelve-small-poppets');
const withIntake = (engine: Engine, change: object) =>
  ({ ...engine, intake: { ...engine.intake, ...change } }) as Engine;

test.each(['class-22-inch', 'class-50-cm', 'class-drone-6p5-inch', 'twelve-small-poppets', 'valveless-u'])(
  '%s is in scale',
  (name) => expect(outOfScale(read(name).engine)).toBeNull(),
);

// Each of these once kept a thread busy until its time limit, or took the memory of the whole process.
test.each<[string, Engine]>([
  ['sections[0].length', { ...reed.engine, sections: [{ ...reed.engine.sections[0], length: 1e300 }] }],
  ['intake.petals', withIntake(reed.engine, { petals: 1e9 })],
  ['intake.length', withIntake(reed.engine, { length: 0 })],
  ['intake.thickness', withIntake(reed.engine, { thickness: 1e9 })],
  ['intake.springRate', withIntake(poppet.engine, { springRate: 1e300 })],
  ['intake.springRate', withIntake(poppet.engine, { springRate: 1e8, mass: 1e-9, springMass: 0 })],
])('%s out of scale is a model failure that names it', (path, engine) => {
  const { verdict } = evaluateRequest({
    engine,
    brief: reed.brief,
    fidelity: 'screen',
    constantsDraw: null,
  }).performance;
  expect(verdict.kind).toBe('model failure');
  expect(verdict.message).toContain(`${path} of the engine is`);
});
