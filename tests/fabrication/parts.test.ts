import { describe, expect, it } from 'vitest';
import { densityOf } from '../../shared/fabrication/density.ts';
import { overallSize } from '../../shared/fabrication/overall-size.ts';
import { partsList } from '../../shared/fabrication/parts.ts';
import { bigReedEngine, poppetEngine, reedEngine, uBentEngine } from './engines.ts';

const engines = { reedEngine, poppetEngine, uBentEngine, bigReedEngine };

describe.each(Object.entries(engines))('parts list of %s', (_name, make) => {
  const parts = partsList(make());

  it('has unique identifiers and positive sizes', () => {
    expect(new Set(parts.map((p) => p.id)).size).toBe(parts.length);
    for (const part of parts) {
      expect(part.count, part.id).toBeGreaterThan(0);
      expect(part.mass, part.id).toBeGreaterThan(0);
      expect(part.thickness, part.id).toBeGreaterThan(0);
      expect(part.blankLength, part.id).toBeGreaterThan(0);
    }
  });

  it('never asks for more metal in a part than its blank holds', () => {
    for (const part of parts.filter((p) => p.area > 0)) {
      expect(part.area, part.id).toBeLessThanOrEqual(part.blankLength * part.blankWidth * (1 + 1e-9));
      expect(part.mass, part.id).toBeLessThanOrEqual(
        part.area * part.thickness * densityOf(part.material) * (1 + 1e-9),
      );
    }
  });
});

describe('mass of the shell', () => {
  it('of a cylinder is that of the hollow cylinder between inside and outside diameter (exact formula)', () => {
    const part = partsList(reedEngine()).find((p) => p.id === 'chamber-shell')!;
    const exact = (Math.PI / 4) * ((0.065 + 0.0016) ** 2 - 0.065 ** 2) * 0.12 * 7930;
    expect(part.mass).toBeCloseTo(exact, 9);
  });

  it('of a mitred bend equals that of a straight tube of the centreline length of its chords', () => {
    const engine = uBentEngine();
    const bend = partsList(engine).filter((p) => p.id.startsWith('bend'));
    const total = bend.reduce((sum, p) => sum + p.mass * p.count, 0);
    // 8 mitres of 22.5°: the centreline is a polygon round the arc, 2 R tan(α) long at each mitre.
    const centreline = 8 * 2 * 0.11 * Math.tan(Math.PI / 16);
    expect(total).toBeCloseTo(Math.PI * 0.061 * 0.001 * centreline * 7920, 9);
    expect(bend.map((p) => p.count)).toEqual([7, 2]);
  });
});

describe('poppet parts', () => {
  it('keep the moving mass that the simulation used', () => {
    const engine = poppetEngine();
    const mass = (id: string) => partsList(engine).find((p) => p.id === id)!.mass;
    expect(mass('poppet-head') + mass('poppet-stem') + mass('spring-retainer')).toBeCloseTo(0.0035, 12);
    expect(mass('valve-spring')).toBe(0.0008);
  });
});

describe('overall size', () => {
  it('of a straight reed engine is its sections and its valve plate; the flange is widest', () => {
    const { length, diameter } = overallSize(reedEngine());
    expect(length).toBeCloseTo(0.52 + 0.003, 9);
    expect(diameter).toBeCloseTo(0.065 + 0.0016 + 7 * 0.004, 9);
  });

  it('of a U-bent engine spans both legs and the outside of the bend', () => {
    const { length, diameter } = overallSize(uBentEngine());
    // From the outside of the bend to the end of the longer leg. Chamber leg 0.77 m + bell 0.01125, tail leg 0.7 m.
    expect(length).toBeCloseTo(0.11 + 0.03 + 0.001 + 0.77 + 0.01125, 9);
    // Chamber above, exit flare below, centrelines 0.22 m apart.
    expect(diameter).toBeCloseTo(0.22 + 0.051 + 0.0435, 9);
  });

  it('counts gap, bell and duct of an augmenter', () => {
    const plain = overallSize({ ...reedEngine(), augmenter: null });
    const withAugmenter = overallSize({ ...reedEngine(), augmenter: poppetEngine().augmenter });
    expect(withAugmenter.length - plain.length).toBeCloseTo(0.04 + 0.0225 + 0.4, 9);
    expect(withAugmenter.diameter).toBeCloseTo(0.09 + 0.045 + 0.0016, 9);
  });
});
