/**
 * Latin hypercube sampling (McKay, Beckman and Conover, Technometrics 21, 1979): each coordinate is cut into as many
 * equal strata as there are samples and each stratum holds exactly one of them. Works for any number of coordinates,
 * and gives whole coordinates every value equally often.
 */
import { type Domain, fromUnit } from './domain.ts';
import { type Random, shuffle } from './random.ts';

/** `count` designs that fill the domain. Shape: count × domain.size. */
export function latinHypercube(domain: Domain, count: number, random: Random): number[][] {
  const samples = Array.from({ length: count }, () => new Array<number>(domain.size).fill(0));
  const strata = new Int32Array(count);
  for (let i = 0; i < domain.size; i++) {
    for (let k = 0; k < count; k++) strata[k] = k;
    shuffle(random, strata);
    for (let k = 0; k < count; k++) samples[k][i] = fromUnit(domain, i, (strata[k] + random.uniform()) / count);
  }
  return samples;
}
