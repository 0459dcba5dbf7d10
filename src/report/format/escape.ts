/** Text made safe for the three places where it can stand: markup, style sheet strings, and identifiers. */

const ENTITIES: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** For text and attribute values in HTML and SVG. Characters that XML forbids become the replacement character. */
export function escapeMarkup(text: string): string {
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters that must not pass
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g, '\ufffd')
      .replace(/[&<>"']/g, (c) => ENTITIES[c])
  );
}

/** A CSS string literal, quotes included: everything but letters, digits and spaces is written as a code point. */
export function cssString(text: string): string {
  let out = '';
  for (const c of text) out += /[\p{L}\p{N} ]/u.test(c) ? c : `\\${c.codePointAt(0)!.toString(16)} `;
  return `"${out}"`;
}

/** A fragment identifier: letters, digits and hyphens. */
export function anchor(text: string): string {
  return text.replace(/[^A-Za-z0-9]+/g, '-').replace(/^-+|-+$/g, '') || 'x';
}
