import { describe, expect, it } from 'vitest';
import { augment, entrainedFlow } from '../../shared/augmenter/augment.ts';
import { augmentation } from '../../shared/augmenter/augmentation.ts';
import type { Augmenter } from '../../shared/engine/engine.ts';

const d = 0.165; // 6.5 inch exit
const duct = (change: Partial<Record<'D' | 'L' | 'gap' | 'taper', number>> = {}): Augmenter => ({
  diameter: (change.D ?? 2.46) * d,
  length: (change.L ?? 10) * d,
  gap: (change.gap ?? 1) * d,
  taper: change.taper ?? 1,
});
const ratio = (change: Parameters<typeof duct>[0], density = 0.3) => augmentation(duct(change), d, density).ratio;

function best(f: (x: number) => number, from: number, to: number): number {
  let [at, value] = [from, f(from)];
  for (let x = from; x <= to; x += (to - from) / 400) {
    if (f(x) > value) [at, value] = [x, f(x)];
  }
  return at;
}

describe('augmentation by a pulsejet', () => {
  it('gives 1.71 in the best straight duct of NASA/TM-2006-214224', () => {
    expect(Math.abs(ratio({}) - 1.71)).toBeLessThan(0.01);
  });

  it('gives 1.81 in the best tapered duct of NASA/TM-2006-214224', () => {
    const taper = best((t) => ratio({ taper: t }), 1, 1.6);
    expect(Math.abs(ratio({ taper }) - 1.81)).toBeLessThan(0.01);
    expect(taper).toBeGreaterThan(1.1);
    expect(taper).toBeLessThan(1.35);
  });

  it('comes within 0.15 of the 1.8 that a small driver reached, NASA/TM-2002-211711', () => {
    const small = augmentation({ diameter: 2.4 * 0.03, length: 10 * 0.03, gap: 0.03, taper: 1 }, 0.03, 0.3).ratio;
    expect(Math.abs(small - 1.8)).toBeLessThan(0.15);
  });

  it.each([0.2, 0.3, 0.5])('is best at D between 2.2 and 2.8 d for a jet %d as dense as air', (density) => {
    const at = best((D) => ratio({ D }, density), 1.2, 6);
    expect(at).toBeGreaterThan(2.2);
    expect(at).toBeLessThan(2.8);
  });

  it('is best at L near 10 d and at a gap of 0.5 to 2 d, the latter weakly', () => {
    expect(Math.abs(best((L) => ratio({ L }), 2, 30) - 10)).toBeLessThan(1);
    const gap = best((g) => ratio({ gap: g }), 0, 5);
    expect(gap).toBeGreaterThan(0.5);
    expect(gap).toBeLessThan(2);
    expect(ratio({ gap: 0.5 })).toBeGreaterThan(ratio({}) - 0.05);
    expect(ratio({ gap: 2 })).toBeGreaterThan(ratio({}) - 0.05);
  });

  it('keeps the steady part at what a steady ejector can give', () => {
    const { steady, unsteadyGain, ratio: total } = augmentation(duct(), d, 0.3);
    expect(steady).toBeGreaterThan(1.1);
    expect(steady).toBeLessThan(1.2618); // loss-free momentum theory
    expect(unsteadyGain).toBeGreaterThan(1.3);
    expect(steady * unsteadyGain).toBeCloseTo(total, 12);
  });

  it('says so outside the tested range and fades towards no gain', () => {
    const wide = augmentation(duct({ D: 8 }), d, 0.3);
    expect(wide.inTestedRange).toBe(false);
    expect(wide.note).toMatch(/diameter.*8\.00.*1\.7 to 3\.4/);
    expect(wide.ratio).toBeLessThan(1.1);
    const far = augmentation(duct({ gap: 12 }), d, 0.3);
    expect(far.inTestedRange).toBe(false);
    expect(far.ratio).toBeLessThan(1.1);
    expect(augmentation(duct({ L: 60 }), d, 0.3).ratio).toBeLessThan(1.1);
    expect(augmentation(duct({ L: 0.5 }), d, 0.3).ratio).toBeLessThan(1.1);
    expect(augmentation(duct({ taper: 3 }), d, 0.3).note).toMatch(/5°/);
    expect(augmentation(duct(), d, 0.3).inTestedRange).toBe(true);
  });

  it('changes without a jump where the tested range ends', () => {
    for (const [key, edge] of [
      ['D', 3.4],
      ['D', 1.7],
      ['L', 18],
      ['gap', 4],
    ] as const) {
      expect(ratio({ [key]: edge + 1e-7 })).toBeCloseTo(ratio({ [key]: edge - 1e-7 }), 5);
    }
  });

  it('adds nothing when no wider than the exit, and refuses nonsense', () => {
    expect(augmentation(duct({ D: 0.9 }), d, 0.3)).toMatchObject({ ratio: 1, inTestedRange: false });
    expect(() => augmentation(duct({ D: -1 }), d, 0.3)).toThrow(RangeError);
    expect(() => augmentation(duct({ taper: 0.8 }), d, 0.3)).toThrow(RangeError);
    expect(() => augmentation(duct(), d, 0)).toThrow(RangeError);
    expect(() => augmentation(duct(), 0, 0.3)).toThrow(RangeError);
  });
});

describe('augmented exhaust', () => {
  const site = { pressure: 101_325, temperature: 288.15 };
  const exhaust = { thrust: 450, massFlow: 0.75, temperature: 1000, gasConstant: 290 };

  it('multiplies thrust and finds the entrained flow whose momentum is that thrust', () => {
    const augmenter = duct({ taper: 1.2 });
    const result = augment({ augmenter, exitDiameter: d, exhaust, site });
    expect(result.thrust).toBeCloseTo(450 * result.ratio, 9);
    const jetDensity = 101_325 / (290 * 1000);
    const airDensity = 101_325 / (287.05 * 288.15);
    const volume = 0.75 / jetDensity + result.entrainedFlow / airDensity;
    const exitArea = (Math.PI * (augmenter.diameter * 1.2) ** 2) / 4;
    const momentum = ((0.75 + result.entrainedFlow) * volume) / exitArea;
    expect(momentum / result.thrust).toBeCloseTo(1, 4);
    expect(result.entrainedFlow).toBeGreaterThan(2 * 0.75);
  });

  it('draws no air when the jet alone fills the duct', () => {
    expect(entrainedFlow(10, 0.01, 1, 1, 1)).toBe(0);
  });
});
