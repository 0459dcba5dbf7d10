import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { VALVE_MATERIALS } from '../../shared/durability/valve-materials.ts';
import type { Engine } from '../../shared/engine/engine.ts';
import { poppetLengths } from '../../shared/fabrication/poppet-layout.ts';
import { readStudy } from '../../src/config/read-study.ts';
import type { Study } from '../../src/config/study.ts';
import { architecturesOf, type DesignSpace, describeDesign } from '../../src/space/architectures.ts';

function demo(name: string): Study {
  const reading = readStudy(readFileSync(`configs/${name}.yaml`, 'utf8'), name);
  if (!reading.ok) throw new Error('demo is not read');
  return reading.study;
}

const QUICK = architecturesOf(demo('demo-quick'));
const NIGHT = architecturesOf(demo('demo-night'));

function at(space: DesignSpace, units: readonly number[]): number[] {
  return space.variables.map((variable, index) => {
    const u = units[index % units.length];
    if (variable.kind === 'choice')
      return Math.min(variable.options.length - 1, Math.floor(u * variable.options.length));
    if (variable.kind === 'integer')
      return Math.min(variable.high, variable.low + Math.floor(u * (variable.high - variable.low + 1)));
    return variable.low + u * (variable.high - variable.low);
  });
}

const unit = fc.double({ min: 0, max: 1, noNaN: true });
const units = fc.array(unit, { minLength: 20, maxLength: 20 });

function designs(spaces: DesignSpace[], runs: number, check: (space: DesignSpace, x: number[]) => void): void {
  fc.assert(
    fc.property(fc.nat(spaces.length - 1), units, (index, u) => check(spaces[index], at(spaces[index], u))),
    { numRuns: runs, seed: 11 },
  );
}

describe('architectures of a study', () => {
  it('are intake × augmenter × feed, without premixed valveless ones', () => {
    expect(QUICK.map((space) => space.architecture.id)).toEqual([
      'reed_plain_premixed-propane',
      'reed_plain_steady-injection-propane',
      'reed_augmented_premixed-propane',
      'reed_augmented_steady-injection-propane',
      'poppet_plain_premixed-propane',
      'poppet_plain_steady-injection-propane',
      'poppet_augmented_premixed-propane',
      'poppet_augmented_steady-injection-propane',
      'valveless-u_plain_steady-injection-propane',
      'valveless-u_augmented_steady-injection-propane',
    ]);
    expect(NIGHT).toHaveLength(2 * 4 + 2 * 4 + 2 * 2 + 2 * 2);
    expect(new Set(NIGHT.map((space) => space.architecture.id)).size).toBe(NIGHT.length);
    expect(QUICK[0].architecture.label).toBe('reed valves, no augmenter, premixed propane');
  });

  it('leave out variables that cannot vary', () => {
    expect(QUICK[0].variables.map((variable) => variable.name)).not.toContain('shell');
    expect(NIGHT[0].variables.map((variable) => variable.name)).toContain('shell');
  });
});

describe('every design', () => {
  it('is an engine that can be built, or a refusal with a sentence; the same each time', () => {
    let engines = 0;
    designs([...QUICK, ...NIGHT], 1500, (space, x) => {
      const made = space.toEngine(x);
      expect(space.toEngine(x)).toEqual(made);
      if ('refused' in made) {
        expect(made.violation).toBeGreaterThan(0);
        expect(Number.isFinite(made.violation)).toBe(true);
        expect(made.sentence).toMatch(/^[A-Z0-9].*\.$/);
        expect(made.constraint).toMatch(/^[a-z-]+$/);
        return;
      }
      engines++;
      expectBuildable(made);
      expect(made.augmenter !== null).toBe(space.architecture.augmenter);
      expect(made.feed).toMatchObject(space.architecture.feed);
    });
    expect(engines).toBeGreaterThan(300);
  });

  it('can be described in millimetres and inches', () => {
    designs(QUICK, 60, (space, x) => {
      const words = describeDesign(space, x);
      expect(words.map((word) => word.name)).toEqual(space.variables.map((variable) => variable.name));
      expect(words[0].value).toMatch(/^\d+(\.\d)? mm \(\d+\.\d\d in\)$/);
      for (const word of words) expect(word.value).not.toMatch(/NaN|undefined|Infinity|\d{7}/);
    });
  });

  it('outside the bounds is an error of the caller', () => {
    const space = QUICK[0];
    const x = at(space, [0.5]);
    expect(() => space.toEngine(x.slice(1))).toThrow(RangeError);
    expect(() => space.toEngine([Number.NaN, ...x.slice(1)])).toThrow(RangeError);
    expect(() => space.toEngine([9, ...x.slice(1)])).toThrow(RangeError);
  });
});

