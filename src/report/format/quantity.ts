/** SI values in the units of a workshop: metric first, then the inch-pound twin. */
import { duration } from './duration.ts';
import { decimalsFor, fixed, MISSING } from './number.ts';

/** One way to show an SI value: shown = SI · factor + offset. */
export interface DisplayUnit {
  symbol: string;
  factor: number;
  offset?: number;
  digits: number;
  /** Decimals are never more than this. */
  maxDecimals?: number;
}

interface Pair {
  metric: DisplayUnit;
  imperial: DisplayUnit | null;
}

// Exact by definition: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, g = 9.80665 m/s² (SI Brochure; NIST SP 811).
const INCH = 0.0254;
const POUND = 0.45359237;
const POUND_FORCE = POUND * 9.80665;
const PSI = POUND_FORCE / (INCH * INCH);
const FOOT = 12 * INCH;
/** kBtu/h in W: 1 Btu(IT) = 1055.05585262 J (NIST SP 811). */
const KBTU_PER_HOUR = 1055.05585262e3 / 3600;

/** What the pascals of a stress are called here: workshops read stress in MPa and ksi, pressure in bar and psi. */
export const STRESS = 'Pa of stress';
/** Longer than any engine: distances between people and things. */
const METRES_FROM = 6;

/** How much is to be shown decides between g and kg, kPa and bar. */
const PAIRS: Record<string, (size: number) => Pair> = {
  m: (size) =>
    size >= METRES_FROM
      ? pair(unit('m', 1, 3, 1), unit('ft', 1 / FOOT, 3, 0))
      : size < 0.01
        ? pair(unit('mm', 1e3, 3, 2), unit('in', 1 / INCH, 3, 4))
        : pair(unit('mm', 1e3, 4, size < 0.5 ? 1 : 0), unit('in', 1 / INCH, 4, size < 0.5 ? 3 : 2)),
  'm²': () => pair(unit('cm²', 1e4, 3), unit('in²', 1 / INCH ** 2, 3)),
  'm³': () => pair(unit('L', 1e3, 3), unit('US gal', 1 / 3.785411784e-3, 3)),
  Pa: (size) =>
    size < 20e3
      ? pair(unit('kPa', 1e-3, 3), unit('psi', 1 / PSI, 3))
      : pair(unit('bar', 1e-5, 3, 2), unit('psi', 1 / PSI, 3)),
  [STRESS]: () => pair(unit('MPa', 1e-6, 3), unit('ksi', 1e-3 / PSI, 3)),
  K: () => pair({ ...unit('°C', 1, 4, 0), offset: -273.15 }, { ...unit('°F', 1.8, 4, 0), offset: -459.67 }),
  N: () => pair(unit('N', 1, 3), unit('lbf', 1 / POUND_FORCE, 3)),
  kg: (size) =>
    size < 1 ? pair(unit('g', 1e3, 3), unit('oz', 16 / POUND, 2)) : pair(unit('kg', 1, 3), unit('lb', 1 / POUND, 3)),
  'kg/s': () => pair(unit('g/s', 1e3, 3), unit('lb/min', 60 / POUND, 2)),
  'kg/(N s)': () => pair(unit('kg/(N·h)', 3600, 3), unit('lb/(lbf·h)', (3600 * POUND_FORCE) / POUND, 3)),
  Hz: () => pair(unit('Hz', 1, 3, 0), null),
  'm/s': () => pair(unit('m/s', 1, 3), unit('ft/s', 1 / FOOT, 3)),
  'N/m': () => pair(unit('N/mm', 1e-3, 3), unit('lbf/in', INCH / POUND_FORCE, 3)),
  W: (size) => pair(size < 1e3 ? unit('W', 1, 3) : unit('kW', 1e-3, 3), unit('kBtu/h', 1 / KBTU_PER_HOUR, 3)),
  'm³/s': () => pair(unit('L/s', 1e3, 3), unit('ft³/min', 60 / FOOT ** 3, 3)),
  rad: () => pair(unit('°', 180 / Math.PI, 3, 1), null),
  'W/m²': () => pair(unit('kW/m²', 1e-3, 3), null),
  'N s/kg': () => pair(unit('N·s/kg', 1, 3), unit('lbf·s/lb', POUND / POUND_FORCE, 3)),
  'dB(A)': () => pair(unit('dB(A)', 1, 3, 0), null),
  '': () => pair(unit('', 1, 3, 2), null),
};

function unit(symbol: string, factor: number, digits: number, maxDecimals?: number): DisplayUnit {
  return { symbol, factor, digits, maxDecimals };
}

function pair(metric: DisplayUnit, imperial: DisplayUnit | null): Pair {
  return { metric, imperial };
}

/** "kg/(N·s)" and "kg/(N s)" are the same unit; so are m2 and m². */
function normalise(symbol: string): string {
  return symbol
    .trim()
    .replace(/·/g, ' ')
    .replace('m^2', 'm²')
    .replace('m2', 'm²')
    .replace('m^3', 'm³')
    .replace('m3', 'm³');
}

/** The metric and inch-pound units for an SI unit, fit for values of the given size; null: shown as it is. */
export function displayUnits(si: string, size: number): Pair {
  const known = PAIRS[normalise(si)];
  return known ? known(Math.abs(size)) : pair(unit(si, 1, 3), null);
}

/** Value in the display unit, as a number. */
export function convert(value: number, to: DisplayUnit): number {
  return value * to.factor + (to.offset ?? 0);
}

/** The figure alone, with the unit's own digits. */
export function figure(value: number | null, to: DisplayUnit, digits = to.digits): string {
  if (value === null || !Number.isFinite(value)) return MISSING;
  const shown = convert(value, to);
  return fixed(Number(shown.toPrecision(digits)), Math.min(to.maxDecimals ?? 9, decimalsFor(shown, digits)));
}

function withUnit(text: string, symbol: string): string {
  if (text === MISSING || symbol === '') return text;
  return symbol === '°' ? text + symbol : `${text}\u00a0${symbol}`;
}

/** "450 N" for SI value and unit; durations in the unit that reads best. */
export function metric(value: number | null, si: string): string {
  if (value === null || !Number.isFinite(value)) return MISSING;
  if (normalise(si) === 's') return duration(value);
  const { metric: to } = displayUnits(si, value);
  return withUnit(figure(value, to), to.symbol);
}

/** The inch-pound twin alone, or '' when the unit has none. */
export function imperial(value: number | null, si: string): string {
  if (value === null || !Number.isFinite(value)) return '';
  const { imperial: to } = displayUnits(si, value);
  return to ? withUnit(figure(value, to), to.symbol) : '';
}

/** Distances between people and engines, which nobody measures in mm: "5 m (16 ft)". */
export function distance(metres: number): string {
  return `${fixed(metres, metres < 10 && !Number.isInteger(metres) ? 1 : 0)}\u00a0m (${fixed(metres / FOOT, 0)}\u00a0ft)`;
}

/** "450 N (101 lbf)". */
export function both(value: number | null, si: string): string {
  const twin = imperial(value, si);
  return metric(value, si) + (twin ? ` (${twin})` : '');
}
