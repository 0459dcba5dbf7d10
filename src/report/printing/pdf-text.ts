/**
 * Looks into a PDF that Chromium wrote and counts the glyphs that its pages show. A browser without fonts prints empty
 * pages and reports success, so every print is checked here before anybody is told that it is there.
 * Reads what Skia writes (PDF 1.4: plain objects, Flate streams, two-byte glyph numbers); it is no general PDF reader.
 * Source of the syntax: ISO 32000-1, 7.3.4 (strings), 7.8 (content streams), 9.4.3 (text showing).
 */
import { inflateSync } from 'node:zlib';

export interface PdfText {
  pages: number;
  /** Glyphs shown, spaces included. */
  glyphs: number;
  /** Glyphs shown as an empty box, because no font had the character. */
  missingGlyphs: number;
  /** Names of the embedded fonts without subset prefix, sorted, each once. */
  fonts: string[];
}

/** Throws when the bytes are no PDF or a content stream is damaged. */
export function readPdfText(pdf: Buffer): PdfText {
  if (pdf.toString('latin1', 0, 5) !== '%PDF-') throw new Error('the browser returned something that is no PDF');
  const result: PdfText = { pages: 0, glyphs: 0, missingGlyphs: 0, fonts: [] };
  const fonts = new Set<string>();
  for (const { dictionary, stream } of objects(pdf)) {
    if (/\/Type \/Page\b(?!s)/.test(dictionary)) result.pages++;
    const font = /\/FontName \/(?:[A-Z]{6}\+)?([^\s/<>[\]()]+)/.exec(dictionary)?.[1];
    if (font && /\/FontFile[23]? /.test(dictionary)) fonts.add(font);
    if (stream && isContent(dictionary)) countGlyphs(stream, result);
  }
  result.fonts = [...fonts].sort();
  return result;
}

/** Page contents and form objects; images, fonts and colour profiles are told apart by their dictionaries. */
function isContent(dictionary: string): boolean {
  if (/\/Subtype \/(Image|CIDFontType0C|Type1C|OpenType|XML)\b/.test(dictionary)) return false;
  return !/\/(Length1|FunctionType|ShadingType|N \d+\s)/.test(dictionary);
}

function* objects(pdf: Buffer): Generator<{ dictionary: string; stream: Buffer | null }> {
  let at = 0;
  // Kept until it is passed: a tagged PDF has thousands of objects without a stream, and each search would run to the end.
  let streamMark = -1;
  for (;;) {
    const start = pdf.indexOf(' 0 obj\n', at, 'latin1');
    if (start < 0) return;
    const body = start + 7;
    const end = pdf.indexOf('endobj', body, 'latin1');
    if (end < 0) return;
    if (streamMark < body) {
      const next = pdf.indexOf(' stream\n', body, 'latin1');
      streamMark = next < 0 ? Number.POSITIVE_INFINITY : next;
    }
    if (streamMark > end) {
      yield { dictionary: pdf.toString('latin1', body, end), stream: null };
      at = end + 6;
      continue;
    }
    const dictionary = pdf.toString('latin1', body, streamMark);
    const length = Number(/\/Length (\d+)/.exec(dictionary)?.[1] ?? Number.NaN);
    const from = streamMark + 8;
    if (!(from + length <= pdf.length)) throw new Error('the PDF is damaged: a stream has no length');
    yield { dictionary, stream: decode(dictionary, pdf.subarray(from, from + length)) };
    at = from + length;
  }
}

function decode(dictionary: string, bytes: Buffer): Buffer | null {
  if (!isContent(dictionary) || bytes.length === 0) return null;
  return /\/Filter \/FlateDecode/.test(dictionary) ? inflateSync(bytes) : bytes;
}

const SHOW = /<([0-9A-Fa-f\s]*)>\s*Tj|\[((?:[^[\]])*)\]\s*TJ/g;

function countGlyphs(stream: Buffer, result: PdfText): void {
  const text = stream.toString('latin1');
  if (!text.includes('BT')) return;
  for (const match of text.matchAll(SHOW)) {
    const strings =
      match[1] === undefined ? [...match[2].matchAll(/<([0-9A-Fa-f\s]*)>/g)].map((m) => m[1]) : [match[1]];
    for (const hex of strings) {
      const digits = hex.replace(/\s/g, '');
      // Type 3 fonts, which Skia uses for fonts that must not be embedded, have one byte a glyph.
      const width = digits.length % 4 === 0 ? 4 : 2;
      for (let i = 0; i < digits.length; i += width) {
        result.glyphs++;
        if (width === 4 && digits.startsWith('0000', i)) result.missingGlyphs++;
      }
    }
  }
}
