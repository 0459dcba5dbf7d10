/**
 * Minimises a noisy, kinked function of a dozen variables: (µ/µ_w, λ) evolution strategy with cumulative step-size control
 * and a diagonal covariance (sep-CMA-ES; Ros & Hansen, PPSN X (2008) 296).
 */
import { normal, type Random } from '../search/random.ts';

/** Returns the best point found. `sd` is the first standard deviation of each variable. */
export function evolutionStrategy(
  cost: (x: readonly number[]) => number,
  start: readonly number[],
  sd: readonly number[],
  evaluations: number,
  random: Random,
): number[] {
  const n = start.length;
  const lambda = 4 + Math.floor(3 * Math.log(n));
  const mu = Math.floor(lambda / 2);
  const raw = Array.from({ length: mu }, (_, i) => Math.log(mu + 0.5) - Math.log(i + 1));
  const total = raw.reduce((a, b) => a + b, 0);
  const weights = raw.map((w) => w / total);
  const muEff = 1 / weights.reduce((a, w) => a + w * w, 0);
  const cSigma = (muEff + 2) / (n + muEff + 5);
  const damping = 1 + 2 * Math.max(0, Math.sqrt((muEff - 1) / (n + 1)) - 1) + cSigma;
  const cCov = (4 + muEff / n) / (n + 4 + (2 * muEff) / n);
  const c1 = (2 / ((n + 1.3) ** 2 + muEff)) * ((n + 2) / 3);
  const cMu = Math.min(1 - c1, ((2 * (muEff - 2 + 1 / muEff)) / ((n + 2) ** 2 + muEff)) * ((n + 2) / 3));
  const expected = Math.sqrt(n) * (1 - 1 / (4 * n) + 1 / (21 * n * n));
  let mean = [...start];
  let sigma = 1;
  const variance = sd.map((s) => s * s);
  const pathSigma = new Array<number>(n).fill(0);
  const pathCov = new Array<number>(n).fill(0);
  let best = [...start];
  let bestCost = cost(start);
  for (let spent = 1; spent + lambda <= evaluations; spent += lambda) {
    const brood = Array.from({ length: lambda }, () => {
      const z = Array.from({ length: n }, () => normal(random));
      const x = mean.map((m, i) => m + sigma * Math.sqrt(variance[i]) * z[i]);
      return { z, x, cost: cost(x) };
    });
    brood.sort((a, b) => a.cost - b.cost);
    if (brood[0].cost < bestCost) {
      bestCost = brood[0].cost;
      best = brood[0].x;
    }
    const zMean = mean.map((_, i) => weights.reduce((a, w, k) => a + w * brood[k].z[i], 0));
    mean = mean.map((_, i) => weights.reduce((a, w, k) => a + w * brood[k].x[i], 0));
    let length = 0;
    for (let i = 0; i < n; i++) {
      pathSigma[i] = (1 - cSigma) * pathSigma[i] + Math.sqrt(cSigma * (2 - cSigma) * muEff) * zMean[i];
      length += pathSigma[i] ** 2;
    }
    const steady = Math.sqrt(length) < (1.4 + 2 / (n + 1)) * expected ? 1 : 0;
    for (let i = 0; i < n; i++) {
      const s = Math.sqrt(variance[i]);
      pathCov[i] = (1 - cCov) * pathCov[i] + steady * Math.sqrt(cCov * (2 - cCov) * muEff) * s * zMean[i];
      const rank = weights.reduce((a, w, k) => a + w * (s * brood[k].z[i]) ** 2, 0);
      variance[i] = (1 - c1 - cMu) * variance[i] + c1 * pathCov[i] ** 2 + cMu * rank;
    }
    sigma *= Math.exp((cSigma / damping) * (Math.sqrt(length) / expected - 1));
  }
  return best;
}
