/**
 * How new designs are made from old ones: a few operators side by side, so that no operator must suit every problem. With
 * several objectives their shares are fixed, since survival then rewards the shortest steps; with one objective each is used
 * as its offspring succeed (probability matching: Goldberg, Machine Learning 5, 1990).
 */
import { simulatedBinaryCrossover } from './crossover.ts';
import { differentialVariation } from './differential.ts';
import type { Domain } from './domain.ts';
import { mutate } from './mutation.ts';
import type { Member } from './outcome.ts';
import { cauchy, integerBelow, normal, type Random } from './random.ts';

/**
 * Operators by index: crossover with mutation; differential steps from a random base or from the parent towards one of the
 * best, each crossing few coordinates or nearly all.
 */
const CROSSOVER = 0;
const OPERATORS = 5;
const towardsBest = (operator: number) => operator === 2 || operator === 4;
const crossesNearlyAll = (operator: number) => operator >= 3;

/** A share grows with this power of the success rate: sharp, yet never all or nothing. */
const SHARPNESS = 4;

/** How far success rates and step settings move towards the latest generation. */
const LEARNING = 0.1;

export interface VariationSettings {
  /** Index of simulated binary crossover; larger is nearer to the parents. */
  crossoverEta: number;
  /** Chance that a pair is crossed at all before mutation. */
  crossoverRate: number;
  mutationEta: number;
  /** Chance that a crossed pair's child is mutated with `farEta` instead: long steps reach parts of the feasible region that lie apart. */
  farMutation: number;
  farEta: number;
  /** Chance that a differential step is mutated as well. */
  stepMutation: number;
  /** Share of the draws that each operator gets; null: learnt from success, none below `floor`. */
  shares: readonly number[] | null;
  floor: number;
}

const COMMON = {
  crossoverEta: 15,
  crossoverRate: 0.9,
  mutationEta: 20,
  farEta: 2,
  stepMutation: 0.2,
  floor: 0.05,
};

/** Settings that did best on the benchmark problems. */
export function defaultVariation(objectiveCount: number): VariationSettings {
  return objectiveCount > 1
    ? { ...COMMON, farMutation: 0.2, shares: [0.7, 0.2, 0, 0, 0.1] }
    : { ...COMMON, farMutation: 0, shares: null };
}

/** A design not yet judged and how it was made. */
export interface Offspring {
  x: number[];
  operator: number;
  factor: number;
  crossing: number;
  /** The parent that it competes with where survival is one against one. */
  parent: Member | null;
}

/** What it has learnt. */
export interface VariationState {
  share: Float64Array;
  successRate: Float64Array;
  factor: number;
  crossing: number;
}

export class Variation {
  /** Share of the offspring that each operator makes. */
  private share: Float64Array;
  private successRate: Float64Array = new Float64Array(OPERATORS).fill(0.5);
  /** Centres that step factor and crossing chance are drawn about; they follow what succeeds (Tanabe and Fukunaga, CEC 2013). */
  private factor = 0.5;
  private crossing = 0.5;

  constructor(
    private readonly domain: Domain,
    private readonly settings: VariationSettings,
  ) {
    this.share = Float64Array.from(settings.shares ?? new Array<number>(OPERATORS).fill(1 / OPERATORS));
  }

  get state(): VariationState {
    const { share, successRate, factor, crossing } = this;
    return { share, successRate, factor, crossing };
  }

  set state({ share, successRate, factor, crossing }: VariationState) {
    this.share = share;
    this.successRate = successRate;
    this.factor = factor;
    this.crossing = crossing;
  }

  /**
   * One or two new designs from parents sorted best first (at least one); just one, varied from `turn`, when that is given.
   * Near the bounds, maybe equal to a parent.
   */
  make(parents: readonly Member[], random: Random, turn: Member | null): Offspring[] {
    let draw = random.uniform();
    let operator = 0;
    while (operator < OPERATORS - 1 && draw >= this.share[operator]) draw -= this.share[operator++];
    if (operator === CROSSOVER || parents.length < 5) return this.cross(parents, random, turn);
    return [this.step(operator, parents, random, turn)];
  }

  private cross(parents: readonly Member[], random: Random, turn: Member | null): Offspring[] {
    const { domain, settings } = this;
    const parent = turn ?? tournament(parents, random);
    const first = parent.x;
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
      const eta =
        settings.farMutation > 0 && random.uniform() < settings.farMutation ? settings.farEta : settings.mutationEta;
      mutate(domain, x, 1 / domain.size, eta, random);
      offspring.push({ x, operator: CROSSOVER, factor: 0, crossing: 0, parent });
    }
    return turn === null ? offspring : offspring.slice(0, 1);
  }

  private step(operator: number, parents: readonly Member[], random: Random, turn: Member | null): Offspring {
    const { domain, settings } = this;
    const parent = turn ?? tournament(parents, random);
    const target = parent.x;
    const plus = anyOf(parents, random).x;
    const minus = anyOf(parents, random).x;
    let factor = 0;
    while (factor <= 0) factor = this.factor + 0.1 * cauchy(random);
    factor = Math.min(1, factor);
    const crossing = crossesNearlyAll(operator)
      ? 0.9 + 0.1 * random.uniform()
      : Math.min(1, Math.max(0, this.crossing + 0.1 * normal(random)));
    const best = towardsBest(operator);
    const base = best ? target : anyOf(parents, random).x;
    const towards = best ? parents[integerBelow(random, Math.max(2, Math.ceil(0.1 * parents.length)))].x : null;
    const x = new Array<number>(domain.size).fill(0);
    differentialVariation(domain, { target, base, towards, plus, minus, factor, crossing }, x, random);
    if (random.uniform() < settings.stepMutation) mutate(domain, x, 1 / domain.size, settings.mutationEta, random);
    return { x, operator, factor, crossing, parent };
  }

  /** Learns from one generation: which offspring survived. */
  learn(offspring: readonly Offspring[], survived: (index: number) => boolean): void {
    const made = new Float64Array(OPERATORS);
    const lived = new Float64Array(OPERATORS);
    let factors = 0;
    let squares = 0;
    let crossings = 0;
    let few = 0;
    offspring.forEach(({ operator, factor, crossing }, index) => {
      made[operator]++;
      if (!survived(index)) return;
      lived[operator]++;
      if (operator === CROSSOVER) return;
      factors += factor;
      squares += factor * factor;
      if (crossesNearlyAll(operator)) return;
      few++;
      crossings += crossing;
    });
    if (factors > 0) {
      // The Lehmer mean leans to large factors, which succeed less often but count for more.
      this.factor += LEARNING * (squares / factors - this.factor);
    }
    if (few > 0) this.crossing += LEARNING * (crossings / few - this.crossing);
    if (this.settings.shares !== null) return;
    let total = 0;
    for (let k = 0; k < OPERATORS; k++) {
      if (made[k] > 0) this.successRate[k] += LEARNING * (lived[k] / made[k] - this.successRate[k]);
      total += this.successRate[k] ** SHARPNESS;
    }
    const free = 1 - OPERATORS * this.settings.floor;
    for (let k = 0; k < OPERATORS; k++) {
      this.share[k] =
        this.settings.floor + free * (total > 0 ? this.successRate[k] ** SHARPNESS / total : 1 / OPERATORS);
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
