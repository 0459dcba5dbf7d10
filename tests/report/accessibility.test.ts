import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { NO_DRAWINGS } from '../../src/report/drawing-set.ts';
import { drawingSet } from '../../src/report/drawings/index.ts';
import { findBrowser } from '../../src/report/printing/find-browser.ts';
import { renderComparison } from '../../src/report/render-comparison.ts';
import { renderHtml } from '../../src/report/render-html.ts';
import { FACTS, noCandidates, results, study } from './fixtures.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const PAGES: [string, string][] = [
  ['report', renderHtml(results(), FACTS, { paper: 'A4', drawings: NO_DRAWINGS })],
  [
    'report with all its drawings',
    renderHtml(results(), FACTS, { paper: 'A4', drawings: drawingSet(results().candidates, study()) }),
  ],
  ['report without candidates', renderHtml(noCandidates(), FACTS, { paper: 'A4', drawings: NO_DRAWINGS })],
  ['comparison', renderComparison([results(), noCandidates()], { paper: 'A4' })],
];

let browser: Browser;

beforeAll(async () => {
  browser = await (await findBrowser(process.env)).open();
}, 180_000);

afterAll(async () => {
  await browser?.close();
});

/** Opens a page in one colour scheme; every request and every message of the console is noted. */
async function open(html: string, scheme: 'light' | 'dark', width = 1280) {
  const page = await browser.newPage();
  const requests: string[] = [];
  const messages: string[] = [];
  page.on('request', (request) => requests.push(request.url()));
  page.on('console', (message) => messages.push(message.text()));
  page.on('pageerror', (error) => messages.push(String(error)));
  await page.setViewport({ width, height: 900 });
  await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
  await page.setContent(html, { waitUntil: 'load' });
  return { page, requests, messages };
}

describe.each(PAGES)('%s', (_name, html) => {
  it.each(['light', 'dark'] as const)('axe finds nothing, %s', async (scheme) => {
    const { page } = await open(html, scheme);
    await page.evaluate(AXE);
    const violations = await page.evaluate(async () => {
      // biome-ignore lint/suspicious/noExplicitAny: axe has put itself into the page
      const outcome = await (globalThis as any).axe.run();
      // biome-ignore lint/suspicious/noExplicitAny: as above
      return outcome.violations.map((v: any) => `${v.id}: ${v.nodes.length} × ${v.nodes[0].html.slice(0, 140)}`);
    });
    await page.close();
    expect(violations).toEqual([]);
  });

  it('opens without a request or a complaint', async () => {
    const { page, requests, messages } = await open(html, 'light');
    await page.close();
    expect(requests.filter((url) => !url.startsWith('data:'))).toEqual([]);
    expect(messages).toEqual([]);
  });

  it('does not scroll sideways on a telephone', async () => {
    const { page } = await open(html, 'light', 390);
    const [content, screen] = await page.evaluate(() => {
      // biome-ignore lint/suspicious/noExplicitAny: the page's own document
      const root = (globalThis as any).document.documentElement;
      return [root.scrollWidth, root.clientWidth];
    });
    await page.close();
    expect(content).toBeLessThanOrEqual(screen);
  });
});

describe('ranking', () => {
  it('sorts by keyboard, says so, and keeps rows without a value last', async () => {
    const some = results();
    some.candidates[1].robustness.valveLife = null;
    some.candidates[1].assessment.valveLife = null;
    const { page } = await open(renderHtml(some, FACTS, { paper: 'A4', drawings: NO_DRAWINGS }), 'light');
    const order = () =>
      // biome-ignore lint/suspicious/noExplicitAny: cells of the page
      page.$$eval('#ranking tbody tr', (rows) => rows.map((r: any) => r.cells[0].querySelector('a').textContent));
    const button = (await page.$$('#ranking thead button'))[4];
    await button.focus();
    await page.keyboard.press('Enter');
    // Lives: C1 2400 s, C3 90000 s, C4 2900 s, C5 1900 s; C2 has none.
    expect(await order()).toEqual(['C5', 'C1', 'C4', 'C3', 'C2']);
    expect(await page.$eval('#ranking th[aria-sort]', (th) => th.getAttribute('aria-sort'))).toBe('ascending');
    await page.keyboard.press('Enter');
    expect(await order()).toEqual(['C3', 'C4', 'C1', 'C5', 'C2']);
    await page.close();
  });
});

describe('charts', () => {
  it('have no text that lies on other text or outside its picture', async () => {
    const { page } = await open(PAGES[0][1], 'light');
    const faults = await page.$$eval('svg.chart', (charts) =>
      // biome-ignore lint/suspicious/noExplicitAny: elements of the page
      charts.flatMap((chart: any) => {
        const frame = chart.getBoundingClientRect();
        // biome-ignore lint/suspicious/noExplicitAny: as above
        const texts = [...chart.querySelectorAll('text')].map((t: any) => ({
          words: t.textContent,
          box: t.getBoundingClientRect(),
        }));
        const found: string[] = [];
        texts.forEach((a, i) => {
          if (
            a.box.left < frame.left - 1 ||
            a.box.right > frame.right + 1 ||
            a.box.top < frame.top - 1 ||
            a.box.bottom > frame.bottom + 1
          )
            found.push(`${a.words} leaves the picture`);
          for (const b of texts.slice(i + 1)) {
            const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
            const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
            // Boxes of lines of text are taller than their letters: touching by a quarter of a line is no collision.
            if (across > 1 && down > 4) found.push(`${a.words} | ${b.words}`);
          }
        });
        return found;
      }),
    );
    await page.close();
    expect(faults).toEqual([]);
  });
});
