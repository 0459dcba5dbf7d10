/**
 * Differential variation (Storn and Price, Journal of Global Optimization 11, 1997): a design moves along the differences
 * between others, so steps shrink and turn with the population itself.
 */
import { CHOICE, type Domain, INTEGER } from './domain.ts';
import { integerBelow, type Random } from './random.ts';

export interface DifferentialMove {
  /** Design that is varied; coordinates that do not cross stay as here. */
  target: readonly number[];
  base: readonly number[];
  /** Where the base is drawn to, e.g. one of the best designs; null: nowhere. */
  towards: readonly number[] | null;
  plus: readonly number[];
  minus: readonly number[];
  /** Step factor and chance that a coordinate crosses. */
  factor: number;
  crossing: number;
}

/** Writes the varied design into `child`. Whole coordinates round up or down by chance; a choice follows one of the donors. */
export function differentialVariation(domain: Domain, move: DifferentialMove, child: number[], random: Random): void {
  const { target, base, towards, plus, minus, factor, crossing } = move;
  const certain = integerBelow(random, domain.size);
  for (let i = 0; i < domain.size; i++) {
    child[i] = target[i];
    if (i !== certain && random.uniform() >= crossing) continue;
    if (domain.kind[i] === CHOICE) {
      const pick = random.uniform();
      child[i] = pick < factor / 2 ? plus[i] : pick < factor && towards ? towards[i] : base[i];
      continue;
    }
    let value = base[i] + factor * (plus[i] - minus[i]);
    if (towards) value += factor * (towards[i] - base[i]);
    // Halfway back to the target when a bound is crossed: bounds attract without collecting copies.
    if (value < domain.low[i]) value = 0.5 * (domain.low[i] + target[i]);
    else if (value > domain.high[i]) value = 0.5 * (domain.high[i] + target[i]);
    if (domain.kind[i] === INTEGER) value = Math.floor(value + random.uniform());
    child[i] = Math.min(Math.max(value, domain.low[i]), domain.high[i]);
  }
}
