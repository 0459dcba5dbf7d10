/** Figures in the words of a workshop. Every function takes SI and returns text with its unit. */
import { CELSIUS } from '../durability/property-table.ts';

/** `value` with about `digits` significant digits and no exponent for ordinary sizes. */
export function figure(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return value > 0 ? 'without limit' : 'unknown';
  if (value === 0) return '0';
  const rounded = Number(value.toPrecision(digits));
  const size = Math.abs(rounded);
  return size >= 1e6 || size < 1e-3 ? rounded.toExponential(digits - 1) : String(rounded);
}

export const mm = (metres: number): string => `${figure(metres * 1e3)} mm`;
export const metres = (value: number): string => `${figure(value)} m`;
export const celsius = (kelvin: number): string => `${Math.round(kelvin - CELSIUS)} °C`;
export const bar = (pascal: number): string => `${figure(pascal / 1e5)} bar`;
export const kPa = (pascal: number): string => `${figure(pascal / 1e3)} kPa`;
export const MPa = (pascal: number): string => `${figure(pascal / 1e6)} MPa`;
export const newtons = (value: number): string => `${figure(value)} N (${figure(value / 4.4482216)} lbf)`;
export const kilograms = (value: number): string => `${figure(value)} kg`;
export const perHour = (kilogramsPerSecond: number): string => `${figure(kilogramsPerSecond * 3600)} kg/h`;
export const kilowatts = (watts: number): string => `${figure(watts / 1e3)} kW`;
export const litresPerSecond = (cubicMetresPerSecond: number): string => `${figure(cubicMetresPerSecond * 1e3)} L/s`;
export const speed = (value: number): string => `${figure(value)} m/s`;
export const percent = (share: number): string => `${figure(share * 100, 2)} %`;
export const degrees = (radians: number): string => `${figure((radians * 180) / Math.PI)}°`;
export const decibels = (value: number): string => `${Math.round(value)} dB(A)`;
/** kg/(N h) and lb/(lbf h). */
export const tsfc = (value: number): string =>
  `${figure(value * 3600)} kg/(N·h) (${figure(value * 35303.9)} lb/(lbf·h))`;

/** Seconds, minutes, hours or days, whichever reads best. */
export function duration(seconds: number): string {
  if (!Number.isFinite(seconds)) return 'without limit';
  if (seconds < 90) return `${figure(seconds, 2)} s`;
  if (seconds < 5400) return `${figure(seconds / 60, 2)} min`;
  if (seconds < 360_000) return `${figure(seconds / 3600, 2)} h`;
  return seconds < 3.6e7 ? `${figure(seconds / 3600, 2)} h` : 'more than 10 000 h';
}

/** First letter large. */
export function sentenceCase(text: string): string {
  return text === '' ? '' : text[0].toUpperCase() + text.slice(1);
}
