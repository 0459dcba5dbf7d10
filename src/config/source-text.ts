/** From YAML or JSON text to plain data and back to the place of every key: refuses what no honest configuration needs. */
import {
  type Document,
  isAlias,
  isMap,
  isPair,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  Parser,
  parseDocument,
} from 'yaml';
import type { ConfigProblem } from './problems.ts';

/** Greatest length of the text, characters. */
export const TEXT_LIMIT = 131_072;
/** Deepest nesting of sections and lists. */
export const DEPTH_LIMIT = 24;

export type Path = readonly (string | number)[];

export interface SourceText {
  file: string;
  data: unknown;
  /** Duplicate keys, aliases and the like: the rest of the data can still be checked. */
  problems: ConfigProblem[];
  /** Line and column, from 1, of a key (or of the nearest key above that is there). */
  locate(path: Path, where?: 'key' | 'value'): { line: number; column: number };
}

export type SourceReading = { ok: true; source: SourceText } | { ok: false; problems: ConfigProblem[] };

/** Characters that YAML and JSON text may not hold, apart from tab and line ends. */
const FORBIDDEN_CHARACTER = /[^\P{Cc}\t\n\r\u0085]|[\ufffd\ufffe\uffff]|\p{Cs}/u;

/** Reads the text; every syntax mistake is listed. Never throws. */
export function readSource(text: string, file: string): SourceReading {
  const refuse = (offset: number, expected: string, found: string): SourceReading => ({
    ok: false,
    problems: [{ file, ...positionOf(text, offset), path: '', expected, found }],
  });
  if (text.length > TEXT_LIMIT) {
    return refuse(TEXT_LIMIT, `a configuration of at most ${TEXT_LIMIT} characters`, `${text.length} characters`);
  }
  const forbidden = FORBIDDEN_CHARACTER.exec(text);
  if (forbidden) {
    const code = text.codePointAt(forbidden.index)!.toString(16).toUpperCase().padStart(4, '0');
    return refuse(forbidden.index, 'readable UTF-8 text', `the character U+${code}`);
  }
  const tooDeep = offsetOfDeepNesting(text);
  if (tooDeep !== null) return refuse(tooDeep, `at most ${DEPTH_LIMIT} levels of nesting`, 'deeper nesting');
  return compose(text, file);
}

function compose(text: string, file: string): SourceReading {
  const lines = new LineCounter();
  const problems: ConfigProblem[] = [];
  const add = (offset: number, path: Path, expected: string, found: string): void => {
    problems.push({ file, ...place(lines, offset), path: pathText(path), expected, found });
  };
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false, uniqueKeys: false, version: '1.2' });
  for (const error of [...document.errors, ...document.warnings])
    add(error.pos[0], [], expectationOf(error.code), sentence(error.message));
  if (problems.length > 0) return { ok: false, problems };
  if (document.contents === null) {
    add(0, [], 'a section of settings', 'an empty file');
    return { ok: false, problems };
  }
  const offsets = new Map<string, { key: number; value: number }>();
  const data = toData(document.contents, [], offsets, add);
  return { ok: true, source: { file, data, problems, locate: locator(document, offsets, lines) } };
}

