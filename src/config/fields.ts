/** Building blocks of the schemas: quantities, ranges, choices and names, each with a message for people and its JSON Schema. */
import { z } from 'zod';
import { nearestName } from './problems.ts';
import { QUANTITY_KINDS, type QuantityBounds, type QuantityKind, readQuantity } from './quantities.ts';
import type { Range } from './study.ts';

type Context = z.core.$RefinementCtx;

/** Reports a mistake with what was found in its own words. */
export function reject(context: Context, expected: string, found?: string): never {
  context.addIssue({ code: 'custom', message: expected, params: found === undefined ? {} : { found } });
  return z.NEVER;
}

/** A text with number and unit → SI. */
export function quantity(kind: QuantityKind, about: string, bounds?: QuantityBounds) {
  const { name, example } = QUANTITY_KINDS[kind];
  return z
    .unknown()
    .meta({ type: 'string', description: `${about} (${name} with its unit)`, examples: [example] })
    .transform((input, context): number => {
      const reading = readQuantity(input, kind, bounds);
      return reading.ok ? reading.value : reject(context, reading.expected, reading.found);
    });
}

/** A quantity that may be left out or empty: null. */
export function optionalQuantity(kind: QuantityKind, about: string, bounds?: QuantityBounds) {
  const { name, example } = QUANTITY_KINDS[kind];
  return z
    .unknown()
    .meta({
      type: ['string', 'null'],
      description: `${about} (${name} with its unit; may be left out)`,
      examples: [example],
    })
    .transform((input, context): number | null => {
      if (input === null) return null;
      const reading = readQuantity(input, kind, bounds);
      return reading.ok ? reading.value : reject(context, reading.expected, reading.found);
    })
    .prefault(null);
}

/** Bounds of a plain number. */
export interface NumberBounds {
  low: number;
  high: number;
  integer?: boolean;
}

/** A number without unit. */
export function plainNumber(about: string, { low, high, integer = false }: NumberBounds) {
  const expected = `${integer ? 'a whole number' : 'a number'} from ${low} to ${high}`;
  const base = integer ? z.int({ error: expected }) : z.number({ error: expected });
  return base.min(low, { error: expected }).max(high, { error: expected }).describe(about);
}

const RANGE_FORMS = '(one value, "low to high", or [low, high])';

/** A range of quantities: "120 mm to 0.2 m", "120 to 200 mm", [120 mm, 0.2 m], or one value that fixes it. */
export function quantityRange(kind: QuantityKind, about: string, bounds?: QuantityBounds) {
  const { name, example } = QUANTITY_KINDS[kind];
  return z
    .unknown()
    .meta({
      type: ['string', 'array'],
      items: { type: 'string' },
      description: `${about} ${RANGE_FORMS}`,
      examples: [`${example} to ${example}`],
    })
    .transform((input, context): Range => {
      const ends = quantityEnds(input);
      if (ends === null) return reject(context, `a range of ${name} with unit, for example "${example} to ${example}"`);
      const readings = ends.map((end) => readQuantity(end, kind, bounds));
      for (const reading of readings) if (!reading.ok) return reject(context, reading.expected, reading.found);
      const [low, high] = readings.map((reading) => (reading.ok ? reading.value : Number.NaN));
      return low <= high
        ? { low, high }
        : reject(context, 'a range whose low end comes first', `${ends[0]} to ${ends[1]}`);
    });
}

/** A range of plain numbers: 0.5 to 0.8, [0.5, 0.8], or one number that fixes it. */
export function numberRange(about: string, bounds: NumberBounds) {
  const what = `${bounds.integer ? 'whole numbers' : 'numbers'} from ${bounds.low} to ${bounds.high}`;
  return z
    .unknown()
    .meta({ type: ['string', 'number', 'array'], items: { type: 'number' }, description: `${about} ${RANGE_FORMS}` })
    .transform((input, context): Range => {
      const ends = numberEnds(input);
      if (ends === null) return reject(context, `a range of ${what}, for example "${bounds.low} to ${bounds.high}"`);
      for (const end of ends) {
        if (!(end >= bounds.low && end <= bounds.high) || (bounds.integer && !Number.isInteger(end))) {
          return reject(context, `a range of ${what}`, `${end}`);
        }
      }
      const [low, high] = ends;
      return low <= high ? { low, high } : reject(context, 'a range whose low end comes first', `${low} to ${high}`);
    });
}

/** One of a closed set of names; a number such as 304 counts as the name "304". */
export function choice<const Names extends readonly string[]>(names: Names, about: string) {
  return z
    .unknown()
    .meta({ enum: [...names], description: about })
    .transform((input, context): Names[number] => chooseName(input, names, context));
}

/** A list without repeats of names of a closed set; at least one. */
export function choices<const Names extends readonly string[]>(names: Names, about: string) {
  return z
    .array(choice(names, about), { error: `a list with some of ${names.join(', ')}` })
    .min(1, { error: `at least one of ${names.join(', ')}` })
    .max(64, { error: 'at most 64 entries' })
    .transform((list) => [...new Set(list)]);
}

/** One line of the user's own words. */
export function lineOfText(about: string, most = 200) {
  const expected = `one line of text of at most ${most} characters`;
  return z
    .string({ error: expected })
    .max(most, { error: expected })
    .regex(/^[^\n\r\t]*$/, { error: expected })
    .describe(about);
}

function chooseName<Name extends string>(input: unknown, names: readonly Name[], context: Context): Name {
  const text = typeof input === 'number' ? String(input) : input;
  const found = names.find((name) => name === text);
  if (found !== undefined) return found;
  const near = typeof text === 'string' ? nearestName(text, names) : null;
  return reject(context, `one of ${names.join(', ')}${near === null ? '' : `; did you mean "${near}"?`}`);
}

function quantityEnds(input: unknown): [unknown, unknown] | null {
  if (Array.isArray(input)) return input.length === 2 ? [input[0], input[1]] : null;
  if (typeof input !== 'string' || input.length > 100) return typeof input === 'number' ? [input, input] : null;
  const parts = input.split(/\s+to\s+/);
  if (parts.length > 2) return null;
  if (parts.length === 1) return [input, input];
  const unit = /[^\d\s.eE+\-/].*$/.exec(parts[1])?.[0] ?? '';
  const low = /^[\d\s.eE+\-/]+$/.test(parts[0]) ? `${parts[0]} ${unit}` : parts[0];
  return [low, parts[1]];
}

function numberEnds(input: unknown): [number, number] | null {
  if (typeof input === 'number') return Number.isFinite(input) ? [input, input] : null;
  const parts = Array.isArray(input)
    ? input
    : typeof input === 'string' && input.length <= 100
      ? input.split(/\s+to\s+/)
      : [];
  if (parts.length !== 2) return null;
  const [low, high] = parts.map((part) => {
    if (typeof part === 'number') return part;
    return typeof part === 'string' && /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i.test(part.trim())
      ? Number(part)
      : Number.NaN;
  });
  return Number.isFinite(low) && Number.isFinite(high) ? [low, high] : null;
}
