import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { enginePatterns } from '../../shared/fabrication/patterns/engine-patterns.ts';
import { outlineArea, outlineLength } from '../../shared/fabrication/patterns/outline.ts';
import { NO_DRAWINGS } from '../../src/report/drawing-set.ts';
import { patternPages } from '../../src/report/drawings/pattern-pages.ts';
import { findBrowser, type ProvenBrowser } from '../../src/report/printing/find-browser.ts';
import { printPdf } from '../../src/report/printing/print-pdf.ts';
import { renderHtml } from '../../src/report/render-html.ts';
import { poppetEngine, uBentEngine } from '../fabrication/engines.ts';
import { readPdf } from '../printing/read-pdf.ts';
import { FACTS, results } from '../report/fixtures.ts';
import { readPath } from './read-back.ts';
import { readPdfLoops } from './read-pdf-loops.ts';
import { readPaths, readTexts } from './read-svg.ts';

const TOLERANCE = 0.05;
/** With every kind of sheet part: straight, cone, flare, gores of the bend, segments of an augmenter's bell, bars. */
const engine = { ...uBentEngine(), augmenter: poppetEngine().augmenter };
const pagesOf = (paper: 'A4' | 'Letter', mostPages = 60) =>
  patternPages(engine, paper, { id: 'C1', marks: {}, mostPages });
/** Parts that are rolled up to a seam, as the trade does them: everything of sheet but bars, plates and petals. */
const rolled = enginePatterns(engine).filter((p) => p.marks.some((mark) => mark.layer === 'SEAM'));
const firstPoint = (d: string): [number, number] => {
  const [, x, y] = /^M([-\d.]+) ([-\d.]+)/.exec(d)!;
  return [Number(x), Number(y)];
};

describe.each(['A4', 'Letter'] as const)('pattern pages on %s', (paper) => {
  const pages = pagesOf(paper);
  const tiles = pages.filter((p) => / row \d+ of \d+/.test(p.title));

  it('carry a check bar of exactly 100 mm', () => {
    const bars = pages.flatMap((p) =>
      [...(/data-check-bar="100 mm"><path d="M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)"/.exec(p.svg) ?? [])]
        .slice(1)
        .map(Number),
    );
    expect(bars.length).toBeGreaterThanOrEqual(4 * tiles.length);
    for (let i = 0; i < bars.length; i += 4) {
      expect(bars[i + 2] - bars[i]).toBe(100);
      expect(bars[i + 3]).toBe(bars[i + 1]);
    }
  });

  it('show every tile of a pattern at the same size and in one place when the crosses of one name are laid on each other', () => {
    expect(tiles.length).toBeGreaterThan(3);
    const crosses = new Map<string, { x: number; y: number }[]>();
    for (const { title, svg } of tiles) {
      const pattern = title.replace(/, row.*/, '');
      const cut = readPaths(svg).find((p) => p.layer === 'CUT')!;
      const [ox, oy] = firstPoint(cut.d);
      for (const [, cx, cy, name] of svg.matchAll(
        /<circle cx="([\d.]+)" cy="([\d.]+)"[^>]*>(?:<path[^>]*>){2}<text[^>]*>([RC]\d+\/\d+[ab])</g,
      )) {
        const key = `${pattern} ${name}`;
        crosses.set(key, [...(crosses.get(key) ?? []), { x: Number(cx) - ox, y: Number(cy) - oy }]);
      }
    }
    expect(crosses.size).toBeGreaterThan(1);
    for (const [name, places] of crosses) {
      expect(places.length, name).toBe(2);
      expect(Math.hypot(places[0].x - places[1].x, places[0].y - places[1].y), name).toBeLessThan(0.01);
    }
  });

  it('hold every rolled part at true size, whole: each corner lies in the window of a printed tile', () => {
    expect(rolled.length).toBeGreaterThan(8);
    for (const pattern of rolled) {
      const length = outlineLength(pattern.outlines[0]) * 1e3;
      const own = pages.filter(
        (p) =>
          p.svg.includes('data-check-bar') &&
          readPaths(p.svg).some((q) => q.layer === 'CUT' && Math.abs(readPath(q.d)[0].length - length) < TOLERANCE),
      );
      expect(own.length, pattern.name).toBeGreaterThan(0);
      const seen = own.flatMap(({ svg }) => {
        const [left, top, wide, high] = /<rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"/
          .exec(svg)!
          .slice(1)
          .map(Number);
        const cut = readPaths(svg).find(
          (q) => q.layer === 'CUT' && Math.abs(readPath(q.d)[0].length - length) < TOLERANCE,
        )!;
        return [...cut.d.matchAll(/(-?[\d.]+) (-?[\d.]+)(?=[A-Z])/g)].map(([, x, y]) => ({
          inside: Number(x) >= left && Number(x) <= left + wide && Number(y) >= top && Number(y) <= top + high,
        }));
      });
      const corners = seen.length / own.length;
      expect(Number.isInteger(corners) && corners >= 3, pattern.name).toBe(true);
      for (let k = 0; k < corners; k++)
        expect(
          own.some((_, i) => seen[i * corners + k].inside),
          `${pattern.name}, corner ${k}`,
        ).toBe(true);
    }
  });

  it('begin with a map that numbers each tile once', () => {
    expect(pages[0].title).toBe('Map of the pattern pages');
    const numbers = readTexts(pages[0].svg).flatMap(({ text }) => (/^\d+$/.test(text) ? [Number(text)] : []));
    expect(numbers.sort((a, b) => a - b)).toEqual(tiles.map((_, i) => i + 1));
  });

  it('keep within a limit that counts every page, and then say which files hold what is not tiled', () => {
    const few = pagesOf(paper, 14);
    expect(few.length).toBeLessThanOrEqual(14);
    const texts = few.flatMap((p) => readTexts(p.svg).map((t) => t.text)).join('\n');
    expect(texts).toMatch(/true size in C1-[a-z0-9-]+\.svg and \.dxf/);
    for (const pattern of enginePatterns(engine)) expect(texts).toContain(pattern.name);
  });

  it('draw the intake cone with the exact sector of a cone of mid-surface diameters 46 and 101 mm', () => {
    const slant = Math.hypot(50, 27.5);
    const large = (slant * 101) / 55;
    const small = (slant * 46) / 55;
    const angle = (Math.PI * 55) / slant;
    const page = pages.find((p) => p.svg.includes('Intake cone') && !p.title.includes('Map'))!;
    const loops = readPaths(page.svg)
      .filter((p) => p.layer === 'CUT')
      .flatMap((p) => readPath(p.d));
    const exact = angle * (large + small) + 2 * slant + 2 * 6;
    expect(Math.min(...loops.map((l) => Math.abs(l.length - exact)))).toBeLessThan(TOLERANCE);
  });
});

