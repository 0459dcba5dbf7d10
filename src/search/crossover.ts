/** Two designs in, two designs out. */
import { CHOICE, type Domain, INTEGER } from './domain.ts';
import type { Random } from './random.ts';

/**
 * Simulated binary crossover with bounds (Deb and Agrawal, Complex Systems 9, 1995; bounded form of Deb and Beyer 2001).
 * Each coordinate is crossed with even chance: real ones spread about their parents' mean with index `eta` (larger is
 * nearer), whole ones likewise and then rounded, choices exchanged. Children are written in place.
 */
export function simulatedBinaryCrossover(
  domain: Domain,
  a: readonly number[],
  b: readonly number[],
  childA: number[],
  childB: number[],
  eta: number,
  random: Random,
): void {
  for (let i = 0; i < domain.size; i++) {
    childA[i] = a[i];
    childB[i] = b[i];
    const draw = random.uniform();
    if (draw >= 0.5 || a[i] === b[i]) continue;
    if (domain.kind[i] === CHOICE) {
      childA[i] = b[i];
      childB[i] = a[i];
      continue;
    }
    const small = Math.min(a[i], b[i]);
    const large = Math.max(a[i], b[i]);
    const apart = large - small;
    if (apart < 1e-14 * (domain.high[i] - domain.low[i])) continue;
    const u = random.uniform();
    let lower = 0.5 * (small + large - spread(u, 1 + (2 * (small - domain.low[i])) / apart, eta) * apart);
    let upper = 0.5 * (small + large + spread(u, 1 + (2 * (domain.high[i] - large)) / apart, eta) * apart);
    if (domain.kind[i] === INTEGER) {
      lower = Math.round(lower);
      upper = Math.round(upper);
    }
    lower = Math.min(Math.max(lower, domain.low[i]), domain.high[i]);
    upper = Math.min(Math.max(upper, domain.low[i]), domain.high[i]);
    // A quarter of all coordinates change sides, so that neither child is "the small one".
    if (draw < 0.25) {
      childA[i] = lower;
      childB[i] = upper;
    } else {
      childA[i] = upper;
      childB[i] = lower;
    }
  }
}

/** Spread factor for a uniform u when the bound lies at `reach` (≥ 1) spreads. */
function spread(u: number, reach: number, eta: number): number {
  const alpha = 2 - reach ** -(eta + 1);
  const base = u <= 1 / alpha ? u * alpha : 1 / (2 - u * alpha);
  return base ** (1 / (eta + 1));
}
