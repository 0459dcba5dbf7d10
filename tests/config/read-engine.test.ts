import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../src/config/problems.ts';
import { readEngineFile } from '../../src/config/read-engine.ts';

const FOLDER = 'configs/engines';
const REED = readFileSync(`${FOLDER}/class-50-cm.yaml`, 'utf8');

function problems(text: string): string[] {
  const reading = readEngineFile(text, 'e.yaml');
  return reading.ok ? [] : reading.problems.map(formatProblem);
}

describe('engine files', () => {
  it.each(readdirSync(FOLDER))('%s is read without a mistake', (file) => {
    expect(problems(readFileSync(`${FOLDER}/${file}`, 'utf8'))).toEqual([]);
  });

  it('turns the bend into centreline length', () => {
    const reading = readEngineFile(readFileSync(`${FOLDER}/valveless-u.yaml`, 'utf8'), 'u');
    if (!reading.ok) throw new Error('not read');
    const bend = reading.engine.sections.find((section) => section.bend);
    expect(bend?.length).toBeCloseTo(Math.PI * 0.1, 9);
  });

  it('one large poppet and twelve small ones have the same port area within 1 %', () => {
    const area = ['one-large-poppet', 'twelve-small-poppets'].map((name) => {
      const reading = readEngineFile(readFileSync(`${FOLDER}/${name}.yaml`, 'utf8'), name);
      if (!reading.ok || reading.engine.intake.kind !== 'poppet') throw new Error('not read');
      return reading.engine.intake.valves * reading.engine.intake.portDiameter ** 2;
    });
    expect(Math.abs(area[0] / area[1] - 1)).toBeLessThan(0.01);
  });

  it.each([
    [
      'from: 62 mm',
      'from: 60 mm',
      'sections[1]: expected a section that begins with the diameter at which the one before ends, 0.062 m',
    ],
    ['role: chamber,', 'role: intake,', 'sections[0].role: expected sections behind the valve plate only'],
    ['kind: reed', 'kind: read', 'intake.kind: expected one of reed, poppet, valveless, found "read"'],
    ['petals: 10', 'petal: 10', 'intake.petal: expected "petals" (did you mean it?)'],
    ['length: 90 mm, ', '', 'sections[0]: expected a "length"'],
    ['fuel: petrol, mode', 'fuel: propane, mode', 'supply.fuel'],
    ['mode: premixed', 'mode: steady-injection', 'supply.kind: expected a supply that injects'],
  ])('"%s" as "%s" is refused', (good, bad, expected) => {
    const text = REED.includes('fuel: petrol, capacity')
      ? REED
      : REED.replace('kind: carburettor,', 'kind: carburettor, fuel: petrol,');
    expect(problems(text)).toEqual([]);
    expect(problems(text.replace(good, bad)).join('\n')).toContain(expected);
  });
});
