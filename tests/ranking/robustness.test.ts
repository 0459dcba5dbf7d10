import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MODEL_CONSTANT_NAMES } from '../../shared/engine/constants.ts';
import type { Engine } from '../../shared/engine/engine.ts';
import { readEngineFile } from '../../src/config/read-engine.ts';
import { asBuilt, BUILD_TOLERANCES } from '../../src/ranking/build-tolerances.ts';
import { bandOf, logDeviation, lowerQuartileLog, quantile, upperQuartile } from '../../src/ranking/quantiles.ts';
import { normalScore, robustnessFrom, robustnessPlan } from '../../src/ranking/robustness.ts';
import { createRandom } from '../../src/search/random.ts';
import { summary } from '../support/fixtures.ts';

function engineFile(name: string) {
  const reading = readEngineFile(readFileSync(`configs/engines/${name}.yaml`, 'utf8'), name);
  if (!reading.ok) throw new Error(`${name} is not read`);
  return reading;
}

const REED = engineFile('class-50-cm');
const QUESTION = { seed: 's', key: 'k', engine: REED.engine, brief: REED.brief, draws: 64 };

describe('normal scores', () => {
  // Percentage points of the normal distribution as in any table of it.
  it.each([
    [0.5, 0],
    [0.975, 1.9599639845],
    [0.95, 1.644853627],
    [0.75, 0.6744897502],
    [0.001, -3.0902323062],
  ])('at %d', (p, z) => {
    expect(normalScore(p)).toBeCloseTo(z, 7);
  });

  it('refuse what is no probability', () => {
    for (const p of [0, 1, -1, Number.NaN]) expect(() => normalScore(p)).toThrow(RangeError);
  });
});

describe('quantiles', () => {
  // Hyndman and Fan (The American Statistician 50, 1996), definition 7.
  it('interpolate between order statistics', () => {
    expect(quantile([1, 2, 3, 4], 0.25)).toBeCloseTo(1.75, 12);
    expect(quantile([7], 0.9)).toBe(7);
  });

  it('of few values are not told', () => {
    expect(bandOf([1, 2, 3, null, Number.NaN])).toBeNull();
    expect(bandOf([5, 1, 2, 3, 4])).toEqual({ low: 1.2, median: 3, high: 4.8 });
  });

  it('quartiles of a normal and a log-normal band come out of its tails', () => {
    const z = 1.6448536269514722;
    expect(upperQuartile({ low: -z, median: 0, high: z })).toBeCloseTo(0.6744897502, 9);
    const band = { low: Math.exp(-z), median: 1, high: Math.exp(z) };
    expect(Math.log(lowerQuartileLog(band))).toBeCloseTo(-0.6744897502, 9);
    expect(logDeviation(band)).toBeCloseTo(1, 12);
  });
});

describe('the plan', () => {
  it('is the same for the same seed and key, and another for another', () => {
    expect(robustnessPlan(QUESTION)).toEqual(robustnessPlan(QUESTION));
    expect(robustnessPlan({ ...QUESTION, key: 'other' })[0]).not.toEqual(robustnessPlan(QUESTION)[0]);
    expect(robustnessPlan({ ...QUESTION, seed: 'other' })[0]).not.toEqual(robustnessPlan(QUESTION)[0]);
  });

  it('visits every slice of every constant once', () => {
    const plan = robustnessPlan(QUESTION);
    expect(plan).toHaveLength(64);
    MODEL_CONSTANT_NAMES.forEach((_, constant) => {
      const scores = plan.map((request) => request.constantsDraw![constant]).sort((a, b) => a - b);
      scores.forEach((score, slice) => {
        if (slice > 0) expect(score).toBeGreaterThanOrEqual(normalScore(slice / 64) - 1e-6);
        if (slice < 63) expect(score).toBeLessThanOrEqual(normalScore((slice + 1) / 64) + 1e-6);
      });
    });
  });

  it('does not bring constants and constants into step with each other', () => {
    const plan = robustnessPlan({ ...QUESTION, draws: 256 });
    for (let a = 1; a < MODEL_CONSTANT_NAMES.length; a++) {
      const product = plan.reduce((sum, { constantsDraw }) => sum + constantsDraw![0] * constantsDraw![a], 0) / 256;
      expect(Math.abs(product)).toBeLessThan(0.25);
    }
  });
});