/** Copies the tree into plain data and notes where every value stands. Depth is bounded before, so recursion is safe. */
function toData(
  node: Node | null,
  path: Path,
  offsets: Map<string, { key: number; value: number }>,
  add: (offset: number, path: Path, expected: string, found: string) => void,
): unknown {
  if (node === null) return null;
  const offset = node.range?.[0] ?? 0;
  if (isAlias(node)) {
    add(offset, path, 'the value written out', `the alias *${node.source}`);
    return null;
  }
  if (node.anchor !== undefined) add(offset, path, 'a value without an anchor', `the anchor &${node.anchor}`);
  if (node.tag !== undefined && !node.tag.startsWith('tag:yaml.org,2002:'))
    add(offset, path, 'a value without a tag', node.tag);
  if (isScalar(node)) return node.value;
  if (isSeq(node)) {
    return node.items.map((item, index) => {
      const place = [...path, index];
      const start = (item as Node | null)?.range?.[0] ?? offset;
      offsets.set(pathKey(place), { key: start, value: start });
      return toData(isPair(item) ? null : (item as Node | null), place, offsets, add);
    });
  }
  if (!isMap(node)) return null;
  const data: Record<string, unknown> = {};
  for (const pair of node.items) {
    const keyNode = pair.key as Node | null;
    const keyOffset = keyNode?.range?.[0] ?? offset;
    if (!isScalar(keyNode) || keyNode.value === null || typeof keyNode.value === 'object') {
      add(keyOffset, path, 'a plain word as key', 'another kind of key');
      continue;
    }
    const key = String(keyNode.value);
    if (key === '__proto__') {
      add(keyOffset, path, 'a key of the configuration', '"__proto__"');
      continue;
    }
    if (Object.hasOwn(data, key)) {
      add(keyOffset, [...path, key], 'every key once', 'the same key again');
      continue;
    }
    const place = [...path, key];
    const valueNode = pair.value as Node | null;
    offsets.set(pathKey(place), { key: keyOffset, value: valueNode?.range?.[0] ?? keyOffset });
    data[key] = toData(valueNode, place, offsets, add);
  }
  return data;
}

function locator(
  document: Document,
  offsets: Map<string, { key: number; value: number }>,
  lines: LineCounter,
): SourceText['locate'] {
  const top = (document.contents as Node | null)?.range?.[0] ?? 0;
  return (path, where = 'value') => {
    for (let length = path.length; length > 0; length--) {
      const found = offsets.get(pathKey(path.slice(0, length)));
      if (found) return place(lines, length === path.length && where === 'value' ? found.value : found.key);
    }
    return place(lines, top);
  };
}

/** Walks the concrete syntax without recursion, so that no nesting can exhaust the stack. */
function offsetOfDeepNesting(text: string): number | null {
  type Token = { type?: string; offset?: number; value?: unknown; items?: { key?: unknown; value?: unknown }[] };
  for (const root of new Parser().parse(text)) {
    const stack: { token: Token; depth: number }[] = [{ token: root as Token, depth: 0 }];
    while (stack.length > 0) {
      const { token, depth } = stack.pop()!;
      if (depth > DEPTH_LIMIT) return token.offset ?? 0;
      const inner = token.items ? depth + 1 : depth;
      if (token.value && typeof token.value === 'object') stack.push({ token: token.value as Token, depth });
      for (const item of token.items ?? []) {
        if (item.key) stack.push({ token: item.key as Token, depth: inner });
        if (item.value) stack.push({ token: item.value as Token, depth: inner });
      }
    }
  }
  return null;
}

const EXPECTATIONS: Record<string, string> = {
  MULTIPLE_DOCS: 'one document in the file',
  TAB_AS_INDENT: 'spaces as indentation',
  MULTIPLE_ANCHORS: 'the value written out',
  BAD_ALIAS: 'the value written out',
  TAG_RESOLVE_FAILED: 'a value without a tag',
};

function expectationOf(code: string): string {
  return EXPECTATIONS[code] ?? 'well-formed YAML or JSON';
}

function sentence(message: string): string {
  const firstLine = message.split('\n')[0].replace(/:$/, '');
  return firstLine.length > 120 ? `${firstLine.slice(0, 120)}…` : firstLine;
}

/** Dotted path with list places in brackets, e.g. `stock.sheets[0].thickness`. */
export function pathText(path: Path): string {
  return path.reduce<string>((text, key) => {
    if (typeof key === 'number') return `${text}[${key}]`;
    const name = key.length > 64 ? `${key.slice(0, 64)}…` : key;
    return text === '' ? name : `${text}.${name}`;
  }, '');
}

function pathKey(path: Path): string {
  return JSON.stringify(path);
}

function place(lines: LineCounter, offset: number): { line: number; column: number } {
  const { line, col } = lines.linePos(offset);
  return { line: Math.max(1, line), column: Math.max(1, col) };
}

function positionOf(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset);
  const lastBreak = before.lastIndexOf('\n');
  return { line: before.split('\n').length, column: offset - lastBreak };
}
