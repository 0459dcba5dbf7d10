import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Sensitivity } from '../../src/ranking/results.ts';
import { cycleTraces } from '../../src/report/charts/cycle-traces.ts';
import { overlaps, placeLabels, spread } from '../../src/report/charts/labels.ts';
import { mark } from '../../src/report/charts/marks.ts';
import { pressureField, thinField } from '../../src/report/charts/pressure-field.ts';
import { el, figure } from '../../src/report/charts/svg.ts';
import { shorten, textWidth, wrap } from '../../src/report/charts/text-width.ts';
import { rankSensitivities, tornado } from '../../src/report/charts/tornado.ts';
import { tradePicture, tradeReasons } from '../../src/report/charts/trade-picture.ts';
import { wallTemperature } from '../../src/report/charts/wall-temperature.ts';
import { tradeView } from '../../src/report/view/trade.ts';
import { architecture, band, many, results, running } from './fixtures.ts';

const REED = architecture('reed', false);

describe('labels', () => {
  const bounds = { x0: 0, y0: 0, x1: 600, y1: 400 };

  it('never lie on each other, on a mark, or outside, for any points', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            x: fc.double({ min: 10, max: 590, noNaN: true }),
            y: fc.double({ min: 10, max: 390, noNaN: true }),
          }),
          { maxLength: 60 },
        ),
        (points) => {
          const requests = points.map((p, i) => ({
            ...p,
            text: `C${i + 1} reed, premixed propane`,
            shorter: `C${i + 1}`,
            radius: 5,
          }));
          const obstacles = points.map((p) => ({ x0: p.x - 5, x1: p.x + 5, y0: p.y - 5, y1: p.y + 5 }));
          const placed = placeLabels(requests, obstacles, [], bounds, 11).filter((l) => l !== null);
          placed.forEach((label, i) => {
            expect(label.box.x0).toBeGreaterThanOrEqual(0);
            expect(label.box.x1).toBeLessThanOrEqual(600);
            for (const other of placed.slice(i + 1)) expect(overlaps(label.box, other.box)).toBe(false);
            for (const obstacle of obstacles) expect(overlaps(label.box, obstacle)).toBe(false);
          });
        },
      ),
      { seed: 20, numRuns: 60 },
    );
  });

  it('gives the first label a place even in a crowd, shortened when it must be', () => {
    const crowd = Array.from({ length: 40 }, (_, i) => ({
      x: 300 + (i % 8) * 4,
      y: 200 + Math.floor(i / 8) * 4,
      text: `C${i + 1}`,
      radius: 4,
    }));
    const [first] = placeLabels(
      crowd,
      crowd.map((c) => ({ x0: c.x - 4, x1: c.x + 4, y0: c.y - 4, y1: c.y + 4 })),
      [],
      bounds,
      11,
    );
    expect(first).not.toBeNull();
  });

  it('prefers a place without dots behind it', () => {
    const dots = [{ x0: 300, x1: 420, y0: 190, y1: 210 }];
    const [label] = placeLabels([{ text: 'C1', x: 295, y: 200, radius: 5 }], [], dots, bounds, 11);
    expect(overlaps(label!.box, dots[0])).toBe(false);
  });

  it('are spread in order with the gap asked for', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { maxLength: 7 }), (values) => {
        const moved = spread(values, 13, 0, 100);
        const sorted = [...moved].sort((a, b) => a - b);
        for (let i = 1; i < sorted.length; i++) expect(sorted[i] - sorted[i - 1]).toBeGreaterThanOrEqual(13 - 1e-9);
        for (const [i, v] of values.entries())
          for (const [j, w] of values.entries()) if (v < w) expect(moved[i]).toBeLessThan(moved[j]);
      }),
      { seed: 21 },
    );
  });
});

describe('text', () => {
  it('fits what it cuts and keeps every word that it wraps', () => {
    const text = 'Scaling limit of the sheet in intermittent service';
    expect(textWidth(shorten(text, 11, 120), 11)).toBeLessThanOrEqual(120);
    const lines = wrap(text, 11, 120);
    expect(lines.join(' ')).toBe(text);
    for (const line of lines) expect(textWidth(line, 11)).toBeLessThanOrEqual(120);
  });
});

describe('svg', () => {
  it('escapes text and attributes', () => {
    expect(el('text', { class: 'a"b' }, '<script>').markup).toBe('<text class="a&quot;b">&lt;script&gt;</text>');
  });

  it('refuses a coordinate that is not a number instead of drawing nonsense', () => {
    expect(() => el('circle', { cx: Number.NaN })).toThrow(/not a number/);
  });

  it('carries title and description', () => {
    const svg = figure({ id: 'x', title: 'T', desc: 'D', width: 10, height: 10 }).markup;
    expect(svg).toContain('aria-labelledby="x-title"');
    expect(svg).toContain('<title id="x-title">T</title><desc id="x-desc">D</desc>');
  });
});

describe('marks', () => {
  it('tell all architectures apart without colour', () => {
    const drawn = new Set<string>();
    let n = 0;
    for (const intake of ['reed', 'poppet', 'valveless-straight', 'valveless-u'] as const)
      for (const augmenter of [false, true])
        for (const mode of ['premixed', 'steady-injection', 'timed-injection'] as const) {
          drawn.add(mark(architecture(intake, augmenter, mode), 6, 0, 0).markup.replaceAll(/mark-[a-z-]+/g, ''));
          n++;
        }
    expect(drawn.size).toBe(n);
  });
});

