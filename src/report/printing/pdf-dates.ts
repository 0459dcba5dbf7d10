/** Gives a PDF the date of the study, so that the same results print to the same bytes. */

/**
 * Rewrites CreationDate and ModDate in the document information dictionary, in place and without changing any length.
 * @param pdf file as written by Chromium (plain cross-reference table); changed in place
 * @param timestamp ISO 8601, e.g. "2026-01-31T22:00:00Z"
 * Throws when the time stamp is no date, or when the file does not hold exactly these two dates in the usual form.
 */
export function setPdfDates(pdf: Buffer, timestamp: string): void {
  const date = pdfDate(timestamp);
  const trailer = pdf.toString('latin1', Math.max(0, pdf.length - 2048));
  const info = /\/Info (\d+) 0 R/.exec(trailer)?.[1];
  if (info === undefined) throw new Error('the PDF has no document information, so its dates cannot be set');
  const start = pdf.indexOf(`\n${info} 0 obj`, 0, 'latin1');
  const end = start < 0 ? -1 : pdf.indexOf('endobj', start, 'latin1');
  if (end < 0) throw new Error('the document information of the PDF could not be read');
  const dictionary = pdf.toString('latin1', start, end);
  // Inside a title the parenthesis would be escaped, so only real dates match.
  const found = [...dictionary.matchAll(/\/(CreationDate|ModDate) \((D:\d{14}\+00'00')\)/g)];
  if (found.length !== 2 || found[0][1] === found[1][1])
    throw new Error(`the PDF should hold one creation and one modification date, ${found.length} were found`);
  for (const match of found) pdf.write(date, start + match.index + match[0].indexOf('D:'), 'latin1');
}

/** PDF date string in UTC (ISO 32000-1, 7.9.4). */
export function pdfDate(timestamp: string): string {
  const time = /^\d{4}-\d{2}-\d{2}(T|$)/.test(timestamp) ? new Date(timestamp) : new Date(Number.NaN);
  if (Number.isNaN(time.getTime())) throw new Error(`"${timestamp}" is no ISO 8601 date, so the PDF cannot carry it`);
  return `D:${time.toISOString().slice(0, 19).replace(/[-T:]/g, '')}+00'00'`;
}
