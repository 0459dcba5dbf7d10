import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type DrawingSet, NO_DRAWINGS } from '../../src/report/drawing-set.ts';
import { drawingSet } from '../../src/report/drawings/index.ts';
import { findBrowser } from '../../src/report/printing/find-browser.ts';
import { renderHtml } from '../../src/report/render-html.ts';
import { FACTS, many, study } from './fixtures.ts';

/** A page at true size with a line of 100 mm. */
function sheet(width: number, height: number): DrawingSet['patternPages'][number] {
  return {
    candidateId: 'C1',
    title: `sheet ${width} by ${height}`,
    pageSize: { width_mm: width, height_mm: height },
    caption: '',
    svg: `<svg width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"><title>Sheet</title><path d="M20 20h100" stroke="currentColor"/></svg>`,
  };
}

const SHEETS: [number, number][] = [
  [210, 297],
  [640, 420],
  [210, 297],
];

let pages: { text: string; width: number; height: number }[];

beforeAll(async () => {
  const all = many(40);
  const { sideViews } = drawingSet(all.candidates, study({ paper: 'Letter' }));
  const drawings = { ...NO_DRAWINGS, sideViews, patternPages: SHEETS.map(([w, h]) => sheet(w, h)) };
  const html = renderHtml(all, FACTS, { paper: 'Letter', drawings });
  const browser = await (await findBrowser(process.env)).open();
  try {
    const page = await browser.newPage();
    await page.setContent(html, { waitUntil: 'load' });
    // With scripts, as a reader prints from the screen: the heads of the ranking are buttons then.
    const data = await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: true, outline: true });
    const document = await getDocument({ data: new Uint8Array(data), verbosity: 0 }).promise;
    pages = [];
    for (let i = 1; i <= document.numPages; i++) {
      const p = await document.getPage(i);
      const [x0, y0, x1, y1] = p.view;
      const content = await p.getTextContent();
      const text = content.items.map((item) => ('str' in item ? item.str : '')).join(' ');
      pages.push({ text, width: x1 - x0, height: y1 - y0 });
    }
    await document.destroy();
  } finally {
    await browser.close();
  }
}, 240_000);

afterAll(() => {
  pages = [];
});

describe('printed page', () => {
  it('repeats the head of the ranking on each of its pages', () => {
    const rows = pages.filter((p) => (p.text.match(/1 fail, 1 caution/g) ?? []).length > 1);
    expect(rows.length).toBeGreaterThan(1);
    for (const page of rows) expect(page.text).toContain('Sustains');
  });

  it('answers on page one alone, and sets two of the other finalists to a page', () => {
    expect(pages[0].text).toContain('What was asked');
    expect(pages[1].text).toContain('Every finalist, ordered by');
    const starts = pages.map((p) => (p.text.match(/Rank \d+\. /g) ?? []).length);
    // 37 of 40 have no sheet of their own.
    expect(starts.filter((n) => n === 2).length).toBeGreaterThanOrEqual(17);
  });

  it('numbers its pages', () => {
    expect(pages[0].text.replace(/\s+/g, ' ')).toContain(`Page 1 of ${pages.length}`);
  });

  it('gives every pattern a page of exactly its own size, and no empty page beside it', () => {
    const inMillimetres = pages.slice(-SHEETS.length).map((p) => [(p.width / 72) * 25.4, (p.height / 72) * 25.4]);
    SHEETS.forEach(([width, height], i) => {
      // Chromium rounds paper to whole CSS pixels, 0.26 mm; the drawing on it is not rounded.
      expect(Math.abs(inMillimetres[i][0] - width)).toBeLessThan(0.3);
      expect(Math.abs(inMillimetres[i][1] - height)).toBeLessThan(0.3);
    });
    const letter = pages.slice(0, -SHEETS.length);
    for (const page of letter) expect([Math.round(page.width), Math.round(page.height)]).toEqual([612, 792]);
    for (const page of letter) expect(page.text.trim().length).toBeGreaterThan(60);
  });
});
