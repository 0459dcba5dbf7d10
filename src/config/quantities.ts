/** Quantities as people write them: "40 lbf", "1 1/4 in", "18 gauge", "12 degC". Read, checked for dimension and range, turned to SI. */
import { gaugeTable } from '../../shared/durability/sheet-gauge.ts';
import { type DimensionExponents, readUnit } from './unit-system.ts';

export type QuantityKind = keyof typeof QUANTITY_KINDS;

interface Kind {
  /** With its article, for messages. */
  name: string;
  example: string;
  dimensions: DimensionExponents;
  /** SI bounds outside which the text is taken for a slip of the pen. */
  low: number;
  high: number;
}

//                              kg  m  s  A  K cd mol rad bit
const LENGTH: DimensionExponents = [0, 1, 0, 0, 0, 0, 0, 0, 0];
const PRESSURE: DimensionExponents = [1, -1, -2, 0, 0, 0, 0, 0, 0];

export const QUANTITY_KINDS = {
  length: { name: 'a length', example: '1.25 in', dimensions: LENGTH, low: 0, high: 100 },
  thickness: { name: 'a thickness', example: '18 gauge', dimensions: LENGTH, low: 1e-5, high: 0.05 },
  area: { name: 'an area', example: '600 cm^2', dimensions: [0, 2, 0, 0, 0, 0, 0, 0, 0], low: 0, high: 100 },
  volume: { name: 'a volume', example: '100 L', dimensions: [0, 3, 0, 0, 0, 0, 0, 0, 0], low: 0, high: 1000 },
  mass: { name: 'a mass', example: '250 g', dimensions: [1, 0, 0, 0, 0, 0, 0, 0, 0], low: 0, high: 1e5 },
  force: { name: 'a force', example: '40 lbf', dimensions: [1, 1, -2, 0, 0, 0, 0, 0, 0], low: 0, high: 1e6 },
  'gauge pressure': { name: 'a gauge pressure', example: '3 bar', dimensions: PRESSURE, low: 0, high: 4e7 },
  'absolute pressure': { name: 'an absolute pressure', example: '980 mbar', dimensions: PRESSURE, low: 1e4, high: 2e5 },
  temperature: {
    name: 'a temperature',
    example: '12 degC',
    dimensions: [0, 0, 0, 0, 1, 0, 0, 0, 0],
    low: 200,
    high: 340,
  },
  time: { name: 'a time', example: '45 min', dimensions: [0, 0, 1, 0, 0, 0, 0, 0, 0], low: 0, high: 3.2e8 },
  tsfc: {
    name: 'a thrust-specific fuel consumption',
    example: '2.5 lb/(lbf h)',
    dimensions: [0, -1, 1, 0, 0, 0, 0, 0, 0],
    low: 0,
    high: 0.01,
  },
  'volume flow': {
    name: 'a volume flow',
    example: '200 L/min',
    dimensions: [0, 3, -1, 0, 0, 0, 0, 0, 0],
    low: 0,
    high: 1000,
  },
  power: { name: 'a power', example: '5 kW', dimensions: [1, 2, -3, 0, 0, 0, 0, 0, 0], low: 0, high: 1e8 },
  frequency: { name: 'a frequency', example: '120 Hz', dimensions: [0, 0, -1, 0, 0, 0, 0, 0, 0], low: 0, high: 1e5 },
  stiffness: { name: 'a spring rate', example: '2 N/mm', dimensions: [1, 0, -2, 0, 0, 0, 0, 0, 0], low: 0, high: 1e9 },
  angle: { name: 'an angle', example: '12 deg', dimensions: [0, 0, 0, 0, 0, 0, 0, 1, 0], low: 0, high: 2 * Math.PI },
  speed: { name: 'a speed', example: '6 m/s', dimensions: [0, 1, -1, 0, 0, 0, 0, 0, 0], low: 0, high: 1000 },
  data: { name: 'a size in bytes', example: '20 MB', dimensions: [0, 0, 0, 0, 0, 0, 0, 0, 1], low: 0, high: 8e10 },
} as const satisfies Record<string, Kind>;

export interface QuantityBounds {
  /** SI, inclusive; take the place of the kind's own. */
  low?: number;
  high?: number;
  /** Refuse zero (default true). */
  positive?: boolean;
}

export type QuantityReading = { ok: true; value: number } | { ok: false; expected: string; found: string };

/** Longest text that is looked at, characters. */
export const QUANTITY_TEXT_LIMIT = 48;

/** Keeps the noise of unit conversion out of the canonical form: 18 mm is 0.018 m. */
const SIGNIFICANT_DIGITS = 12;

