import { describe, expect, it } from 'vitest';
import { nestParts } from '../../shared/fabrication/nesting.ts';
import { partsList } from '../../shared/fabrication/parts.ts';
import { enginePatterns } from '../../shared/fabrication/patterns/engine-patterns.ts';
import { sheetFor, sheetUses, useOf } from '../../shared/fabrication/sheet-use.ts';
import type { Candidate } from '../../src/ranking/results.ts';
import { drawingSet } from '../../src/report/drawings/index.ts';
import { bigReedEngine, poppetEngine, reedEngine, uBentEngine } from '../fabrication/engines.ts';
import { results, study } from '../report/fixtures.ts';
import { readPath } from './read-back.ts';
import { collisions, readPaths, readTexts, unbalanced } from './read-svg.ts';

const [model] = results().candidates;
const engines = [
  poppetEngine(),
  uBentEngine(),
  bigReedEngine(),
  { ...reedEngine(), augmenter: poppetEngine().augmenter },
];
const candidates = engines.map((engine, i): Candidate => ({ ...model, id: `C${i + 1}`, rank: i + 1, engine }));
const sheet = (material: '304' | '321', thickness: number) => ({
  material,
  thickness,
  width: 1,
  length: 2,
  sheets: null,
  price: 60,
});
const base = study();
const drawn = (paper: 'A4' | 'Letter') => ({
  ...base,
  report: { ...base.report, paper },
  brief: { ...base.brief, sheets: [sheet('304', 0.0008), sheet('321', 0.001)] },
});

