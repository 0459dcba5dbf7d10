/** Small random changes, fitted to each kind of coordinate. */
import { type Domain, INTEGER, REAL } from './domain.ts';
import { integerBelow, type Random } from './random.ts';

/**
 * Polynomial mutation with bounds for real coordinates (Deb and Goyal, Computer Science and Informatics 26, 1996), steps
 * of geometrically distributed length for whole ones, another option for choices. Each coordinate changes with chance
 * `rate`; `eta` is the index (larger is nearer). In place; returns whether anything changed.
 */
export function mutate(domain: Domain, x: number[], rate: number, eta: number, random: Random): boolean {
  let changed = false;
  for (let i = 0; i < domain.size; i++) {
    const low = domain.low[i];
    const range = domain.high[i] - low;
    if (random.uniform() >= rate || !(range > 0)) continue;
    const held = x[i];
    if (domain.kind[i] === REAL) {
      const step = polynomialStep((held - low) / range, random.uniform(), eta);
      x[i] = Math.min(Math.max(held + step * range, low), domain.high[i]);
    } else if (domain.kind[i] === INTEGER) {
      x[i] = wholeStep(held, low, domain.high[i], random);
    } else {
      const option = low + integerBelow(random, range);
      x[i] = option >= held ? option + 1 : option;
    }
    changed ||= x[i] !== held;
  }
  return changed;
}

/** Step as a share of the range, from position `at` in [0, 1]. */
function polynomialStep(at: number, u: number, eta: number): number {
  const power = eta + 1;
  if (u < 0.5) return (2 * u + (1 - 2 * u) * (1 - at) ** power) ** (1 / power) - 1;
  return 1 - (2 * (1 - u) + (2 * u - 1) * at ** power) ** (1 / power);
}

/** At least one step, on average a tenth of the range or two, whichever is more; turned round at a bound. */
function wholeStep(value: number, low: number, high: number, random: Random): number {
  const mean = Math.max(2, 0.1 * (high - low));
  const length = 1 + Math.floor(Math.log(1 - random.uniform()) / Math.log(1 - 1 / mean));
  const moved = random.uniform() < 0.5 ? value - length : value + length;
  if (moved >= low && moved <= high) return moved;
  const turned = 2 * value - moved;
  if (turned >= low && turned <= high) return turned;
  return moved < low ? (value === low ? high : low) : value === high ? low : high;
}