describe('engines as built', () => {
  const names = ['class-50-cm', 'twelve-small-poppets', 'valveless-u'];

  it.each(names)('%s keeps meeting at its joints and stays near the drawing', (name) => {
    const { engine } = engineFile(name);
    fc.assert(
      fc.property(fc.string({ maxLength: 8 }), (seed) => {
        const built = asBuilt(engine, createRandom(seed));
        built.sections.forEach((section, i) => {
          if (i > 0) expect(section.startDiameter).toBe(built.sections[i - 1].endDiameter);
          expect(Math.abs(section.length - engine.sections[i].length)).toBeLessThanOrEqual(
            2.5 * BUILD_TOLERANCES.sectionLength + 1e-12,
          );
          expect(Math.abs(section.endDiameter - engine.sections[i].endDiameter)).toBeLessThanOrEqual(
            2.5 * BUILD_TOLERANCES.diameter + 1e-12,
          );
        });
      }),
      { numRuns: 100, seed: 3 },
    );
  });

  it('vary by the stated standard deviation', () => {
    const random = createRandom('many');
    const lengths = Array.from({ length: 3000 }, () => asBuilt(REED.engine, random).sections[0].length);
    const mean = lengths.reduce((a, b) => a + b) / lengths.length;
    const deviation = Math.sqrt(lengths.reduce((sum, l) => sum + (l - mean) ** 2, 0) / lengths.length);
    expect(deviation / BUILD_TOLERANCES.sectionLength).toBeGreaterThan(0.9);
    expect(deviation / BUILD_TOLERANCES.sectionLength).toBeLessThan(1.05);
    expect(Math.abs(mean - REED.engine.sections[0].length)).toBeLessThan(0.05 * BUILD_TOLERANCES.sectionLength);
  });

  it('leave the drawing as it is', () => {
    const before: Engine = structuredClone(REED.engine);
    asBuilt(REED.engine, createRandom('x'));
    expect(REED.engine).toEqual(before);
  });
});

describe('the reduction', () => {
  const draws = Array.from({ length: 64 }, (_, i) =>
    i < 48
      ? summary({ tsfc: 7e-5 + i * 1e-7, violations: i < 16 ? [{ id: 'thrust', violation: 0.1 }] : [] })
      : summary({
          status: i < 60 ? 'dies' : 'timed out',
          tsfc: null,
          thrust: null,
          valveLife: null,
          frequency: null,
          fuelFlow: null,
        }),
  );

  it('counts every failure as not running', () => {
    const robust = robustnessFrom({ seed: 's', key: 'k' }, draws, { low: 700, median: 2400, high: 8200 });
    expect(robust).toMatchObject({ draws: 64, sustainChance: 0.75, feasibleChance: 0.5 });
    expect(robust.tsfc!.median).toBeCloseTo(7e-5 + 23.5e-7, 12);
  });

  it('never makes the life band tighter than the scatter of the material', () => {
    const same = Array.from({ length: 400 }, () => summary());
    const life = robustnessFrom({ seed: 's', key: 'k' }, same, { low: 700, median: 2400, high: 8200 }).valveLife!;
    expect(life.high / life.low).toBeGreaterThan(8);
    expect(life.high / life.low).toBeLessThan(16);
    expect(life.median / 2400).toBeGreaterThan(0.85);
    expect(life.median / 2400).toBeLessThan(1.18);
  });

  it('of nothing running says so', () => {
    const none = draws.slice(48);
    expect(robustnessFrom({ seed: 's', key: 'k' }, none, null)).toMatchObject({
      sustainChance: 0,
      feasibleChance: 0,
      tsfc: null,
      thrust: null,
      valveLife: null,
    });
  });
});