describe('trade picture', () => {
  it('names the reasons of infeasible designs, most frequent first', () => {
    const dot = (reason: string, feasible = false) => ({ architecture: REED, tsfc: 1e-4, life: 100, feasible, reason });
    expect(tradeReasons([dot('hot'), dot('weak'), dot('weak'), dot('', true)])).toEqual([
      { letter: 'a', reason: 'weak', designs: 2 },
      { letter: 'b', reason: 'hot', designs: 1 },
    ]);
  });

  it('draws nothing when nothing ran', () => {
    expect(tradePicture({ id: 't', finalists: [], others: [], front: [] })).toBeNull();
  });

  it('draws one single candidate', () => {
    const one = {
      id: 'C1',
      anchor: 'C1',
      rank: 1,
      architecture: REED,
      tsfc: band(7e-5, 0),
      life: band(2000, 0),
      feasible: true,
      bestOfArchitecture: true,
    };
    expect(tradePicture({ id: 't', finalists: [one], others: [], front: ['C1'] })!.markup).toContain(
      'C1 reed, premixed propane',
    );
  });

  it('labels the best of every architecture and the first of a hundred', () => {
    const svg = tradeView(many(100)).figure!.svg.markup;
    expect(svg).toMatch(/class="label halo"[^>]*>C1\b/);
    expect(svg.length).toBeLessThan(400_000);
  });

  it('links every finalist to its sheet', () => {
    const svg = tradeView(results()).figure!.svg.markup;
    for (const id of ['C1', 'C2', 'C3', 'C4', 'C5']) expect(svg).toContain(`href="#${id}"`);
  });
});

describe('pressure picture', () => {
  it('keeps the mean when it is thinned out', () => {
    const field = Array.from({ length: 200 }, (_, i) => Array.from({ length: 150 }, (_, j) => 1e5 + i * j));
    const mean = (rows: number[][]) => rows.flat().reduce((a, b) => a + b, 0) / rows.flat().length;
    const thin = thinField(field, 80, 60);
    expect([thin.length, thin[0].length]).toEqual([80, 60]);
    // Blocks of 200/80 and 150/60 differ by a row: the mean may move by a per mille.
    expect(Math.abs(mean(thin) / mean(field) - 1)).toBeLessThan(2e-3);
  });

  it('stays small for a fine field, and is left out for none', () => {
    const r = running(REED, 180, 7e-5, 95);
    expect(pressureField('f', r.field!, r.profile.position, r.profile.diameter)!.markup.length).toBeLessThan(120_000);
    expect(pressureField('f', { position: [0], time: [0], pressure: [[1e5]] }, [0], [0.1])).toBeNull();
  });

  it('draws a field of one single pressure', () => {
    const flat = {
      position: [0, 1],
      time: [0, 1],
      pressure: [
        [1e5, 1e5],
        [1e5, 1e5],
      ],
    };
    expect(pressureField('f', flat, [0, 1], [0.1, 0.1])!.markup).toContain('xt-0');
  });
});

describe('cycle, wall and tornado', () => {
  it('leaves the lift panel out when nothing lifts', () => {
    const r = running(architecture('valveless-u', false), 180, 1e-4, 80);
    expect(cycleTraces('c', r.traces, 1e5, null).markup).not.toContain('Valve lift');
    expect(cycleTraces('c', running(REED, 180, 7e-5, 95).traces, 1e5, 0.006).markup).toContain('Valve lift');
  });

  it('draws each trace with a bounded number of points', () => {
    const n = 20_000;
    const long = Array.from({ length: n }, (_, i) => i / n);
    const traces = {
      time: long,
      headPressure: long,
      exitPressure: long,
      valveLift: long,
      intakeFlow: long,
      exitFlow: long,
      heatRelease: long,
      thrust: long,
    };
    expect(cycleTraces('c', traces, 1e5, 0.006).markup.length).toBeLessThan(80_000);
  });

  it('says the hottest wall and every limit in its description', () => {
    const r = running(REED, 180, 7e-5, 95);
    const svg = wallTemperature('w', r.profile, [{ name: 'Scaling limit', limit: 1143.15 }]).markup;
    const desc = /<desc[^>]*>(.*?)<\/desc>/.exec(svg)![1].replaceAll('\u00a0', ' ');
    expect(desc).toContain('Scaling limit 870 °C');
    expect(desc).toContain(`${Math.round(Math.max(...r.profile.wallTemperature) - 273.15)} °C`);
  });

  it('ranks what stops the engine first, then by the larger change', () => {
    const s = (label: string, tsfc: number | null, thrust: number | null, stops = false): Sensitivity => ({
      variable: label,
      label,
      step: '+1 %',
      tsfc,
      thrust,
      valveLife: null,
      stops,
    });
    const ranked = rankSensitivities([
      s('a', 0.01, 0),
      s('b', 0, -0.03),
      s('c', null, null),
      s('d', null, null, true),
      s('e', 0.01, 0),
    ]);
    expect(ranked.map((r) => r.label)).toEqual(['d', 'b', 'a', 'e', 'c']);
    expect(tornado('t', ranked)!.markup).toContain('this step stops the engine');
    expect(tornado('t', [])).toBeNull();
  });
});
