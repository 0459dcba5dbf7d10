/** Characters that the embedded font lacks, said in letters that it has, so that no print shows an empty box. */
const SAID_OTHERWISE: Record<string, string> = {
  '≤': 'at most',
  '≥': 'at least',
  '≈': 'about',
  '→': 'to',
  '≠': 'not',
  '√': 'root of ',
  '∞': 'infinite',
  '⌀': 'Ø',
  '✓': 'yes',
  '✗': 'no',
};

const PATTERN = new RegExp(`[${Object.keys(SAID_OTHERWISE).join('')}]`, 'gu');

/** Replaces them; everything else passes unchanged. */
export function sayMissingGlyphs(text: string): string {
  return text.replace(PATTERN, (c) => SAID_OTHERWISE[c]);
}
