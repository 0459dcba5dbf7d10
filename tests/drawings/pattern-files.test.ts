import { describe, expect, it } from 'vitest';
import { enginePatterns } from '../../shared/fabrication/patterns/engine-patterns.ts';
import { outlineArea, outlineLength } from '../../shared/fabrication/patterns/outline.ts';
import { patternDxf } from '../../src/report/drawings/pattern-dxf.ts';
import { patternFiles } from '../../src/report/drawings/pattern-files.ts';
import { patternSvg } from '../../src/report/drawings/pattern-svg.ts';
import { bigReedEngine, poppetEngine, reedEngine, uBentEngine } from '../fabrication/engines.ts';
import { readDxf, readPath } from './read-back.ts';

const engines = { reedEngine, poppetEngine, uBentEngine, bigReedEngine };
/** mm; and mm² for a boundary of the given length that is off by as much. */
const TOLERANCE = 0.05;

describe.each(Object.entries(engines))('pattern files of %s', (_name, make) => {
  const patterns = enginePatterns(make());

  it('read back from DXF have the lengths and areas of the patterns', () => {
    for (const pattern of patterns) {
      const { loops, layers, units } = readDxf(patternDxf(pattern));
      expect(units, pattern.id).toBe(4);
      for (const layer of ['CUT', 'BEND', 'MARK', 'SEAM', 'TEXT']) expect(layers).toContain(layer);
      const cut = loops.filter((l) => l.layer === 'CUT');
      expect(cut.length, pattern.id).toBe(pattern.outlines.length);
      cut.forEach((loop, i) => {
        const length = outlineLength(pattern.outlines[i]) * 1e3;
        expect(Math.abs(loop.length - length), pattern.id).toBeLessThan(TOLERANCE);
        expect(Math.abs(loop.area - outlineArea(pattern.outlines[i]) * 1e6), pattern.id).toBeLessThan(
          TOLERANCE * length,
        );
      });
    }
  });

  it('read back from SVG have the lengths and areas of the patterns, in mm', () => {
    for (const pattern of patterns) {
      const svg = patternSvg(pattern);
      const size = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg)!;
      expect([size[1], size[2]]).toEqual([size[3], size[4]]);
      const group = /<g data-layer="CUT">(.*?)<\/g>/.exec(svg)![1];
      const loops = [...group.matchAll(/ d="([^"]+)"/g)].flatMap((m) => readPath(m[1]));
      expect(loops.length, pattern.id).toBe(pattern.outlines.length);
      loops.forEach((loop, i) => {
        const length = outlineLength(pattern.outlines[i]) * 1e3;
        expect(Math.abs(loop.length - length), pattern.id).toBeLessThan(TOLERANCE);
        // y runs down, which turns the sign of the area.
        expect(Math.abs(-loop.area - outlineArea(pattern.outlines[i]) * 1e6), pattern.id).toBeLessThan(
          TOLERANCE * length,
        );
      });
    }
  });

  it('are the same bytes each time, one SVG and one DXF a pattern, with names that are safe', () => {
    const files = patternFiles(make(), 'patterns/C1-');
    expect(files.length).toBe(2 * patterns.length);
    expect(patternFiles(make(), 'patterns/C1-')).toEqual(files);
    for (const { name } of files) expect(name).toMatch(/^patterns\/C1-[a-z0-9-]+\.(svg|dxf)$/);
  });
});

describe('the cone of the small reed engine', () => {
  it('comes out of its DXF with the exact sector of a cone of mid-surface diameters 65.8 and 32.8 mm', () => {
    const pattern = enginePatterns(reedEngine()).find((p) => p.id === 'chamber-cone-shell')!;
    const slant = Math.hypot(60, 16.5);
    const large = (slant * 65.8) / 33;
    const small = (slant * 32.8) / 33;
    const angle = (Math.PI * 33) / slant;
    const [loop] = readDxf(patternDxf(pattern)).loops;
    const seam = 6;
    expect(Math.abs(loop.length - (angle * (large + small) + 2 * slant + 2 * seam))).toBeLessThan(TOLERANCE);
    expect(Math.abs(loop.area - ((angle / 2) * (large ** 2 - small ** 2) + seam * slant))).toBeLessThan(1);
  });
});

describe('text', () => {
  it('from a configuration cannot break out of the drawing', () => {
    const [pattern] = enginePatterns(uBentEngine());
    const hostile = {
      ...pattern,
      name: '</title><script>x</script>',
      material: '"&<',
      labels: [{ ...pattern.labels[0], text: '<b>\n0\nEOF' }],
    };
    const svg = patternSvg(hostile);
    expect(svg).not.toContain('<script');
    expect(svg).not.toContain('<b>');
    expect(readDxf(patternDxf(hostile)).loops.length).toBeGreaterThan(0);
  });
});
