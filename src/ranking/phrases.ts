/** Figures of the results in sentences. */
import type { Band } from '../../shared/checks/check.ts';
import { duration, figure, newtons, tsfc } from '../../shared/checks/say.ts';

/** Newtons per pound of force. */
const POUND_FORCE = 4.4482216152605;

/** A band wider than this share of its middle deserves two digits. */
const WIDE = 0.1;

/** "140 N (32 lbf; 5–95 %: 120 to 160 N)". */
export function thrustWords(value: number, band: Band | null): string {
  if (band === null) return newtons(value);
  const digits = band.high - band.low > WIDE * value ? 2 : 3;
  const words = (newton: number): string => figure(newton, digits);
  return `${words(value)} N (${words(value / POUND_FORCE)} lbf; 5–95 %: ${words(band.low)} to ${words(band.high)} N)`;
}

/** "0.27 kg/(N·h) (2.65 lb/(lbf·h))". */
export function fuelWords(value: number): string {
  return tsfc(value);
}

/** "38 min (5–95 %: 12 min to 2 h)". */
export function lifeWords(band: Band): string {
  return `${duration(band.median)} (5–95 %: ${duration(band.low)} to ${duration(band.high)})`;
}

/** "61 of 64". */
export function shareWords(share: number, draws: number): string {
  return `${Math.round(share * draws)} of ${draws}`;
}

/** "12 % more", "2.1 times as long": how `value` stands to `other`. */
export function moreOrLess(value: number, other: number, more: string, less: string): string {
  const ratio = value / other;
  if (ratio >= 2) return `${figure(ratio, 2)} times as ${more === 'more' ? 'much' : more}`;
  if (ratio > 1.005) return `${figure((ratio - 1) * 100, 2)} % ${more}`;
  if (ratio < 0.995) return `${figure((1 - ratio) * 100, 2)} % ${less}`;
  return 'as much';
}

/** "2.1 times as long", "1/420 as long", "as long": how long `value` lasts beside `other`. */
export function asLong(value: number, other: number): string {
  const ratio = value / other;
  if (ratio < 0.1) return `1/${figure(1 / ratio, 2)} as long`;
  return Math.abs(ratio - 1) < 0.05 ? 'as long' : `${figure(ratio, 2)} times as long`;
}

/** "12 % more fuel than C1", "as much fuel as C1". */
export function fuelAgainst(value: number, other: number, id: string): string {
  const words = moreOrLess(value, other, 'more', 'less');
  return `${words} fuel ${words.includes('as much') ? 'as' : 'than'} ${id}`;
}

/** "valve-follows" → "valve follows". */
export function constraintWords(id: string): string {
  return id.replaceAll('-', ' ');
}

/** First letter small, unless the word is an abbreviation or a name in capitals. */
export function withoutCapital(sentence: string): string {
  return /^[A-Z][a-z ]/.test(sentence) ? sentence[0].toLowerCase() + sentence.slice(1) : sentence;
}

/** Ends with exactly one full stop. */
export function closed(sentence: string): string {
  return `${sentence.trim().replace(/[.\s]+$/, '')}.`;
}
