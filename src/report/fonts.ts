/** The report's font as data in the style sheet: only the parts of the alphabet that the text uses. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { packageFolder } from './package-folder.ts';

const WEIGHTS = [400, 600];
/** Latin always; the rest when a character of theirs occurs. */
const SUBSETS = ['latin', 'latin-ext', 'greek', 'cyrillic', 'cyrillic-ext', 'greek-ext', 'vietnamese'];

type Ranges = [number, number][];

function parseRanges(text: string): Ranges {
  return text.split(',').map((part) => {
    const [low, high] = part.trim().replace(/^U\+/i, '').split('-');
    return [Number.parseInt(low, 16), Number.parseInt(high ?? low, 16)];
  });
}

function covers(ranges: Ranges, code: number): boolean {
  return ranges.some(([low, high]) => code >= low && code <= high);
}

interface Font {
  subset: string;
  ranges: Ranges;
  unicodeRange: string;
  faces: { weight: number; base64: string }[];
}

let fonts: Font[] | null = null;

function load(): Font[] {
  const require = createRequire(join(packageFolder(), 'package.json'));
  const unicode = require('@fontsource/inter/unicode.json') as Record<string, string>;
  return SUBSETS.map((subset) => ({
    subset,
    ranges: parseRanges(unicode[subset]),
    unicodeRange: unicode[subset],
    faces: WEIGHTS.map((weight) => ({
      weight,
      base64: readFileSync(require.resolve(`@fontsource/inter/files/inter-${subset}-${weight}-normal.woff2`)).toString(
        'base64',
      ),
    })),
  }));
}

/** Characters of the text that the embedded font cannot show; empty is as it should be. */
export function missingCharacters(text: string): string[] {
  fonts ??= load();
  const all = fonts;
  const missing = new Set<string>();
  for (const c of new Set(text)) {
    const code = c.codePointAt(0)!;
    if (code >= 0x20 && !all.some((font) => covers(font.ranges, code))) missing.add(c);
  }
  return [...missing].sort();
}

/** `@font-face` rules for all that the text needs. */
export function fontFaces(text: string): string {
  fonts ??= load();
  const codes = [...new Set(text)].map((c) => c.codePointAt(0)!);
  const latin = fonts[0].ranges;
  return fonts
    .filter((font, i) => i === 0 || codes.some((code) => covers(font.ranges, code) && !covers(latin, code)))
    .flatMap((font) =>
      font.faces.map(
        (face) =>
          `@font-face{font-family:"Inter";font-style:normal;font-weight:${face.weight};` +
          `src:url(data:font/woff2;base64,${face.base64}) format("woff2");unicode-range:${font.unicodeRange}}`,
      ),
    )
    .join('\n');
}
