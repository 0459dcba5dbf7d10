/** Lognormal scatter of life: a band, never one number. */
import type { Band } from '../checks/check.ts';

/** 95 % point of the standard normal distribution. */
const Z95 = 1.6449;
/** A band tighter than this between its ends would claim what nobody knows. */
const NARROWEST_BAND = 3;

/**
 * 5–50–95 % of a lognormal life.
 * @param median s or cycles, > 0
 * @param deviation standard deviation of log10(life)
 */
export function lognormalBand(median: number, deviation: number): Band {
  const factor = Math.max(10 ** (Z95 * deviation), Math.sqrt(NARROWEST_BAND));
  return { low: median / factor, median, high: median * factor };
}

/**
 * Standard deviation of log10(life) from the strip's own scatter and from the relative error of the stress, which the
 * slope of the S–N line multiplies: s² = s_material² + (log10(1 + c)/|b|)².
 */
export function lifeDeviation(materialScatter: number, stressError: number, slope: number): number {
  return Math.hypot(materialScatter, Math.log10(1 + stressError) / Math.abs(slope));
}
