/** Prints the HTML report to PDF: true page sizes, tags, outline, the study's own date, no request to anywhere. */
import { randomBytes } from 'node:crypto';
import { constants } from 'node:fs';
import { access, open, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, HTTPRequest, Page } from 'puppeteer';
import type { ProvenBrowser } from './find-browser.ts';
import { findBrowser } from './find-browser.ts';
import { setPdfDates } from './pdf-dates.ts';
import { renumberNodes } from './pdf-node-names.ts';
import type { PdfText } from './pdf-text.ts';
import { readPdfText } from './pdf-text.ts';

export interface PrintOptions {
  /** ISO 8601; becomes the creation and modification date, so that the bytes repeat. */
  timestamp: string;
  /** Title in the document information. */
  title: string;
  /** Found once and used for many reports; null or absent: looked for. */
  browser?: ProvenBrowser | null;
  env?: NodeJS.ProcessEnv;
}

export interface PrintedPdf extends PdfText {
  bytes: number;
  /** Version and origin of the browser. */
  browser: string;
  /** What the user should know: sandbox off, characters without a font, requests that were refused. */
  notes: string[];
}

/** A page that cannot be printed in this time hangs. */
const PRINT_TIMEOUT = 300_000;

/** A browser was found, but this report did not come out of it. The HTML stands. */
export class PrintError extends Error {
  override name = 'PrintError';
}

/**
 * Prints `htmlFile` to `pdfFile` (written beside it and renamed, so an older PDF stays until the new one is whole).
 * Page sizes come from the named @page rules of the file, the outline from its headings.
 * Scripts do not run, and nothing but the file itself and data: addresses is loaded.
 * Throws NoBrowserError when no browser can print; PrintError when the file cannot be loaded, the browser fails twice, or
 * the PDF lacks the text that the page shows; errors of the file system when the PDF cannot be written.
 */
export async function printPdf(htmlFile: string, pdfFile: string, options: PrintOptions): Promise<PrintedPdf> {
  await access(htmlFile, constants.R_OK).catch((error) => {
    throw new PrintError(`${htmlFile} cannot be read for printing (${error.code})`);
  });
  const found = options.browser ?? (await findBrowser(options.env));
  const { pdf, letters, refused } = await printTwice(found, pathToFileURL(path.resolve(htmlFile)).href, options.title);
  setPdfDates(pdf, options.timestamp);
  renumberNodes(pdf);
  const text = readPdfText(pdf);
  requireText(text, letters);
  await writeWhole(pdfFile, pdf);
  const notes = [...found.notes];
  if (text.missingGlyphs > 0) notes.push(`${text.missingGlyphs} characters had no font and print as empty boxes`);
  for (const url of refused) notes.push(`the report asked for ${url}, which was refused`);
  return { ...text, bytes: pdf.length, browser: `${found.version} (${found.origin})`, notes };
}

/** After a night's run a browser may fall to a short want of memory; a second try costs seconds. */
async function printTwice(found: ProvenBrowser, url: string, title: string) {
  try {
    return await printOnce(found, url, title);
  } catch {
    return await printOnce(found, url, title).catch((error: Error) => {
      throw new PrintError(`the report could not be printed by ${found.version} (${found.origin}): ${error.message}`);
    });
  }
}

async function printOnce(found: ProvenBrowser, url: string, title: string) {
  const browser = await found.open();
  try {
    return await printPage(browser, url, title);
  } finally {
    await browser.close().catch(() => undefined);
  }
}

async function printPage(browser: Browser, url: string, title: string) {
  const page = await browser.newPage();
  page.setDefaultTimeout(PRINT_TIMEOUT);
  await page.setJavaScriptEnabled(false);
  const refused = await refuseRequests(page, url);
  await page.emulateMediaType('print');
  await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: 'light' }]);
  await page.goto(url, { waitUntil: 'load' });
  const letters = (await page.evaluate(prepareDocument(title))) as number;
  const pdf = await page.pdf({
    preferCSSPageSize: true,
    printBackground: true,
    tagged: true,
    outline: true,
    timeout: PRINT_TIMEOUT,
  });
  return { pdf: Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength), letters, refused };
}

/** Lets the file itself and data: addresses through; collects what else was asked for, cut to a readable length. */
async function refuseRequests(page: Page, url: string): Promise<string[]> {
  const refused: string[] = [];
  await page.setRequestInterception(true);
  page.on('request', (request: HTTPRequest) => {
    const asked = request.url();
    if (asked === url || asked.startsWith('data:')) void request.continue().catch(() => undefined);
    else {
      if (refused.length < 20) refused.push(asked.slice(0, 120));
      void request.abort('blockedbyclient').catch(() => undefined);
    }
  });
  return refused;
}

/**
 * Runs in the page, as text so that no build step can touch it. Sets the title, takes the address off links to
 * neighbouring files (in a PDF they would become absolute paths of this machine), waits for fonts, and returns the
 * number of characters that the page shows.
 */
function prepareDocument(title: string): string {
  return `(async () => {
    document.title = ${JSON.stringify(title)};
    for (const link of document.querySelectorAll('a[href], area[href]'))
      if (!/^(#|https?:|mailto:)/i.test(link.getAttribute('href'))) link.removeAttribute('href');
    await document.fonts.ready;
    return document.body.innerText.replace(/\\s/g, '').length;
  })()`;
}

/** Headers and hidden parts make the numbers differ; a browser without fonts loses all or nearly all of the text. */
function requireText(text: PdfText, letters: number): void {
  const shown = text.glyphs - text.missingGlyphs;
  if (text.pages === 0 || (letters > 0 && (shown === 0 || shown < letters / 4)))
    throw new PrintError(
      `the printed PDF has ${text.pages} pages and shows ${shown} characters where the report has ${letters}; it was not kept`,
    );
}

async function writeWhole(file: string, data: Buffer): Promise<void> {
  const temporary = path.join(path.dirname(file), `.${path.basename(file)}.${randomBytes(6).toString('hex')}.part`);
  try {
    const handle = await open(temporary, 'wx');
    try {
      await handle.writeFile(data);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(temporary, file);
  } catch (error) {
    await rm(temporary, { force: true });
    throw error;
  }
}