describe('geometry', () => {
  it('a U turns through half a circle and its legs clear each other', () => {
    const spaces = QUICK.filter((space) => space.architecture.intake === 'valveless-u');
    designs(spaces, 200, (space, x) => {
      const engine = space.toEngine(x);
      if ('refused' in engine) return;
      const bend = engine.sections.find((section) => section.bend)?.bend;
      expect(bend?.angle).toBeCloseTo(Math.PI, 12);
      const chamber = engine.sections.find((section) => section.role === 'chamber')!;
      const exit = engine.sections[engine.sections.length - 1].endDiameter;
      expect(2 * bend!.radius).toBeGreaterThan((chamber.startDiameter + exit) / 2 + 2 * engine.shell.thickness);
    });
  });

  it('a poppet weighs its head, stem and retainer, and its spring has the wished frequency', () => {
    const spaces = NIGHT.filter((space) => space.architecture.intake === 'poppet');
    let seen = 0;
    designs(spaces, 300, (space, x) => {
      const engine = space.toEngine(x);
      if ('refused' in engine || engine.intake.kind !== 'poppet') return;
      seen++;
      const { intake } = engine;
      const lengths = poppetLengths(engine, intake);
      const head = VALVE_MATERIALS[intake.material].density * (Math.PI / 4) * intake.headDiameter ** 2;
      const thickness = x[space.variables.findIndex((variable) => variable.name === 'head-thickness')];
      expect(Math.abs(lengths.headThickness - thickness)).toBeLessThan(0.00012 + 0.01 * (intake.mass / head));
      const frequency = Math.sqrt(intake.springRate / (intake.mass + intake.springMass / 3)) / (2 * Math.PI);
      const wished = x[space.variables.findIndex((variable) => variable.name === 'spring-frequency')];
      expect(frequency / wished).toBeCloseTo(1, 1);
    });
    expect(seen).toBeGreaterThan(20);
  });

  it('the port area is the wished share of the tailpipe', () => {
    const spaces = QUICK.filter((space) => space.architecture.intake === 'reed');
    designs(spaces, 200, (space, x) => {
      const engine = space.toEngine(x);
      if ('refused' in engine || engine.intake.kind !== 'reed') return;
      const tail = engine.sections.find((section) => section.role === 'tailpipe')!.startDiameter;
      const ratio = (engine.intake.petals * engine.intake.portArea) / ((Math.PI / 4) * tail ** 2);
      expect(ratio).toBeCloseTo(x[space.variables.findIndex((variable) => variable.name === 'port-ratio')], 2);
      expect(engine.intake.portArea).toBeLessThan(engine.intake.width * engine.intake.length);
    });
  });

  it('one large poppet on a wide port can be drawn, and so can twelve small ones', () => {
    const space = QUICK.find((one) => one.architecture.id === 'poppet_plain_premixed-propane')!;
    for (const valves of [1, 12]) {
      const x = at(space, [0.5]);
      x[space.variables.findIndex((variable) => variable.name === 'valves')] = valves;
      const engine = space.toEngine(x);
      expect('refused' in engine ? engine.sentence : '').toBe('');
    }
  });

  it('an envelope that is too short refuses, with the size over the limit as violation', () => {
    const study = demo('demo-quick');
    study.brief.wanted.maxLength = 0.5;
    const [space] = architecturesOf(study);
    const x = at(space, [0.5]);
    const refused = space.toEngine(x);
    expect(refused).toMatchObject({ refused: true, constraint: 'max-length' });
    study.brief.wanted.maxLength = 100;
    const engine = space.toEngine(x) as Engine;
    const length = engine.sections.reduce((sum, section) => sum + section.length, 0);
    if ('refused' in refused) expect(refused.violation).toBeGreaterThanOrEqual(length / 0.5 - 1 - 1e-9);
  });
});

function expectBuildable(engine: Engine): void {
  engine.sections.forEach((section, index) => {
    expect(section.length).toBeGreaterThan(0.004);
    if (!section.bend) expect(Math.abs(section.length * 2000 - Math.round(section.length * 2000))).toBeLessThan(1e-9);
    expect(Math.abs(section.startDiameter * 2000 - Math.round(section.startDiameter * 2000))).toBeLessThan(1e-9);
    if (index > 0) expect(section.startDiameter).toBe(engine.sections[index - 1].endDiameter);
  });
  JSON.stringify(engine, (_key, value) => {
    if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
    return value;
  });
}
