/** Bands of 5–50–95 %, shown with the digits that the width of the band allows. */
import type { Band } from '../../../shared/checks/check.ts';
import { duration, durationUnit } from './duration.ts';
import { decimalsFor, fixed, MISSING } from './number.ts';
import { convert, type DisplayUnit, displayUnits } from './quantity.ts';

/** The three figures of a band and their unit, ready to be set. */
export interface BandText {
  /** With units of their own when the band spans more than one unit reads well. */
  low: string;
  median: string;
  high: string;
  unit: string;
}

const EN_DASH = '–';

/** Rounds a band: narrow bands to a quarter of their width, wide ones (more than twofold) each figure to two digits. */
function digits(low: number, median: number, high: number, maxDecimals: number): [string, string, string] {
  const width = Math.abs(high - low);
  const wide = low > 0 && high / low > 2;
  if (wide) {
    const two = (v: number) => fixed(Number(v.toPrecision(2)), Math.min(maxDecimals, decimalsFor(v, 2)));
    return [two(low), two(median), two(high)];
  }
  if (width === 0) {
    const text = fixed(Number(median.toPrecision(3)), Math.min(maxDecimals, decimalsFor(median, 3)));
    return [text, text, text];
  }
  const exponent = Math.floor(Math.log10(width / 4));
  const step = 10 ** exponent;
  const decimals = Math.min(maxDecimals, Math.max(0, -exponent));
  const show = (v: number) => fixed(Math.round(v / step) * step, decimals);
  return [show(low), show(median), show(high)];
}

function inUnit(band: Band, to: DisplayUnit): BandText {
  const [low, median, high] = digits(
    convert(band.low, to),
    convert(band.median, to),
    convert(band.high, to),
    to.maxDecimals ?? 9,
  );
  return { low, median, high, unit: to.symbol };
}

/** The band in its metric unit. */
export function bandMetric(band: Band | null, si: string): BandText | null {
  if (!band) return null;
  if (si === 's') {
    const to = durationUnit(band.median);
    const text = inUnit(band, { symbol: to.unit, factor: 1 / to.seconds, digits: 2 });
    // Minutes to hundreds of hours: nobody reads 0.068 h.
    return band.low > 0 && band.low < 0.1 * to.seconds
      ? { ...text, low: duration(band.low, 2), high: duration(band.high, 2) }
      : text;
  }
  return inUnit(band, displayUnits(si, band.median).metric);
}

/** The band in its inch-pound unit; null when there is none. */
export function bandImperial(band: Band | null, si: string): BandText | null {
  if (!band) return null;
  const to = displayUnits(si, band.median).imperial;
  return to ? inUnit(band, to) : null;
}

/** "34 min (12–95)"; a dash for no band. */
export function bandPhrase(text: BandText | null): string {
  if (!text) return MISSING;
  const unit = text.unit ? `\u00a0${text.unit}` : '';
  return `${text.median}${unit} (${text.low}${EN_DASH}${text.high})`;
}

/** "12–95 min". */
export function rangePhrase(text: BandText | null): string {
  if (!text) return MISSING;
  return `${text.low}${EN_DASH}${text.high}${text.unit && !text.high.includes('\u00a0') ? `\u00a0${text.unit}` : ''}`;
}