const NUMBER = String.raw`[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?`;
const NUMBER_ALONE = new RegExp(`^${NUMBER}$`);
const NUMBER_AND_UNIT = new RegExp(`^(${NUMBER})\\s*([^\\d\\s.].*)$`);
const FRACTION = /^([+-]?)(?:(\d{1,6})[\s-]+)?(\d{1,6})\s*\/\s*(\d{1,6})(?=\s*[a-zA-Z"'″′])/;
const GAUGE = /^(\d{1,2})\s*(?:gauge|gage|ga|swg)$/i;

/** Reads one quantity to SI, or says what was expected and what was found. */
export function readQuantity(input: unknown, kind: QuantityKind, bounds: QuantityBounds = {}): QuantityReading {
  const { name, example } = QUANTITY_KINDS[kind];
  const wanted = `${name} with its unit, for example "${example}"`;
  const refuse = (found: string, expected = wanted): QuantityReading => ({ ok: false, expected, found });

  if (input === undefined) return refuse('nothing');
  if (input === null) return refuse('an empty value');
  if (typeof input === 'number') return refuse(`the number ${input} without a unit`);
  if (typeof input !== 'string') return refuse(Array.isArray(input) ? 'a list' : `a ${typeof input}`);
  const text = input.trim();
  if (text.length > QUANTITY_TEXT_LIMIT) return refuse(`a text of ${text.length} characters`);
  const quoted = JSON.stringify(text);
  if (NUMBER_ALONE.test(text)) return refuse(`the number ${text} without a unit`);

  const gauge = GAUGE.exec(text);
  if (gauge) return readGauge(gauge, kind, bounds, quoted, wanted);

  if (/\d,\d/.test(text)) return refuse(`${quoted} (write a decimal point, not a comma)`);
  const match = NUMBER_AND_UNIT.exec(withDecimalFraction(text));
  if (!match) return refuse(quoted);
  const unitText = plainUnit(match[2]);
  const reading = readUnit(`${match[1]} ${unitText}`);
  if (!reading.ok) return refuse(`${quoted}, whose unit is not known`);
  const { dimensions } = QUANTITY_KINDS[kind] as Kind;
  if (!dimensions.every((exponent, index) => exponent === reading.dimensions[index])) {
    return refuse(`${quoted}, which is ${kindOf(reading.dimensions)}${hintFor(kind, unitText)}`);
  }
  if (kind === 'absolute pressure' && /^(psig|barg)$/.test(unitText))
    return refuse(`${quoted}, which is a gauge pressure`);
  if (kind === 'gauge pressure' && unitText === 'psia') return refuse(`${quoted}, which is an absolute pressure`);
  return inBounds(reading.value, kind, bounds, quoted);
}

function readGauge(
  match: RegExpExecArray,
  kind: QuantityKind,
  bounds: QuantityBounds,
  quoted: string,
  wanted: string,
): QuantityReading {
  if (/swg/i.test(match[0])) {
    return {
      ok: false,
      expected: `${wanted}, or a gauge of the manufacturers' standard`,
      found: `${quoted}, a wire gauge`,
    };
  }
  if (kind !== 'length' && kind !== 'thickness')
    return { ok: false, expected: wanted, found: `${quoted}, which is a sheet thickness` };
  const thickness = gaugeTable.find(({ gauge }) => gauge === Number(match[1]))?.thickness;
  if (thickness === undefined) {
    const expected = `a manufacturers' standard gauge from ${gaugeTable[0].gauge} to ${gaugeTable[gaugeTable.length - 1].gauge}`;
    return { ok: false, expected, found: quoted };
  }
  return inBounds(thickness, kind, bounds, quoted);
}

function inBounds(value: number, kind: QuantityKind, bounds: QuantityBounds, quoted: string): QuantityReading {
  const { low, high, name } = QUANTITY_KINDS[kind] as Kind;
  const least = bounds.low ?? low;
  const most = bounds.high ?? high;
  const positive = bounds.positive ?? true;
  if (!Number.isFinite(value)) return { ok: false, expected: `${name} that is finite`, found: quoted };
  if (value < least || value > most || (positive && value <= 0)) {
    const above = positive && least <= 0 ? 'above 0' : `at least ${siText(least, kind)}`;
    return { ok: false, expected: `${name} ${above} and at most ${siText(most, kind)}`, found: quoted };
  }
  return { ok: true, value: Number(value.toPrecision(SIGNIFICANT_DIGITS)) };
}

/** "1 1/4 in" → "1.25 in"; other text unchanged. */
function withDecimalFraction(text: string): string {
  const match = FRACTION.exec(text);
  if (!match || Number(match[4]) === 0) return text;
  const value = Number(match[2] ?? 0) + Number(match[3]) / Number(match[4]);
  return `${match[1]}${value} ${text.slice(match[0].length)}`;
}

/** Spellings that keyboards and suppliers use → the ones that the unit reader knows. */
function plainUnit(unit: string): string {
  return unit
    .trim()
    .replace(/^(?:″|"|”)$/, 'in')
    .replace(/^(?:′|')$/, 'ft')
    .replace(/°\s*C/g, 'degC')
    .replace(/°\s*F/g, 'degF')
    .replace(/°/g, 'deg')
    .replace(/[·⋅×]/g, ' ')
    .replace(/²/g, '^2')
    .replace(/³/g, '^3')
    .replace(/[µμ]m\b/g, 'um');
}

function kindOf(dimensions: number[]): string {
  for (const kind of Object.values(QUANTITY_KINDS) as Kind[]) {
    if (kind.dimensions.every((exponent, index) => exponent === dimensions[index])) return kind.name;
  }
  return 'something else';
}

function hintFor(kind: QuantityKind, unit: string): string {
  if (kind === 'force' && /^(lb|lbs|pounds?|kg)$/.test(unit))
    return ' (a pound of force is "lbf", a kilogram of force "kgf")';
  if (kind === 'temperature' && /^[CF]$/.test(unit)) return ` (write "deg${unit}")`;
  return '';
}

const SI_SYMBOL: Partial<Record<QuantityKind, string>> = {
  length: 'm',
  thickness: 'm',
  area: 'm^2',
  volume: 'm^3',
  mass: 'kg',
  force: 'N',
  'gauge pressure': 'Pa',
  'absolute pressure': 'Pa',
  temperature: 'K',
  time: 's',
  tsfc: 'kg/(N s)',
  'volume flow': 'm^3/s',
  power: 'W',
  frequency: 'Hz',
  stiffness: 'N/m',
  angle: 'rad',
  speed: 'm/s',
  data: 'bit',
};

function siText(value: number, kind: QuantityKind): string {
  return `${Number(value.toPrecision(6))} ${SI_SYMBOL[kind]}`;
}
