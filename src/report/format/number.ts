/** Numbers as people read them: true minus, thousands commas, no more digits than they deserve. */

const MINUS = '−';
/** What stands where a figure is missing. */
export const MISSING = '–';

/** Decimals that show `value` with the given significant digits; never negative. */
export function decimalsFor(value: number, digits: number): number {
  if (value === 0 || !Number.isFinite(value)) return 0;
  // Round first: 9.97 to two digits is 10, which needs no decimal.
  const rounded = Number(Math.abs(value).toPrecision(digits));
  return Math.max(0, digits - 1 - Math.floor(Math.log10(rounded)));
}

/** A value with fixed decimals; −0 is shown as 0. */
export function fixed(value: number | null, decimals: number): string {
  if (value === null || !Number.isFinite(value)) return MISSING;
  const text = Math.abs(value).toFixed(decimals);
  const [whole, fraction] = text.split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+(?!\d))/g, ',');
  const sign = value < 0 && Number(text) !== 0 ? MINUS : '';
  return sign + grouped + (fraction ? `.${fraction}` : '');
}

/** A value with significant digits: 1234.5 → "1,230", 0.0456 → "0.046" for two. */
export function significant(value: number | null, digits = 3): string {
  if (value === null || !Number.isFinite(value)) return MISSING;
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (size < 1e-4 || size >= 1e9) return scientific(value, digits);
  const rounded = Number(value.toPrecision(digits));
  return fixed(rounded, decimalsFor(value, digits));
}

/** 2.4e-7 → "2.4 × 10^−7", for the few constants that need it. */
export function scientific(value: number, digits = 3): string {
  const [mantissa, exponent] = value.toExponential(digits - 1).split('e');
  const power = Number(exponent);
  return `${mantissa.replace('-', MINUS)} × 10^${power < 0 ? MINUS : ''}${Math.abs(power)}`;
}

/** 0.123 → "12 %"; signed puts a plus before gains. One decimal below 10 %, one digit below 0.1 %. */
export function percent(fraction: number | null, options: { signed?: boolean } = {}): string {
  if (fraction === null || !Number.isFinite(fraction)) return MISSING;
  const value = fraction * 100;
  const size = Math.abs(value);
  const decimals = size === 0 || size >= 9.95 ? 0 : size >= 0.095 || size < 1e-4 ? 1 : decimalsFor(value, 1);
  const text = fixed(value, decimals);
  return `${options.signed && value > 0 ? '+' : ''}${text} %`;
}

/** A share of draws: never "100 %" or "0 %" unless every or no draw says so. */
export function chance(share: number, draws: number): string {
  if (share >= 1) return draws > 0 ? `all ${draws} draws` : '100 %';
  if (share <= 0) return draws > 0 ? `none of ${draws} draws` : '0 %';
  return `${Math.min(99, Math.max(1, Math.round(share * 100)))} %`;
}

/** "1 evaluation", "12,000 evaluations". */
export function count(n: number, singular: string, plural = `${singular}s`): string {
  return `${fixed(n, 0)} ${n === 1 ? singular : plural}`;
}
