/** Turns a sound text into one that is odd in one to four ways. */
import { integerBelow, type Random } from '../../search/random.ts';

/** Values that readers of such files have stumbled over. */
const VALUES = [
  '',
  '~',
  'null',
  'true',
  '-1',
  '0',
  '1e999',
  '-1e999',
  '.nan',
  '.inf',
  '0x7fffffffffffffff',
  '9'.repeat(400),
  '40 lb',
  '3 m/s',
  '1 to',
  '9 mm to 1 mm',
  '1 mm to 1 kg',
  '1e308 m to 1e308 km',
  '18 gauge',
  '[]',
  '{}',
  '[[[[[[[[[[',
  '{a: {a: {a: {a: {a: 1}}}}}',
  '"\\u0000"',
  "'unclosed",
  '"unclosed',
  '&a [*a]',
  '*nobody',
  '!!js/function "x"',
  '!!binary "=="',
  '<<: *a',
  '../../etc/passwd',
  '<script>alert(1)</script>',
  '{{constructor.constructor("return process")()}}',
  '$' + '{process.exit()}',
  '2012-12-12',
  '12:30:45',
  'no',
  '\ud800',
  '\u202e40 lbf',
  'é'.repeat(300),
  '|',
  '>-',
  '? ',
  '%YAML 9.9',
];
const LINES = [
  '---',
  '...',
  '__proto__: { polluted: true }',
  'constructor: 1',
  '<<: { a: 1 }',
  '\tx: 1',
  'a: &a [*a, *a]',
  '- 1',
  '? [a]: b',
  '# note',
];

type Mutation = (random: Random, lines: string[], other: string[]) => void;

const MUTATIONS: readonly Mutation[] = [
  // The value of a key.
  (random, lines) => {
    const at = integerBelow(random, lines.length);
    lines[at] = lines[at].replace(/:.*$/, `: ${VALUES[integerBelow(random, VALUES.length)]}`);
  },
  // A number within a line.
  (random, lines) => {
    const numbered = lines.flatMap((line, i) => (/\d/.test(line) ? [i] : []));
    if (numbered.length === 0) return;
    const at = numbered[integerBelow(random, numbered.length)];
    const value = VALUES[integerBelow(random, VALUES.length)];
    lines[at] = lines[at].replace(/\d[\d.]*/, () => value);
  },
  // Characters of a line.
  (random, lines) => {
    const at = integerBelow(random, lines.length);
    const cut = integerBelow(random, lines[at].length + 1);
    const odd = String.fromCodePoint(integerBelow(random, random.uniform() < 0.7 ? 128 : 0xd800));
    lines[at] = lines[at].slice(0, cut) + odd + lines[at].slice(cut + integerBelow(random, 6));
  },
  // Lines: lost, doubled, moved, shifted, foreign.
  (random, lines) => void lines.splice(integerBelow(random, lines.length), 1 + integerBelow(random, 3)),
  (random, lines) => {
    const at = integerBelow(random, lines.length);
    lines.splice(at, 0, lines[at]);
  },
  (random, lines) => {
    const [line] = lines.splice(integerBelow(random, lines.length), 1);
    lines.splice(integerBelow(random, lines.length + 1), 0, line);
  },
  (random, lines) => {
    const at = integerBelow(random, lines.length);
    lines[at] = random.uniform() < 0.5 ? `  ${lines[at]}` : lines[at].replace(/^ {1,2}/, '');
  },
  (random, lines) =>
    void lines.splice(integerBelow(random, lines.length + 1), 0, LINES[integerBelow(random, LINES.length)]),
  (random, lines, other) =>
    void lines.splice(integerBelow(random, lines.length + 1), 0, other[integerBelow(random, other.length)]),
  // The end is missing.
  (random, lines) => void lines.splice(1 + integerBelow(random, lines.length)),
  // Deep nesting, many aliases.
  (random, lines) => {
    const depth = 1 + integerBelow(random, 3000);
    lines.push(`deep: ${'['.repeat(depth)}${random.uniform() < 0.5 ? ']'.repeat(depth) : ''}`);
  },
  (random, lines) => {
    const levels = 3 + integerBelow(random, 20);
    lines.push('b0: &b0 [x, x, x, x, x, x, x, x, x]');
    for (let i = 1; i < levels; i++)
      lines.push(
        `b${i}: &b${i} [${Array(9)
          .fill(`*b${i - 1}`)
          .join(', ')}]`,
      );
  },
];

/** @param other a text whose lines may get in */
export function mutate(random: Random, text: string, other: string): string {
  const lines = text.split('\n');
  const others = other.split('\n');
  const times = 1 + integerBelow(random, 4);
  for (let i = 0; i < times && lines.length > 0; i++)
    MUTATIONS[integerBelow(random, MUTATIONS.length)](random, lines, others);
  return lines.join(random.uniform() < 0.05 ? '\r\n' : '\n');
}