describe('printed patterns', () => {
  let folder: string;
  let html: string;
  let browser: ProvenBrowser;
  let pdf: Awaited<ReturnType<typeof readPdf>>;
  const pages = pagesOf('A4');

  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'patterns-'));
    html = path.join(folder, 'report.html');
    const all = results({ paper: 'A4' });
    await writeFile(html, renderHtml(all, FACTS, { paper: 'A4', drawings: { ...NO_DRAWINGS, patternPages: pages } }));
    const file = path.join(folder, 'report.pdf');
    browser = await findBrowser();
    await printPdf(html, file, { timestamp: FACTS.startedAt, title: 'Patterns', browser });
    pdf = await readPdf(file);
  }, 120_000);

  afterAll(() => rm(folder, { recursive: true, force: true }));

  it('come out of the PDF at true size: paper, check bar and a gore, to 0.05 mm', () => {
    const mm = (points: number) => (points * 25.4) / 72;
    const sheets = pdf.pages.filter((p) => p.text.includes('measure this bar before cutting'));
    expect(sheets.length).toBe(pages.filter((p) => p.svg.includes('data-check-bar')).length);
    for (const sheet of sheets) {
      expect(Math.abs(mm(sheet.width) - 210)).toBeLessThan(0.5);
      expect(Math.abs(mm(sheet.height) - 297)).toBeLessThan(0.5);
      const bar = sheet.boxes.filter((b) => b.height < 0.01).map((b) => Math.abs(mm(b.width) - 100));
      expect(Math.min(...bar)).toBeLessThan(TOLERANCE);
    }
    // Full gore of the bend: girth of the mid-surface and seam allowance by twice the half length at its back.
    const gore = [Math.PI * 61 + 6, 2 * Math.tan(Math.PI / 16) * (110 + 30.5)].sort((x, y) => x - y);
    const misses = sheets.flatMap((sheet) =>
      sheet.boxes.map((b) => {
        const sides = [mm(b.width), mm(b.height)].sort((x, y) => x - y);
        return Math.max(Math.abs(sides[0] - gore[0]), Math.abs(sides[1] - gore[1]));
      }),
    );
    expect(Math.min(...misses)).toBeLessThan(TOLERANCE);
  });

  it('come out of the PDF with the lengths, arcs and areas of every rolled part', async () => {
    const loops = (await readPdfLoops(path.join(folder, 'report.pdf'))).flat();
    for (const { name, outlines } of rolled) {
      for (const outline of outlines) {
        const length = outlineLength(outline) * 1e3;
        const area = outlineArea(outline) * 1e6;
        const drawn = loops.filter(
          (l) => Math.abs(l.length - length) < TOLERANCE && Math.abs(Math.abs(l.area) - area) < TOLERANCE * length,
        );
        expect(drawn.length, name).toBeGreaterThan(0);
      }
    }
  }, 60_000);

  it('are cut off by nothing round them', async () => {
    const open = await browser.open();
    try {
      const page = await open.newPage();
      await page.emulateMediaType('print');
      await page.goto(pathToFileURL(html).href);
      const clipped = await page.evaluate(`[...document.querySelectorAll('.pattern')].filter((pattern) => {
        for (let e = pattern.parentElement; e; e = e.parentElement)
          if (getComputedStyle(e).overflowX !== 'visible') return true;
        return false;
      }).length`);
      expect(clipped).toBe(0);
      expect(await page.evaluate(`document.querySelectorAll('.pattern').length`)).toBe(pages.length);
    } finally {
      await open.close();
    }
  }, 60_000);
});
