/** Gives the structure elements of a tagged PDF names that repeat, so that the same results print to the same bytes. */

/** Skia names the elements that tables refer to after the browser's own count of nodes, e.g. "(node00000263)". */
const NAME = /(?<!\\)\(node(\d{8})\)/g;

/**
 * Numbers the names anew from 1 in their own order, in place and without changing any length. The browser's count may
 * begin later when the machine is busy; the order of the names, in which the file also lists them, does not change.
 * Source of the syntax: ISO 32000-1, 14.7.2 (ID, IDTree) and 14.8.5.7 (Headers).
 */
export function renumberNodes(pdf: Buffer): void {
  const text = pdf.toString('latin1');
  const found = [...text.matchAll(NAME)];
  const numbers = [...new Set(found.map((match) => match[1]))].sort();
  const places = new Map(numbers.map((number, i) => [number, String(i + 1).padStart(8, '0')]));
  for (const match of found) pdf.write(places.get(match[1])!, match.index + '(node'.length, 'latin1');
}
