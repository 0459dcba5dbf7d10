/**
 * The proportions that pulsejet ejectors have been tested in, and how credit fades outside them.
 *
 * Diameters and lengths as in NASA/TM-2002-211711 and NASA/TM-2006-214224 (from memory, medium confidence for the middle
 * of each range, low for its ends).
 */
import type { AugmenterProportions } from './unsteady-gain.ts';

interface TestedSpan {
  low: number;
  high: number;
  /** How it is told to a builder. */
  label: string;
}

export const TESTED_SPANS: Readonly<Record<keyof AugmenterProportions, TestedSpan>> = {
  diameter: { low: 1.7, high: 3.4, label: 'augmenter diameter over exit diameter' },
  length: { low: 4, high: 18, label: 'augmenter length over exit diameter' },
  gap: { low: 0, high: 4, label: 'gap over exit diameter' },
};

/** How soon credit is lost beyond the range, in natural logarithm of the proportion. */
const FADE = 0.4;

/** Part of the extra thrust that may still be claimed, 1 inside the tested range and towards 0 far outside. */
export function testedCredit(proportions: AugmenterProportions): number {
  let credit = 1;
  for (const key of ['diameter', 'length', 'gap'] as const) {
    const beyond = logBeyond(proportions[key], TESTED_SPANS[key]);
    credit *= Math.exp(-((beyond / FADE) ** 2));
  }
  return credit;
}

/** One sentence for each proportion outside the tested range. */
export function untestedProportions(proportions: AugmenterProportions): string[] {
  return (['diameter', 'length', 'gap'] as const)
    .filter((key) => proportions[key] < TESTED_SPANS[key].low || proportions[key] > TESTED_SPANS[key].high)
    .map((key) => {
      const { low, high, label } = TESTED_SPANS[key];
      return `${label} is ${proportions[key].toFixed(2)}, outside the tested ${low} to ${high}`;
    });
}

function logBeyond(value: number, { low, high }: TestedSpan): number {
  if (value > high) return Math.log(value / high);
  // A gap of zero is inside; below zero the exit stands in the bell, measured against the bell's own depth.
  if (value < low) return low > 0 ? Math.log(low / Math.max(value, 1e-6)) : low - value;
  return 0;
}