describe.each(['A4', 'Letter'] as const)('the drawings of a study on %s', (paper) => {
  const set = drawingSet(candidates, drawn(paper));
  const allPages = [...set.patternPages, ...set.patternBooks.flatMap((book) => book.pages)];
  const allSvg = [
    ...Object.values(set.sideViews).map((v) => v.svg),
    ...Object.values(set.sections).flatMap((list) => list.map((s) => s.svg)),
    ...Object.values(set.nesting).flatMap((list) => list.map((s) => s.svg)),
    ...allPages.map((p) => p.svg),
  ];

  it('are complete: side views of all, the rest of the first three, nothing failed', () => {
    expect(set.failures).toEqual([]);
    expect(Object.keys(set.sideViews)).toEqual(['C1', 'C2', 'C3', 'C4']);
    for (const record of [set.sections, set.partsLists, set.nesting]) {
      expect(Object.keys(record)).toEqual(['C1', 'C2', 'C3']);
    }
    // Face and section of the poppet and its augmenter; a valveless engine has none; face and section of the reed.
    expect(['C1', 'C2', 'C3'].map((id) => set.sections[id].length)).toEqual([3, 0, 2]);
  });

  it('are well-formed, of one colour, without script or outside reference, with identifiers of their own', () => {
    const ids = allSvg.flatMap((svg) => [...svg.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]));
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^C[1-4]-[A-Za-z0-9-]+$/);
    for (const svg of allSvg) {
      expect(unbalanced(svg)).toEqual([]);
      expect(svg).not.toMatch(/NaN|Infinity|undefined|<script|<style|href|#[0-9a-f]{3,6}\b(?!-)|<image/i);
      const colours = [...svg.matchAll(/(?:fill|stroke)="([^"]+)"/g)].map((m) => m[1]);
      expect([...new Set(colours)].sort().filter((c) => c !== 'currentColor' && c !== 'none')).toEqual([]);
      const references = [...svg.matchAll(/url\(#([^)]+)\)|aria-(?:labelledby|describedby)="([^"]+)"/g)];
      for (const [, clip, label] of references) expect(svg).toContain(` id="${clip ?? label}"`);
    }
  });

  it('carry the hostile name of an engine as text only', () => {
    expect(set.sideViews.C2.svg).toContain('&lt;valveless&gt; &amp; &quot;loud&quot;');
  });

  it('have no text on another text, and none beyond the paper', () => {
    const drawings = [
      ...Object.entries(set.sideViews).map(([id, v]) => ({ name: `side ${id}`, svg: v.svg })),
      ...Object.entries(set.sections).flatMap(([id, list]) => list.map((s, i) => ({ name: `${id} ${i}`, svg: s.svg }))),
      ...allPages.map((p) => ({ name: `${p.candidateId} ${p.title}`, svg: p.svg })),
    ];
    for (const { name, svg } of drawings) {
      // A tile shows its window of the pattern: what is cut off by it, or lies outside, is not seen.
      const clip = /<clipPath [^>]*><rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"/.exec(svg);
      const [left, top, wide, high] = (clip?.slice(1) ?? [0, 0, 1e4, 1e4]).map(Number);
      const inWindow = (t: { x0: number; x1: number; y0: number; y1: number }) =>
        t.x0 >= left && t.x1 <= left + wide && t.y0 >= top && t.y1 <= top + high;
      const tile = / row \d of \d/.test(name);
      const texts = readTexts(svg).filter((t) => !tile || inWindow(t));
      const width = Number(/viewBox="0 0 ([\d.]+)/.exec(svg)![1]);
      expect(collisions(texts), name).toEqual([]);
      for (const t of texts) {
        expect(t.x0, `${name}: ${t.text}`).toBeGreaterThan(-0.1);
        expect(t.x1, `${name}: ${t.text}`).toBeLessThan(width + 0.1);
      }
    }
  });

  it('list every part with the mass of all its pieces', () => {
    for (const { id, engine } of candidates.slice(0, 3)) {
      const parts = partsList(engine);
      expect(set.partsLists[id].map((r) => r.name)).toEqual(parts.map((p) => p.name));
      const mass = set.partsLists[id].reduce((sum, r) => sum + r.mass, 0);
      expect(mass).toBeCloseTo(
        parts.reduce((sum, p) => sum + p.mass * p.count, 0),
        12,
      );
      // Only the sheet has a price here, 60 for 2 m²: the area with its share of the nested waste.
      const chamber = parts.findIndex((p) => p.id === 'chamber-shell');
      const use = useOf(parts[chamber], sheetUses(parts, drawn(paper).brief.sheets));
      expect(set.partsLists[id][chamber].cost).toBeCloseTo(sheetFor(parts[chamber], use) * 30, 9);
      expect(sheetFor(parts[chamber], use)).toBeGreaterThan(parts[chamber].area);
    }
  });

  it('show on each sheet the very metal that the parts take', () => {
    for (const { id, engine } of candidates.slice(0, 3)) {
      const sheets = nestParts(partsList(engine), drawn(paper).brief.sheets).sheets;
      expect(set.nesting[id].length).toBe(sheets.length);
      set.nesting[id].forEach(({ svg, waste }, i) => {
        const scale = 1 / Number(/Scale 1 : (\d+)/.exec(svg)![1]);
        const loops = readPaths(svg).map(({ d }) => readPath(d));
        expect(loops.length).toBe(sheets[i].placements.length);
        // The first loop is the outline, the others are holes.
        const net = loops
          .map((list) => Math.abs(list[0].area) - list.slice(1).reduce((sum, l) => sum + Math.abs(l.area), 0))
          .reduce((sum, a) => sum + a, 0);
        // Boss holes are not in the ordered area: two per cent.
        expect(Math.abs(net / scale ** 2 / ((1 - waste) * 2e6) - 1)).toBeLessThan(0.02);
      });
    }
  });

  it('give the first candidate its pattern pages in the report, the others a book each, and miss no flat part', () => {
    expect(new Set(set.patternPages.map((p) => p.candidateId))).toEqual(new Set(['C1']));
    expect(set.patternBooks.map((b) => b.name)).toEqual(['patterns/C2-patterns.pdf', 'patterns/C3-patterns.pdf']);
    for (const { candidateId, pages } of set.patternBooks)
      expect(new Set(pages.map((p) => p.candidateId))).toEqual(new Set([candidateId]));
    for (const { id, engine } of candidates.slice(0, 3)) {
      expect(allPages.filter((p) => p.candidateId === id).length).toBeLessThanOrEqual(120);
      const texts = allPages.filter((p) => p.candidateId === id).flatMap((p) => readTexts(p.svg));
      const printed = texts.map((t) => t.text).join('\n');
      for (const pattern of enginePatterns(engine)) expect(printed, id).toContain(pattern.name);
    }
    for (const page of allPages) {
      const full = paper === 'A4' ? [210, 297] : [215.9, 279.4];
      expect([page.pageSize.width_mm, page.pageSize.height_mm]).toEqual(full);
      expect(page.svg).toContain(`width="${full[0]}mm" height="${full[1]}mm" viewBox="0 0 ${full[0]} ${full[1]}"`);
      // A page that is not true size says so; every other pattern page has the bar.
      const marking = page.title.includes('not at true size');
      if (page.title !== 'Map of the pattern pages') expect(page.svg.includes('data-check-bar')).toBe(!marking);
    }
  });

  it('list every file that is handed over, by candidate', () => {
    expect(set.files.map((f) => f.name)).toEqual(set.contents.map((f) => f.name));
    const flat = candidates.slice(0, 3).map(({ engine }) => enginePatterns(engine).length);
    expect(set.files.length).toBe(2 * flat.reduce((a, b) => a + b));
    for (const { name, candidateId } of set.files) expect(name.startsWith(`patterns/${candidateId}-`)).toBe(true);
  });
});

describe('a candidate that cannot be drawn', () => {
  it('is named with the reason, and the others are drawn', () => {
    const broken = { ...reedEngine(), shell: { material: '304' as const, thickness: Number.NaN } };
    const set = drawingSet([{ ...candidates[0], engine: broken }, candidates[1]], drawn('A4'));
    expect(set.failures.some((f) => /^C1: the side view could not be drawn: .*got NaN/.test(f))).toBe(true);
    expect(set.sideViews.C1).toBeUndefined();
    expect(set.sideViews.C2).toBeDefined();
    expect(set.patternBooks.map((b) => b.candidateId)).toEqual(['C2']);
    expect(set.files.some((f) => f.candidateId === 'C2')).toBe(true);
  });
});
