/** Which of the designs that ran are kept, and what of them. */
import { describe, expect, it } from 'vitest';
import { KeptDesigns } from '../../src/cli/kept-designs.ts';
import type { EvaluationSummary } from '../../src/evaluation/evaluation.ts';

function summary(changes: Partial<EvaluationSummary>): EvaluationSummary {
  return {
    status: 'ok',
    reason: '',
    tsfc: 1e-4,
    valveLife: 3600,
    thrust: 50,
    frequency: 100,
    fuelFlow: 5e-3,
    mass: 4,
    followRatio: 1.5,
    forceOffered: 3,
    forceNeeded: 2,
    violations: [],
    flags: ['noise'],
    ...changes,
  };
}

describe('kept designs', () => {
  it('hold what pictures show, and count what ran and what met every wish', () => {
    const kept = new KeptDesigns();
    expect(kept.offer('reed', summary({ status: 'dies', reason: 'fades' }))).toBeNull();
    kept.offer('reed', summary({}));
    kept.offer('reed', summary({ violations: [{ id: 'max-length', violation: 0.2 }] }));
    expect(kept).toMatchObject({ running: 2, feasible: 1 });
    const figures = { architecture: 'reed', tsfc: 1e-4, valveLife: 3600, thrust: 50, mass: 4 };
    expect(kept.designs).toEqual([
      { ...figures, feasible: true, reason: '' },
      { ...figures, feasible: false, reason: 'max-length' },
    ]);
  });

  it('are an even share of many, and the extremes whatever their place', () => {
    const kept = new KeptDesigns();
    const odd = { 1501: { thrust: 900 }, 1503: { valveLife: 1e9 }, 1505: { tsfc: 1e-6 }, 1507: { mass: 0.5 } };
    for (let n = 0; n < 3000; n++) {
      const design = kept.offer('reed', summary({ frequency: n, thrust: 50 - n / 100, ...odd[n as keyof typeof odd] }));
      // At first all; every second one once there are more than a thousand, every fourth beyond two.
      const every = n <= 1000 ? 1 : n <= 2000 ? 2 : 4;
      expect(design !== null, `design ${n}`).toBe(n % every === 0 || n in odd);
    }
    const { designs } = kept;
    expect(designs).toHaveLength(3000 / 4 + 4);
    expect(Math.max(...designs.map(({ thrust }) => thrust))).toBe(900);
    expect(Math.max(...designs.map(({ valveLife }) => valveLife))).toBe(1e9);
    expect(Math.min(...designs.map(({ tsfc }) => tsfc))).toBe(1e-6);
    expect(Math.min(...designs.map(({ mass }) => mass))).toBe(0.5);
  });

  it('are no extreme in a figure that they lack', () => {
    const kept = new KeptDesigns();
    kept.offer('reed', summary({ tsfc: null }));
    kept.offer('reed', summary({ tsfc: 2e-4 }));
    expect(kept.state.extremes.get('tsfc')?.design.tsfc).toBe(2e-4);
  });
});
