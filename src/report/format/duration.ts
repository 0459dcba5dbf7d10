/** Times from microseconds to days, in the unit that reads best. */
import { MISSING, significant } from './number.ts';

const STEPS: { below: number; unit: string; seconds: number }[] = [
  { below: 1, unit: 'ms', seconds: 1e-3 },
  { below: 120, unit: 's', seconds: 1 },
  { below: 120 * 60, unit: 'min', seconds: 60 },
  { below: 1000 * 3600, unit: 'h', seconds: 3600 },
];

/** The unit in which a time of this size reads best. */
export function durationUnit(seconds: number): { unit: string; seconds: number } {
  const size = Math.abs(seconds);
  return STEPS.find((step) => size < step.below) ?? { unit: 'days', seconds: 86400 };
}

/** 0.0042 → "4.20 ms"; 5400 → "90 min". Two digits from a second upwards, three below. */
export function duration(seconds: number | null, digits?: number): string {
  if (seconds === null || !Number.isFinite(seconds)) return MISSING;
  if (seconds === 0) return '0\u00a0s';
  const { unit, seconds: size } = durationUnit(seconds);
  return `${significant(seconds / size, digits ?? (Math.abs(seconds) < 1 ? 3 : 2))}\u00a0${unit}`;
}

/** Wall time of a run: "2 min 41 s", "7 h 3 min". */
export function elapsed(seconds: number): string {
  const whole = Math.max(0, Math.round(seconds));
  if (whole < 60) return `${whole} s`;
  if (whole < 3600) return `${Math.floor(whole / 60)} min ${whole % 60} s`;
  return `${Math.floor(whole / 3600)} h ${Math.floor((whole % 3600) / 60)} min`;
}
