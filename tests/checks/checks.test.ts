import { describe, expect, it } from 'vitest';
import { assess } from '../../shared/checks/assess.ts';
import type { CheckInput } from '../../shared/checks/check.ts';
import { CHECK_RULES } from '../../shared/checks/registry.ts';
import { bentEngine, deadPerformance, inputOf, poppetEngine, reedEngine } from './fixtures.ts';
import { SCENARIOS } from './scenarios.ts';

const found = (input: CheckInput, id: string) => assess(input).checks.find((check) => check.id === id)!;

describe('every check', () => {
  it('has a stable, unique kebab-case id, a title and a source', () => {
    const ids = CHECK_RULES.map((rule) => rule.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const rule of CHECK_RULES) {
      expect(rule.id).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(rule.title.length).toBeGreaterThan(3);
      expect(rule.source.length).toBeGreaterThan(5);
    }
  });
  it('has a scenario that passes it and one that trips it', () => {
    expect(Object.keys(SCENARIOS).sort()).toEqual(CHECK_RULES.map((rule) => rule.id).sort());
  });
  it.each(CHECK_RULES.map((rule) => rule.id))('%s can pass and can be tripped', (id) => {
    const { pass, trip, tripped } = SCENARIOS[id];
    const good = found(pass(), id);
    expect([good.verdict, good.sentence]).toEqual(['pass', good.sentence]);
    const bad = found(trip(), id);
    expect([bad.verdict, bad.sentence]).toEqual([tripped, bad.sentence]);
    for (const check of [good, bad]) {
      expect(check.sentence).toMatch(/[.!]$/);
      expect(check.sentence).not.toMatch(/NaN|undefined|Infinity/);
      expect(Number.isFinite(check.value)).toBe(true);
    }
    expect(bad.margin).toBeLessThan(id === 'fuel-regulator' || id === 'poppet-weld' ? 1e9 : good.margin!);
  });
});

describe('assessment', () => {
  it.each([
    ['reed', reedEngine()],
    ['poppet', poppetEngine()],
    ['valveless', bentEngine()],
  ] as const)('of a running %s engine has a life band, size, mass and noise', (_, engine) => {
    const a = assess(inputOf(engine));
    expect(a.valveLife!.high / a.valveLife!.low).toBeGreaterThanOrEqual(3 - 1e-9);
    expect(a.valveLifeCycles!.median / a.valveLife!.median).toBeCloseTo(90, 6);
    expect(a.lifeLimiter).not.toBe('');
    expect(a.mass).toBeGreaterThan(1);
    expect(a.overallLength).toBeGreaterThan(0.5);
    expect(a.noise!.level).toBeGreaterThan(90);
    expect(a.noise!.level).toBeLessThan(150);
    expect(a.checks.filter((c) => c.verdict === 'not computed')).toEqual([]);
    expect(a.needs.map((n) => n.id)).toContain('starting-flow');
  });

  it('of a dead engine says why, gives forces and cures, and leaves the rest alone', () => {
    const input = { ...inputOf(reedEngine()), performance: deadPerformance() };
    const a = assess(input);
    const by = Object.fromEntries(a.checks.map((c) => [c.id, c]));
    expect(by['engine-runs'].sentence).toBe(input.performance.verdict.message);
    expect(by['valve-follows'].sentence).toMatch(/3 N of the 12 N/);
    expect(by['valve-follows'].sentence).toMatch(/9 smaller valves/);
    expect(by['shell-creep'].verdict).toBe('not applicable');
    expect(by.length.verdict).toBe('pass');
    expect([a.valveLife, a.noise, a.needs]).toEqual([null, null, []]);
  });

  it('petals that overstress fail within minutes, gentle ones last (Univ. Limerick 2010: overstressed petals fail in about 2 min)', () => {
    const life = (impact: number) =>
      assess(
        inputOf(reedEngine(), (_, r) => {
          r.valve!.seatImpactSpeed = impact;
        }),
      ).valveLife!.median;
    expect(life(16) / 60).toBeLessThan(5);
    expect(life(4) / 60).toBeGreaterThan(60);
    expect(life(12) / 60).toBeGreaterThan(0.5);
    expect(life(12) / 60).toBeLessThan(10);
  });

  it('a petal lives ten million cycles at 6–10 m/s on its seat (compressor practice, from memory, medium-low)', () => {
    const cycles = (impact: number) =>
      assess(
        inputOf(reedEngine(), (_, r) => {
          r.valve!.seatImpactSpeed = impact;
        }),
      ).valveLifeCycles!.median;
    expect(cycles(6)).toBeGreaterThan(1e7);
    expect(cycles(10)).toBeLessThan(1e7);
  });

  it('a welded stem never lasts longer than a stem in one piece', () => {
    const life = (stemJoint: 'welded' | 'one-piece') =>
      assess(
        inputOf(poppetEngine(), (i) => {
          if (i.engine.intake.kind === 'poppet') i.engine.intake.stemJoint = stemJoint;
        }),
      ).valveLife!.median;
    expect(life('welded')).toBeLessThan(life('one-piece'));
  });

  it('life of the shell falls as the wall grows hotter, for a valveless engine', () => {
    const life = (kelvin: number) =>
      assess(
        inputOf(bentEngine(), (_, r) => {
          r.profile.wallTemperature = r.profile.wallTemperature.map(() => kelvin);
        }),
      ).valveLife!.median;
    expect(life(1200)).toBeLessThan(life(1000));
  });
});
