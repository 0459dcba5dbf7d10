/** A mistake in a configuration file: where it is, what was expected and what was found. */

export interface ConfigProblem {
  file: string;
  /** Counted from 1. */
  line: number;
  column: number;
  /** Keys from the top, e.g. `explore.geometry.chamber-diameter`; '' for the file as a whole. */
  path: string;
  expected: string;
  found: string;
}

/** Longest excerpt of the user's text that a message repeats, characters. */
const EXCERPT_LENGTH = 60;

/** `file:line:column path: expected …, found …`, one line, free of control characters. */
export function formatProblem(problem: ConfigProblem): string {
  const place = `${problem.file}:${problem.line}:${problem.column}`;
  const path = problem.path === '' ? '' : ` ${problem.path}`;
  return printable(`${place}${path}: expected ${problem.expected}, found ${problem.found}`);
}

/** Says what was found, short enough for a message. */
export function describeFound(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'an empty value';
  if (typeof value === 'string') return excerpt(JSON.stringify(value));
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return `a section with the keys ${excerpt(Object.keys(value as object).join(', '))}`;
}

/** The known name that is nearest to a mistyped one, or null when none is near (edit distance above a third of its length). */
export function nearestName(name: string, known: readonly string[]): string | null {
  let best: string | null = null;
  let bestDistance = Infinity;
  const wanted = simplify(name.slice(0, 64));
  for (const candidate of known) {
    const distance = editDistance(wanted, simplify(candidate));
    if (distance < bestDistance) {
      bestDistance = distance;
      best = candidate;
    }
  }
  return best !== null && bestDistance <= Math.max(1, Math.floor(best.length / 3)) ? best : null;
}

function simplify(name: string): string {
  return name
    .replace(/([a-z])([A-Z])/g, '$1-$2')
    .toLowerCase()
    .replace(/[_ ]/g, '-');
}

/** Levenshtein distance, one row at a time. */
function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const substitution = row[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(row[j] + 1, next[j - 1] + 1, substitution));
    }
    row = next;
  }
  return row[b.length];
}

function excerpt(text: string): string {
  return text.length <= EXCERPT_LENGTH ? text : `${text.slice(0, EXCERPT_LENGTH)}…`;
}

function printable(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/gu, '?');
}
