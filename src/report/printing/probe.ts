/** Proves that a browser can print: one page whose PDF must show every character of a known text. */
import type { Browser } from 'puppeteer';
import { readPdfText } from './pdf-text.ts';

const PROBE_TEXT = 'Pulsejet 0123456789 mm';

/** Throws with a reason for people when the page does not come out as it should. */
export async function probe(browser: Browser): Promise<void> {
  const page = await browser.newPage();
  try {
    await page.setJavaScriptEnabled(false);
    await page.setContent(`<!doctype html><html lang="en"><title>probe</title><p>${PROBE_TEXT}</p></html>`);
    const text = readPdfText(Buffer.from(await page.pdf({ preferCSSPageSize: true, timeout: 60_000 })));
    if (text.glyphs < PROBE_TEXT.length || text.missingGlyphs > 0)
      throw new Error(
        `its trial page shows ${text.glyphs - text.missingGlyphs} of ${PROBE_TEXT.length} characters (are there any fonts?)`,
      );
  } finally {
    await page.close().catch(() => undefined);
  }
}
