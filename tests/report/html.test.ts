import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { type DrawingSet, NO_DRAWINGS } from '../../src/report/drawing-set.ts';
import { drawingSet } from '../../src/report/drawings/index.ts';
import { missingCharacters } from '../../src/report/fonts.ts';
import { renderComparison } from '../../src/report/render-comparison.ts';
import { renderHtml } from '../../src/report/render-html.ts';
import { renderPatternBook } from '../../src/report/render-patterns.ts';
import { FACTS, many, noCandidates, results, study } from './fixtures.ts';

const HOSTILE = `</style></script><script>alert(1)</script><img src=x onerror=alert(2)>"'&{{question}}`;

const OPTIONS = { paper: 'A4', drawings: NO_DRAWINGS } as const;

const DRAWINGS: DrawingSet = {
  sideViews: {
    C1: {
      svg: '<svg width="170mm" height="60mm" viewBox="0 0 170 60"><title>Side view</title><path d="M0 0H1" stroke="currentColor"/></svg>',
      scaleText: '1 : 10',
    },
  },
  sections: {
    C1: [
      {
        svg: '<svg width="80mm" height="80mm" viewBox="0 0 80 80"><title>Face</title><path d="M0 0H1"/></svg>',
        caption: 'valve plate from the front, scale 1 : 2',
      },
    ],
  },
  patternPages: [
    {
      candidateId: 'C1',
      title: 'chamber cone',
      pageSize: { width_mm: 210, height_mm: 297 },
      svg: '<svg width="210mm" height="297mm" viewBox="0 0 210 297"><title>Cone</title><path d="M0 0H1"/></svg>',
      caption: 'sheet 1 of 2',
    },
    {
      candidateId: 'C1',
      title: 'chamber shell',
      pageSize: { width_mm: 640, height_mm: 420 },
      svg: '<svg width="640mm" height="420mm" viewBox="0 0 640 420"><title>Shell</title><path d="M0 0H1"/></svg>',
      caption: '',
    },
  ],
  patternBooks: [{ candidateId: 'C2', name: 'patterns/C2-patterns.pdf', pages: [] }],
  partsLists: {
    C1: [
      {
        mark: '1',
        name: 'chamber shell',
        count: 1,
        material: '304',
        stock: 'sheet 0.91 mm',
        thickness: 9.1e-4,
        cutLength: 0.644,
        cutWidth: 0.32,
        area: 0.206,
        mass: 1.5,
        cost: 31,
        note: '',
      },
      {
        mark: '2',
        name: 'tie bar',
        count: 4,
        material: 'S235',
        stock: 'bar Ø 8 mm',
        thickness: 0.008,
        cutLength: 0.12,
        cutWidth: 0,
        area: 0,
        mass: 0.19,
        cost: null,
        note: 'thread both ends',
      },
    ],
  },
  nesting: {
    C1: [
      {
        label: '304, sheet 1 of 1',
        waste: 0.31,
        svg: '<svg width="100mm" height="50mm" viewBox="0 0 100 50"><title>Nesting</title></svg>',
      },
    ],
  },
  files: [{ name: 'patterns/C1-cone.dxf', candidateId: 'C1', description: 'chamber cone' }],
};

const report = renderHtml(results(), FACTS, OPTIONS);
const drawn = renderHtml(results(), FACTS, { paper: 'Letter', drawings: DRAWINGS });
const empty = renderHtml(noCandidates(), FACTS, OPTIONS);
const comparison = renderComparison([results(), noCandidates()], { paper: 'A4' });
const office = drawingSet(results().candidates, study());
const whole = renderHtml(results(), FACTS, { paper: 'A4', drawings: office });
const PAGES: [string, string][] = [
  ['report', report],
  ['report with drawings', drawn],
  ['report as the drawing office fills it', whole],
  ['report without candidates', empty],
  ['comparison', comparison],
];

/** Text as a reader sees it. */
function textOf(html: string): string {
  return html
    .replace(/<(style|script)[\s\S]*?<\/\1>/g, ' ')
    .replace(/<[^>]+>/g, ' ')
    .replaceAll('&nbsp;', ' ')
    .replaceAll('\u00a0', ' ')
    .replace(/\s+/g, ' ');
}

/** The first ten faults of an HTML text. */
async function faults(html: string): Promise<string[]> {
  const validator = new HtmlValidate({
    extends: ['html-validate:recommended', 'html-validate:a11y'],
    rules: {
      'no-inline-style': 'off',
      'long-title': 'off',
      'no-trailing-whitespace': 'off',
      'void-style': 'off',
      'attribute-boolean-style': 'off',
    },
  });
  const outcome = await validator.validateString(html);
  return outcome.results
    .flatMap((r) => r.messages.map((m) => `${m.line}:${m.column} ${m.ruleId} ${m.message}`))
    .slice(0, 10);
}

