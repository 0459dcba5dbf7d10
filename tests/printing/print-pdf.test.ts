import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { ProvenBrowser } from '../../src/report/printing/find-browser.ts';
import { findBrowser } from '../../src/report/printing/find-browser.ts';
import { PrintError, printPdf } from '../../src/report/printing/print-pdf.ts';
import { interFace, scratchFolder, writePage } from './fixture.ts';
import { readPdf } from './read-pdf.ts';

const TIMESTAMP = '2026-01-31T22:00:00Z';
const MM = 72 / 25.4;
let folder: string;
let browser: ProvenBrowser;

beforeAll(async () => {
  folder = await scratchFolder();
  browser = await findBrowser();
}, 120_000);

async function print(name: string, body: string, head = '', title = 'A study') {
  const html = await writePage(folder, `${name}.html`, body, head);
  const pdf = path.join(folder, `${name}.pdf`);
  const printed = await printPdf(html, pdf, { timestamp: TIMESTAMP, title, browser });
  return { html, pdf, printed };
}

describe('a printed report', () => {
  it('holds text, tags, outline, title and the date of the study', async () => {
    const { pdf, printed } = await print(
      'plain',
      '<h1>Answer</h1><p>Build it.</p><h2>Ranking</h2>',
      '',
      'Réed (1) \\ study',
    );
    const read = await readPdf(pdf);
    expect(read.pages[0].text).toContain('Build it.');
    expect(read.outline.map((entry) => [entry.title, entry.items.map((item) => item.title)])).toEqual([
      ['Answer', ['Ranking']],
    ]);
    expect(read.tagged).toBe(true);
    expect(read.info.Title).toBe('Réed (1) \\ study');
    expect(read.info.CreationDate).toBe("D:20260131220000+00'00'");
    expect(read.info.ModDate).toBe("D:20260131220000+00'00'");
    expect(printed.pages).toBe(1);
    // Every letter of the three lines, counted without our reader.
    expect(printed.glyphs).toBeGreaterThanOrEqual('AnswerBuildit.Ranking'.length);
    expect(printed.missingGlyphs).toBe(0);
  });

  it('has the same bytes when it is printed again from another file name', async () => {
    const body = '<h1>Same</h1><p><a href="#x">inside</a> <a href="patterns/a.dxf">beside</a></p><p id="x">here</p>';
    const first = await print('same-1', body);
    const second = await print('same-2', body);
    expect((await readFile(first.pdf)).equals(await readFile(second.pdf))).toBe(true);
    expect((await readFile(first.pdf)).toString('latin1')).not.toContain('file:');
  });

  it('embeds the font of the page', async () => {
    const { printed } = await print(
      'font',
      '<p>Thrust 40 lbf</p>',
      `<style>${await interFace()}p{font-family:Inter}</style>`,
    );
    expect(printed.fonts).toEqual(['Inter-Regular']);
  });

  it('mixes page sizes and keeps 100 mm at 100 mm', async () => {
    const bar = (x: number, y: number) =>
      `<svg xmlns="http://www.w3.org/2000/svg" width="150mm" height="150mm" viewBox="0 0 150 150">
        <rect x="${x}" y="${y}" width="100" height="1"/><rect x="${x}" y="${y + 5}" width="1" height="100"/></svg>`;
    const { pdf } = await print(
      'sizes',
      `<section class="a">one ${bar(5, 5)}</section><section class="b">two ${bar(20, 7)}</section>
       <section class="c">three ${bar(3, 30)}</section><section class="d">four ${bar(9, 9)}</section>`,
      `<style>
        @page{margin:10mm} @page a{size:A4} @page b{size:841mm 1189mm} @page c{size:Letter} @page d{size:1500mm 300mm}
        body{margin:0} section{break-after:page} section:last-child{break-after:auto}
        .a{page:a}.b{page:b}.c{page:c}.d{page:d} svg{display:block}</style>`,
    );
    const { pages } = await readPdf(pdf);
    const expected = [
      [210, 297],
      [841, 1189],
      [215.9, 279.4],
      [1500, 300],
    ];
    expect(pages.length).toBe(expected.length);
    pages.forEach((page, i) => {
      // Chromium cuts the sheet to its device grid: at most 0.2 mm; the drawing on it stays true.
      expect(Math.abs(page.width / MM - expected[i][0])).toBeLessThan(0.2);
      expect(Math.abs(page.height / MM - expected[i][1])).toBeLessThan(0.2);
      const across = page.boxes.find((box) => Math.abs(box.width / MM - 100) < 2 && box.height / MM < 2);
      const down = page.boxes.find((box) => Math.abs(box.height / MM - 100) < 2 && box.width / MM < 2);
      expect(Math.abs(across!.width / MM - 100)).toBeLessThan(0.01);
      expect(Math.abs(down!.height / MM - 100)).toBeLessThan(0.01);
    });
  });

  it('runs no script and loads nothing from outside', async () => {
    await writeFile(path.join(folder, 'secret.txt'), 'SECRET');
    await writeFile(path.join(folder, 'secret.css'), 'p::after{content:"STYLED"}');
    const { pdf, printed } = await print(
      'hostile',
      `<p>kept</p><iframe src="secret.txt"></iframe><img alt="" src="http://127.0.0.1:9/x.png">
       <script>document.body.append('SCRIPTED')</script>`,
      '<link rel="stylesheet" href="secret.css">',
    );
    const text = (await readPdf(pdf)).pages.map((page) => page.text).join(' ');
    expect(text).toContain('kept');
    expect(text).not.toMatch(/SECRET|STYLED|SCRIPTED/);
    expect(printed.notes.filter((note) => note.includes('refused')).length).toBe(3);
  });

  it('says how many characters have no font', async () => {
    // A private-use character, which no font of any machine draws.
    const { printed } = await print('tofu', '<p>box \u{10ffff}</p>');
    expect(printed.missingGlyphs).toBeGreaterThan(0);
    expect(printed.notes.join()).toContain('no font');
  });

  it('refuses a PDF that lost its text and keeps the older one', async () => {
    const { html, pdf } = await print('lost', '<p>first print</p>');
    const before = await readFile(pdf);
    await writePage(folder, 'lost.html', '<p>words that stay on the screen only</p>', '<style>p{font-size:0}</style>');
    await expect(printPdf(html, pdf, { timestamp: TIMESTAMP, title: 't', browser })).rejects.toThrow(/not kept/);
    expect((await readFile(pdf)).equals(before)).toBe(true);
    expect((await readdir(folder)).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  it('tries once more when the browser falls over, then says what happened', async () => {
    const html = await writePage(folder, 'crash.html', '<p>kept</p>');
    const pdf = path.join(folder, 'crash.pdf');
    let starts = 0;
    const falls = (times: number): ProvenBrowser => ({
      ...browser,
      async open() {
        const opened = await browser.open();
        if (starts++ < times) opened.process()!.kill('SIGKILL');
        return opened;
      },
    });
    const printed = await printPdf(html, pdf, { timestamp: TIMESTAMP, title: 't', browser: falls(1) });
    expect(printed.pages).toBe(1);
    expect(starts).toBe(2);
    starts = 0;
    const error = await printPdf(html, pdf, { timestamp: TIMESTAMP, title: 't', browser: falls(2) }).catch((e) => e);
    expect(error).toBeInstanceOf(PrintError);
    expect(error.message).toContain(browser.version);
  });

  it('passes on that the PDF cannot be written', async () => {
    const html = await writePage(folder, 'nowhere.html', '<p>kept</p>');
    const pdf = path.join(folder, 'no-such-folder', 'a.pdf');
    await expect(printPdf(html, pdf, { timestamp: TIMESTAMP, title: 't', browser })).rejects.toThrow(/ENOENT/);
  });

  it('names a file that is not there', async () => {
    const missing = path.join(folder, 'missing.html');
    await expect(
      printPdf(missing, path.join(folder, 'm.pdf'), { timestamp: TIMESTAMP, title: 't', browser }),
    ).rejects.toThrow(/missing\.html/);
  });
});
