/**
 * How new designs are made from old ones: a few operators side by side, each used as often as its offspring survive
 * (probability matching: Goldberg, Machine Learning 5, 1990), so that no operator must suit every problem.
 */
import { simulatedBinaryCrossover } from './crossover.ts';
import { differentialVariation } from './differential.ts';
import type { Domain } from './domain.ts';
import { mutate } from './mutation.ts';
import type { Member } from './outcome.ts';
import { cauchy, integerBelow, normal, type Random } from './random.ts';

/** Operators by index: crossover with mutation, differential from a random base, differential drawn towards the best. */
const CROSSOVER = 0;
const TOWARDS_BEST = 2;
const OPERATORS = 3;

export interface VariationSettings {
  /** Index of simulated binary crossover; larger is nearer to the parents. */
  crossoverEta: number;
  /** Chance that a pair is crossed at all before mutation. */
  crossoverRate: number;
  mutationEta: number;
  /** Least share of the offspring that each operator makes. */
  floor: number;
}

export const VARIATION: VariationSettings = { crossoverEta: 15, crossoverRate: 0.9, mutationEta: 20, floor: 0.1 };

/** A design not yet judged and how it was made. */
export interface Offspring {
  x: number[];
  operator: number;
  factor: number;
  crossing: number;
}

export class Variation {
  /** Share of the offspring that each operator makes. */
  private readonly share = new Float64Array(OPERATORS).fill(1 / OPERATORS);
  private readonly successRate = new Float64Array(OPERATORS).fill(0.5);
  /** Centres that step factor and crossing chance are drawn about; they follow what succeeds (Tanabe and Fukunaga, CEC 2013). */
  private factor = 0.5;
  private crossing = 0.5;

  constructor(
    private readonly domain: Domain,
    private readonly settings: VariationSettings,
  ) {}

  /** One or two new designs from parents sorted best first (at least one). Inside the bounds, maybe equal to a parent. */
  make(parents: readonly Member[], random: Random): Offspring[] {
    let draw = random.uniform();
    let operator = 0;
    while (operator < OPERATORS - 1 && draw >= this.share[operator]) draw -= this.share[operator++];
    if (operator === CROSSOVER || parents.length < 5) return this.cross(parents, random);
    return [this.step(operator, parents, random)];
  }

  private cross(parents: readonly Member[], random: Random): Offspring[] {
    const { domain, settings } = this;
    const first = tournament(parents, random).x;
    const second = tournament(parents, random).x;
    const a = new Array<number>(domain.size).fill(0);
    const b = new Array<number>(domain.size).fill(0);
    if (random.uniform() < settings.crossoverRate) {
      simulatedBinaryCrossover(domain, first, second, a, b, settings.crossoverEta, random);
    } else {
      for (let i = 0; i < domain.size; i++) {
        a[i] = first[i];
        b[i] = second[i];
      }
    }
    const offspring: Offspring[] = [];
    for (const x of [a, b]) {
      mutate(domain, x, 1 / domain.size, settings.mutationEta, random);
      offspring.push({ x, operator: CROSSOVER, factor: 0, crossing: 0 });
    }
    return offspring;
  }

  private step(operator: number, parents: readonly Member[], random: Random): Offspring {
    const { domain, settings } = this;
    const target = tournament(parents, random).x;
    const plus = anyOf(parents, random).x;
    const minus = anyOf(parents, random).x;
    let factor = 0;
    while (factor <= 0) factor = this.factor + 0.1 * cauchy(random);
    factor = Math.min(1, factor);
    const crossing = Math.min(1, Math.max(0, this.crossing + 0.1 * normal(random)));
    const towardsBest = operator === TOWARDS_BEST;
    const base = towardsBest ? target : anyOf(parents, random).x;
    const towards = towardsBest ? parents[integerBelow(random, Math.max(2, Math.ceil(0.1 * parents.length)))].x : null;
    const x = new Array<number>(domain.size).fill(0);
    differentialVariation(domain, { target, base, towards, plus, minus, factor, crossing }, x, random);
    if (random.uniform() < 0.5) mutate(domain, x, 1 / domain.size, settings.mutationEta, random);
    return { x, operator, factor, crossing };
  }

  /** Learns from one generation: which offspring survived. */
  learn(offspring: readonly Offspring[], survived: (index: number) => boolean): void {
    const made = new Float64Array(OPERATORS);
    const lived = new Float64Array(OPERATORS);
    let steps = 0;
    let factors = 0;
    let squares = 0;
    let crossings = 0;
    offspring.forEach(({ operator, factor, crossing }, index) => {
      made[operator]++;
      if (!survived(index)) return;
      lived[operator]++;
      if (operator === CROSSOVER) return;
      steps++;
      factors += factor;
      squares += factor * factor;
      crossings += crossing;
    });
    if (steps > 0) {
      // The Lehmer mean leans to large factors, which succeed less often but count for more.
      this.factor += 0.1 * (squares / factors - this.factor);
      this.crossing += 0.1 * (crossings / steps - this.crossing);
    }
    let total = 0;
    for (let k = 0; k < OPERATORS; k++) {
      if (made[k] > 0) this.successRate[k] += 0.1 * (lived[k] / made[k] - this.successRate[k]);
      total += this.successRate[k];
    }
    const free = 1 - OPERATORS * this.settings.floor;
    for (let k = 0; k < OPERATORS; k++) {
      this.share[k] = this.settings.floor + free * (total > 0 ? this.successRate[k] / total : 1 / OPERATORS);
    }
  }
}

function anyOf(parents: readonly Member[], random: Random): Member {
  return parents[integerBelow(random, parents.length)];
}

/** The better of two by front, then by worth. */
function tournament(parents: readonly Member[], random: Random): Member {
  const a = anyOf(parents, random);
  const b = anyOf(parents, random);
  if (a.rank !== b.rank) return a.rank < b.rank ? a : b;
  return a.worth >= b.worth ? a : b;
}
