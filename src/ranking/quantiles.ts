/** Order statistics of draws. */
import type { Band } from '../../shared/checks/check.ts';

/** Fewest running draws from which a 5 to 95 % band is read. */
const FEWEST = 5;

/** Quantile by linear interpolation between order statistics (Hyndman and Fan 1996, type 7). `sorted` rises; share 0 to 1. */
export function quantile(sorted: readonly number[], share: number): number {
  if (sorted.length === 0) throw new RangeError('a quantile of nothing was asked for');
  const place = (sorted.length - 1) * share;
  const below = Math.floor(place);
  const above = Math.min(sorted.length - 1, below + 1);
  return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
}

/** 5–50–95 % of the finite values; null when too few are left to say. */
export function bandOf(values: readonly (number | null)[]): Band | null {
  const sorted = values
    .filter((value): value is number => value !== null && Number.isFinite(value))
    .sort((a, b) => a - b);
  if (sorted.length < FEWEST) return null;
  return { low: quantile(sorted, 0.05), median: quantile(sorted, 0.5), high: quantile(sorted, 0.95) };
}

/** Standard-normal distance between the median and the 5 or 95 % point. */
const FROM_MEDIAN_TO_TAIL = 1.6448536269514722;
/** … and the quartiles. */
const FROM_MEDIAN_TO_QUARTILE = 0.6744897501960817;

/** The value that three draws in four stay below, read from the band as if each side were normal. */
export function upperQuartile({ median, high }: Band): number {
  return median + (FROM_MEDIAN_TO_QUARTILE / FROM_MEDIAN_TO_TAIL) * (high - median);
}

/** The value that three draws in four exceed, read from the band as if the low side were log-normal; values above 0. */
export function lowerQuartileLog({ low, median }: Band): number {
  return median * (low / median) ** (FROM_MEDIAN_TO_QUARTILE / FROM_MEDIAN_TO_TAIL);
}

/** Standard deviation of ln(value) that a 5–95 % band implies. */
export function logDeviation({ low, high }: Band): number {
  return low > 0 && high > low ? Math.log(high / low) / (2 * FROM_MEDIAN_TO_TAIL) : 0;
}
