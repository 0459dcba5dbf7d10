/** Variation keeps to the bounds and kinds of its variables; the start fills the space; generators repeat. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulatedBinaryCrossover } from '../../src/search/crossover.ts';
import { differentialVariation } from '../../src/search/differential.ts';
import { createDomain, inside, repair } from '../../src/search/domain.ts';
import { KnownDesigns } from '../../src/search/known-designs.ts';
import { latinHypercube } from '../../src/search/latin-hypercube.ts';
import { mutate } from '../../src/search/mutation.ts';
import { childRandom, createRandom } from '../../src/search/random.ts';
import type { Variable } from '../../src/space/architecture.ts';

const bound = fc.double({ min: -1e6, max: 1e6, noNaN: true });

const variable: fc.Arbitrary<Variable> = fc.oneof(
  fc.tuple(bound, bound).map(([a, b]): Variable => {
    return { kind: 'real', name: 'r', label: 'r', low: Math.min(a, b), high: Math.max(a, b), unit: '' };
  }),
  fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: 0, max: 40 })).map(([low, more]): Variable => {
    return { kind: 'integer', name: 'i', label: 'i', low, high: low + more, unit: '' };
  }),
  fc.array(fc.string(), { minLength: 1, maxLength: 5 }).map((options): Variable => {
    return { kind: 'choice', name: 'c', label: 'c', options };
  }),
);

const domains = fc.array(variable, { minLength: 1, maxLength: 6 }).map(createDomain);

describe('repair', () => {
  it('brings anything inside and leaves what is inside alone', () => {
    const anything = fc.array(fc.double(), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(domains, anything, (domain, raw) => {
        const x = repair(domain, raw.slice(0, domain.size));
        expect(inside(domain, x)).toBe(true);
        expect(repair(domain, x.slice())).toEqual(x);
      }),
      { numRuns: 500 },
    );
  });

  it('refuses a range that holds no value', () => {
    expect(() => createDomain([{ kind: 'real', name: 'a', label: '', low: 2, high: 1, unit: '' }])).toThrow(/"a"/);
    expect(() => createDomain([{ kind: 'integer', name: 'b', label: '', low: 1.2, high: 1.8, unit: '' }])).toThrow(
      /"b"/,
    );
    expect(() => createDomain([{ kind: 'choice', name: 'c', label: '', options: [] }])).toThrow(/"c"/);
  });
});

describe('operators', () => {
  it('stay inside the domain', () => {
    fc.assert(
      fc.property(domains, fc.string(), (domain, seed) => {
        const random = createRandom(seed);
        const [a, b, c, d] = latinHypercube(domain, 4, random);
        const first: number[] = [];
        const second: number[] = [];
        simulatedBinaryCrossover(domain, a, b, first, second, 15, random);
        mutate(domain, first, 1, 20, random);
        const step: number[] = [];
        const move = { target: a, base: b, towards: c, plus: d, minus: a, factor: 0.8, crossing: 0.9 };
        differentialVariation(domain, move, step, random);
        for (const x of [a, b, c, d, first, second, step]) expect(inside(domain, x)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  it('mutation always moves whole numbers and choices, and reaches every value', () => {
    const domain = createDomain([
      { kind: 'integer', name: 'i', label: '', low: 3, high: 6, unit: '' },
      { kind: 'choice', name: 'c', label: '', options: ['a', 'b', 'c'] },
    ]);
    const random = createRandom('mutation');
    const seen = new Set<string>();
    const x = [3, 0];
    for (let n = 0; n < 500; n++) {
      const before = x.slice();
      expect(mutate(domain, x, 1, 20, random)).toBe(true);
      expect(x[0]).not.toBe(before[0]);
      expect(x[1]).not.toBe(before[1]);
      seen.add(x.join());
    }
    expect(seen.size).toBe(12);
  });

  it('crossover keeps the mean of real parents far from bounds', () => {
    const domain = createDomain([{ kind: 'real', name: 'r', label: '', low: -1e9, high: 1e9, unit: '' }]);
    const random = createRandom('crossover');
    for (let n = 0; n < 200; n++) {
      const [a, b]: number[][] = [[], []];
      simulatedBinaryCrossover(domain, [1], [3], a, b, 15, random);
      expect(a[0] + b[0]).toBeCloseTo(4, 6);
    }
  });
});

describe('Latin hypercube', () => {
  it('puts one sample into each stratum and uses whole values equally', () => {
    const domain = createDomain([
      { kind: 'real', name: 'r', label: '', low: 0, high: 1, unit: '' },
      { kind: 'integer', name: 'i', label: '', low: 1, high: 4, unit: '' },
    ]);
    const samples = latinHypercube(domain, 20, createRandom('lhs'));
    expect(samples.map(([r]) => Math.floor(r * 20)).sort((a, b) => a - b)).toEqual(
      Array.from({ length: 20 }, (_, i) => i),
    );
    for (const value of [1, 2, 3, 4]) expect(samples.filter(([, i]) => i === value)).toHaveLength(5);
  });
});

describe('generators', () => {
  it('repeat for one seed and differ between seeds and children', () => {
    const draw = (random: { uniform(): number }) => Array.from({ length: 5 }, () => random.uniform());
    expect(draw(createRandom('a'))).toEqual(draw(createRandom('a')));
    expect(draw(createRandom('a'))).not.toEqual(draw(createRandom('b')));
    expect(draw(childRandom('a', 1))).not.toEqual(draw(childRandom('a', 2)));
    expect(draw(childRandom('a', 1))).toEqual(draw(childRandom('a', 1)));
  });

  it('are uniform in mean, variance and neighbours', () => {
    const random = createRandom('uniform');
    const values = Array.from({ length: 100_000 }, () => random.uniform());
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
    let covariance = 0;
    for (let i = 1; i < values.length; i++) covariance += (values[i] - 0.5) * (values[i - 1] - 0.5);
    // Five standard errors each.
    expect(Math.abs(mean - 0.5)).toBeLessThan(5 * Math.sqrt(1 / 12 / values.length));
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(5 * Math.sqrt(1 / 180 / values.length));
    expect(Math.abs(covariance / values.length)).toBeLessThan(5 / 12 / Math.sqrt(values.length));
  });
});

describe('known designs', () => {
  it('agree with a plain set, zero and the largest fingerprint included, also after being put back', () => {
    const random = createRandom('known');
    const plain = new Set<number>();
    const known = new KnownDesigns();
    const odd = [0, 4294967295, 1, 2147483648];
    for (let n = 0; n < 5000; n++) {
      const mark = n % 50 === 0 ? odd[(n / 50) % 4] : Math.floor(random.uniform() * 6000) * 65536;
      expect(known.has(mark)).toBe(plain.has(mark));
      plain.add(mark);
      known.add(mark);
    }
    const again = new KnownDesigns();
    again.marks = known.marks;
    for (const set of [known, again]) {
      expect(set.size).toBe(plain.size);
      expect([...set.marks].sort((a, b) => a - b)).toEqual([...plain].sort((a, b) => a - b));
    }
    expect(again.has(3)).toBe(false);
  });
});