describe.each(PAGES)('%s', (_name, html) => {
  it('is valid HTML', async () => {
    expect(await faults(html)).toEqual([]);
  });

  it('has each id once, and every link inside the page arrives', () => {
    const ids = [...html.matchAll(/\sid="([^"]+)"/g)].map((m) => m[1]);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
    const known = new Set(ids);
    const targets = [...html.matchAll(/href="#([^"]+)"/g)].map((m) => m[1]);
    expect(targets.length).toBeGreaterThan(5);
    expect(targets.filter((t) => !known.has(t))).toEqual([]);
    for (const list of html.matchAll(/aria-(?:labelledby|describedby)="([^"]+)"/g)) expect(known).toContain(list[1]);
  });

  it('asks the network for nothing and forbids it', () => {
    expect(html).toContain('http-equiv="Content-Security-Policy"');
    expect(html).toContain('default-src &#39;none&#39;');
    const outside = html
      .replaceAll('http://www.w3.org/2000/svg', '')
      .match(/(?:src|href|url\(|@import)[^>]{0,20}(?:https?:)?\/\/[a-z]/gi);
    expect(outside).toBeNull();
    expect(html).not.toMatch(/<(?:link|iframe|object|embed|img)\b/);
  });

  it('uses only characters that its embedded font has', () => {
    expect(missingCharacters(textOf(html))).toEqual([]);
  });

  it('shows no half-set value', () => {
    expect(textOf(html)).not.toMatch(/undefined|NaN|\[object|Infinity/);
  });

  it('has headings without gaps, for the outline', () => {
    const levels = [...html.matchAll(/<h([1-6])/g)].map((m) => Number(m[1]));
    expect(levels[0]).toBe(1);
    expect(levels.filter((l) => l === 1)).toHaveLength(1);
    levels.forEach((level, i) => {
      if (i > 0) expect(level).toBeLessThanOrEqual(levels[i - 1] + 1);
    });
  });
});

describe('book of patterns', () => {
  it('is valid HTML, holds each page once, and asks the network for nothing', async () => {
    const [book] = office.patternBooks;
    const html = renderPatternBook(book, results({ title: HOSTILE }));
    expect(await faults(html)).toEqual([]);
    expect([...html.matchAll(/<section class="pattern /g)]).toHaveLength(book.pages.length);
    expect(html).not.toContain(HOSTILE);
    expect(html).toContain('default-src &#39;none&#39;');
  });
});

describe('report', () => {
  it('names on page one what the recommended candidate fails, and says nothing where it fails nothing', () => {
    const bad = results();
    const [first] = bad.candidates;
    first.feasible = true;
    for (const check of first.assessment.checks) check.verdict = 'pass';
    expect(textOf(renderHtml(bad, FACTS, OPTIONS))).not.toContain('Watch with C1');
    const [check] = first.assessment.checks;
    Object.assign(check, {
      verdict: 'fail',
      binding: false,
      title: 'Speed at the stop',
      value: 12.4,
      limit: 10,
      unit: 'm/s',
    });
    const text = textOf(renderHtml(bad, FACTS, OPTIONS));
    expect(text).toContain('fails 1 check of good practice: speed at the stop (12.4 m/s, limit 10.0 m/s).');
    expect(text.indexOf('Watch with C1')).toBeLessThan(text.indexOf('Best candidates'));
  });

  it('calls a step of a dimension a tolerance, another petal or material none', () => {
    const some = results();
    const [first] = some.candidates;
    const step = (label: string, words: string) => ({
      ...first.sensitivities[0],
      stops: false,
      label,
      step: words,
      thrust: 0.5,
      tsfc: 0.1,
    });
    first.sensitivities = [step('number of petals', '+1'), step('petal length', '+1 % (0.3 mm)')];
    const text = textOf(renderHtml(some, FACTS, OPTIONS));
    const tolerances = text.slice(text.indexOf('Hold these best'), text.indexOf('Hold these best') + 120);
    expect(tolerances).toContain('petal length');
    expect(tolerances).not.toContain('number of petals');
  });

  it('links each sheet to the ranking, the trade picture and its parts', () => {
    const sheet = whole.slice(whole.indexOf('<article class="sheet" id="C1"'));
    for (const target of ['#ranking', '#trade', '#parts-C1'])
      expect(sheet.slice(0, sheet.indexOf('</article>'))).toContain(`href="${target}"`);
    expect(whole.slice(whole.indexOf('id="figure-trade"'))).toMatch(/<a [^>]*href="#C1"/);
  });

  it('repeats to the byte', () => {
    expect(renderHtml(results(), FACTS, OPTIONS) === report).toBe(true);
  });

  it('does not depend on the order in which other reports were made', () => {
    renderHtml(noCandidates(), FACTS, OPTIONS);
    expect(renderHtml(results(), FACTS, OPTIONS) === report).toBe(true);
  });

  it('answers on its first page, contradictions before all', () => {
    const text = textOf(report);
    const order = [
      'Which engine pushes the sled',
      'One cylinder of vapour cannot feed',
      'Build the reed-valved engine',
      'What failed, and why',
      'How well the model is proved',
      'Ranking',
    ];
    const places = order.map((words) => text.indexOf(words, text.indexOf('Question.')));
    expect(places.every((p) => p >= 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
  });

  it('shows every finalist in both systems of units', () => {
    const text = textOf(report);
    for (const id of ['C1', 'C2', 'C3', 'C4', 'C5']) expect(report).toContain(`id="${id}"`);
    expect(text).toContain('186 N (174–199)');
    expect(text).toContain('42 lbf (39–45)');
    expect(text).toContain('0.192 kg/(N·h) (0.176–0.209)');
    expect(text).toContain('1.88 lb/(lbf·h) (1.73–2.05)');
  });

  it('says why the poppet failed, with force and time, and what would free it', () => {
    const text = textOf(report);
    expect(text).toContain('suction offers 71.0 N, valve needs 372 N');
    expect(text).toContain('must be open in 3.30 ms, valve takes 7.60 ms');
    expect(text).toContain('Six valves of 34 mm');
  });

  it('draws only the valves that do not follow beside one another', () => {
    const figure = /<figure id="figure-forces">.*?<\/figure>/s.exec(report)![0];
    expect(figure).toContain('poppet');
    expect(figure).not.toContain('reed');
  });

  it('sets the answer in paragraphs with the first words of each as its head', () => {
    const some = results();
    some.answer = ['Build C1.', 'Why not poppet valves? None ran.', 'Explored: 9 designs.', 'Plain words.'];
    const html = renderHtml(some, FACTS, OPTIONS);
    expect(html).toContain('<p class="lead">Build C1.</p>');
    expect(html).toContain('<p><b>Why not poppet valves?</b> None ran.</p>');
    expect(html).toContain('<p><b>Explored:</b> 9 designs.</p>');
    expect(html).toContain('<p>Plain words.</p>');
  });

  it('shows what better sheet gains and what the augmenter model says, when the results hold it', () => {
    const some = results();
    const sheet = { name: '304', thickness: 0.91e-3, gauge: 20, present: true, yieldUse: 0.2, oxidationLife: 7200 };
    some.candidates[0].alternatives = [{ ...sheet, creepLife: null, overScalingLimit: -40, massRatio: 1 }];
    some.candidates[0].performance.running!.augmenterNote = 'Shorter than any that was tested.';
    const text = textOf(renderHtml(some, FACTS, OPTIONS));
    expect(text).toContain('304, 0.91 mm (0.0358 in), gauge 20 (present)');
    expect(text).toContain('40 K clear');
    expect(text).toContain('over 10,000 h');
    expect(text).toContain('Augmenter. Shorter than any that was tested.');
    expect(textOf(report)).not.toContain('Thicker or better sheet');
  });

  it('never shrinks a drawing by its height, since each states its scale', () => {
    expect(readFileSync(join('templates', 'report.css'), 'utf8')).not.toMatch(/svg[^{}]*\{[^}]*max-height/);
  });

  it('says honestly which published figures are missed and which only check', () => {
    expect(report).toContain('<span class="verdict fail">no</span>');
    expect(textOf(report)).toContain('Of 3 that only check the model, 2 inside. Outside: frequency of 22-inch engine.');
  });

  it('marks invented data, and leaves the mark out otherwise', () => {
    expect(textOf(report)).toContain('are invented');
    expect(report).toContain('invented demo data');
    const real = renderHtml(results({ invented: false }), FACTS, OPTIONS);
    expect(textOf(real)).not.toContain('invented');
    expect(real.includes('invented demo data')).toBe(false);
  });

  it('prints a blank with the expected value and band beside it for each measurement', () => {
    const text = textOf(report);
    expect(text).toContain('Measurement sheet, C1');
    expect(text).toContain('94 Hz (90–98)');
    expect((report.match(/class="blank"/g) ?? []).length).toBeGreaterThan(3 * 3 * 8);
  });

  it('chooses the paper by configuration', () => {
    expect(report).toContain('@page{size:A4;');
    expect(drawn).toContain('@page{size:Letter;');
  });

  it('sets drawings, true-size pages and parts', () => {
    expect(drawn).toContain('@page sheet-210x297{size:210mm 297mm;margin:0');
    expect(drawn).toContain('@page sheet-640x420{size:640mm 420mm;margin:0');
    const text = textOf(drawn);
    expect(text).toContain('side view, scale 1 : 10');
    expect(text).toContain('644 × 320 mm');
    expect(text).toContain('31.00 EUR and 1 without a price');
    expect(text).toContain('31 % of the sheet is left over');
    expect(drawn).toContain('href="patterns/C1-cone.dxf"');
    expect(text).toContain('2 pages of C1 close this report. Every shell');
    expect(drawn).toContain('href="patterns/C2-patterns.pdf"');
    // Only where the first page is one.
    expect(text).not.toContain('map of how the tiles join');
  });

  it('keeps text of the configuration harmless everywhere', () => {
    const bad = results({ title: HOSTILE, question: HOSTILE, notes: HOSTILE });
    bad.study.slug = HOSTILE;
    bad.study.brief.currency = HOSTILE;
    bad.study.search.seed = HOSTILE;
    bad.answer = [HOSTILE];
    bad.contradictions = [HOSTILE];
    bad.stoppedBecause = HOSTILE;
    for (const c of bad.candidates) {
      c.why = HOSTILE;
      c.architecture = { ...c.architecture, label: HOSTILE };
      c.assessment.lifeLimiter = HOSTILE;
      for (const check of c.assessment.checks)
        Object.assign(check, { title: HOSTILE, sentence: HOSTILE, source: HOSTILE });
      for (const s of c.sensitivities) Object.assign(s, { label: HOSTILE, step: HOSTILE });
    }
    for (const a of bad.architectures)
      Object.assign(a, { reason: HOSTILE, freedBy: HOSTILE, failures: [{ reason: HOSTILE, count: 1 }] });
    for (const p of bad.tradePoints) p.reason = HOSTILE;
    for (const html of [renderHtml(bad, FACTS, OPTIONS), renderComparison([bad, bad], { paper: 'A4' })]) {
      expect(html.match(/<script/g)).toHaveLength(1);
      expect(html.match(/<\/style>/g)).toHaveLength(1);
      expect(html.includes('<img')).toBe(false);
      // Attribute values left out, no tag may hold the hostile attribute.
      expect(/<[^>]*\sonerror=/.test(html.replace(/"[^"]*"/g, '""'))).toBe(false);
      expect(html.includes('{{question}}')).toBe(true);
    }
  });

  it('is useful without one candidate', () => {
    const text = textOf(empty);
    expect(text).toContain('No candidate satisfies the brief');
    expect(text).toContain('What would free it');
    expect(text).toContain('longer than the envelope');
    expect(empty).not.toContain('id="candidates"');
    for (const part of ['Running it', 'Safety', 'Method']) expect(text).toContain(part);
  });

  it('survives a study in which nothing at all was found', () => {
    const bare = {
      ...noCandidates(),
      tradePoints: [],
      architectures: [],
      convergence: [],
      validation: [],
      constants: [],
      contradictions: [],
      answer: [],
    };
    expect(textOf(renderHtml(bare, FACTS, OPTIONS))).toContain('No design ran');
  });

  it('renders a hundred finalists to a file that mail can carry', () => {
    const html = renderHtml(many(100), FACTS, OPTIONS);
    expect(html).toContain('id="C100"');
    expect(html.length).toBeLessThan(3e6);
  });

  it('says of a measured engine that the model cannot run just that', () => {
    const some = results();
    Object.assign(some.validation[0], { computed: null, within: false });
    expect(textOf(renderHtml(some, FACTS, OPTIONS))).toMatch(/does not run/);
  });

  it('embeds the alphabets that its text needs', () => {
    const greek = renderHtml(results({ title: 'Ωμέγα' }), FACTS, OPTIONS);
    expect(greek.match(/@font-face/g)!.length).toBeGreaterThan(report.match(/@font-face/g)!.length);
  });
});

describe('comparison', () => {
  it('puts the best of each study side by side and warns of unlike models', () => {
    const other = { ...results(), modelVersion: 'another' };
    const html = renderComparison([results(), other], { paper: 'A4' });
    expect(textOf(html)).toContain('different versions of the performance model');
    expect(html.match(/<tr id="study-[12]-C[123]"/g)).toHaveLength(6);
  });

  it('needs two studies', () => {
    expect(() => renderComparison([results()], { paper: 'A4' })).toThrow(/two or more/);
  });
});

describe('templates', () => {
  it('have no unescaped tag', () => {
    for (const file of readdirSync('templates', { recursive: true, encoding: 'utf8' }))
      if (file.endsWith('.hbs')) expect(readFileSync(join('templates', file), 'utf8')).not.toMatch(/\{\{\{|\{\{&/);
  });
});
