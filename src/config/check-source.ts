/** Runs a schema over the text of a file and turns every issue into a problem with its place. */
import type { z } from 'zod';
import type { Contradiction } from './contradictions.ts';
import { keysAt, schemaOf } from './json-schema.ts';
import { type ConfigProblem, describeFound, nearestName } from './problems.ts';
import { type Path, pathText, readSource, type SourceText } from './source-text.ts';

export type Checked<T> = { ok: true; value: T } | { ok: false; problems: ConfigProblem[] };

/** Greatest number of mistakes that are listed; the last one then says so. */
const MOST_PROBLEMS = 200;

/** Text → checked value, or every mistake at once in the order of the file. Never throws on bad text. */
export function checkSource<Schema extends z.ZodType>(
  text: string,
  file: string,
  schema: Schema,
  contradictions: (data: unknown) => Contradiction[],
): Checked<z.output<Schema>> {
  const reading = readSource(text, file);
  if (!reading.ok) return { ok: false, problems: reading.problems };
  const { source } = reading;
  const result = schema.safeParse(source.data);
  const contradicting = contradictions(source.data).map(({ path, expected, found }) =>
    problemAt(source, path, expected, found),
  );
  const problems = [...source.problems, ...contradicting];
  if (result.success && problems.length === 0) return { ok: true, value: result.data };
  if (!result.success) {
    for (const issue of result.error.issues) problems.push(...problemsOf(issue, source, schema));
  }
  return { ok: false, problems: inOrder(problems) };
}

function problemsOf(issue: z.core.$ZodIssue, source: SourceText, schema: z.ZodType): ConfigProblem[] {
  const path = issue.path.filter((key): key is string | number => typeof key !== 'symbol');
  if (issue.code === 'unrecognized_keys') {
    const known = keysAt(schemaOf(schema), path);
    return issue.keys.map((key) => {
      const near = nearestName(key, known);
      const expected = `${near === null ? '' : `"${near}" (did you mean it?) or `}one of the keys ${known.join(', ')}`;
      return {
        ...problemAt(source, [...path, key], expected, `the unknown key ${describeFound(key)}`),
        ...source.locate([...path, key], 'key'),
      };
    });
  }
  const value = valueAt(source.data, path);
  const ownWords = issue.code === 'custom' ? (issue.params?.found as string | undefined) : undefined;
  return [problemAt(source, path, expectationOf(issue), ownWords ?? describeFound(value))];
}

function expectationOf(issue: z.core.$ZodIssue): string {
  if (issue.code === 'invalid_type' && issue.message.startsWith('Invalid input')) {
    if (issue.expected === 'object') return 'a section of settings';
    if (issue.expected === 'array') return 'a list';
    if (issue.expected === 'string') return 'text';
    return `a ${issue.expected}`;
  }
  if (issue.code === 'invalid_union' && 'options' in issue && Array.isArray(issue.options))
    return `one of ${issue.options.join(', ')}`;
  return issue.message;
}

function problemAt(source: SourceText, path: Path, expected: string, found: string): ConfigProblem {
  return { file: source.file, ...source.locate(path), path: pathText(path), expected, found };
}

function valueAt(data: unknown, path: Path): unknown {
  let value = data;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<string | number, unknown>)[key];
  }
  return value;
}

function inOrder(problems: ConfigProblem[]): ConfigProblem[] {
  const seen = new Set<string>();
  const unique = problems.filter((problem) => {
    const key = JSON.stringify([problem.line, problem.column, problem.path, problem.expected]);
    return !seen.has(key) && seen.add(key);
  });
  unique.sort((a, b) => a.line - b.line || a.column - b.column);
  if (unique.length <= MOST_PROBLEMS) return unique;
  const last = unique[MOST_PROBLEMS];
  return [
    ...unique.slice(0, MOST_PROBLEMS),
    {
      ...last,
      path: '',
      expected: `at most ${MOST_PROBLEMS} mistakes`,
      found: `${unique.length - MOST_PROBLEMS} more`,
    },
  ];
}
