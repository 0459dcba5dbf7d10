import { describe, expect, it } from 'vitest';
import { partsList } from '../../shared/fabrication/parts.ts';
import { goreHalfLength } from '../../shared/fabrication/patterns/bend.ts';
import { developBend, developCone, developCylinder } from '../../shared/fabrication/patterns/developments.ts';
import { enginePatterns } from '../../shared/fabrication/patterns/engine-patterns.ts';
import { closureGap, edgeLength, outlineArea } from '../../shared/fabrication/patterns/outline.ts';
import { type Pattern, patternArea, patternBounds } from '../../shared/fabrication/patterns/pattern.ts';
import { stopRadius } from '../../shared/fabrication/patterns/reed.ts';
import { shellPieces } from '../../shared/fabrication/shell-pieces.ts';
import { bigReedEngine, poppetEngine, reedEngine, uBentEngine } from './engines.ts';

const engines = { reedEngine, poppetEngine, uBentEngine, bigReedEngine };
const find = (patterns: Pattern[], id: string): Pattern => {
  const found = patterns.find((p) => p.id === id);
  if (!found) throw new Error(`no pattern ${id}`);
  return found;
};

describe('developments', () => {
  it('unroll the cone D1 65, D2 32, H 60 mm exactly (computed from the development of a cone)', () => {
    const cone = developCone(0.065, 0.032, 0.06);
    expect(cone.slant * 1e3).toBeCloseTo(62.2274, 4);
    expect(cone.outerRadius * 1e3).toBeCloseTo(122.5691, 4);
    expect(cone.innerRadius * 1e3).toBeCloseTo(60.3417, 4);
    expect((cone.angle * 180) / Math.PI).toBeCloseTo(95.4563, 4);
    // Lateral area of a frustum, π (r1 + r2) s.
    expect(cone.area).toBeCloseTo((Math.PI / 2) * (0.065 + 0.032) * cone.slant, 12);
  });

  it('unroll a cylinder to π d by length', () => {
    expect(developCylinder(0.1, 0.3).circumference).toBeCloseTo(0.314159265, 9);
    expect(developCylinder(0.1, 0.3).area).toBeCloseTo(Math.PI * 0.03, 12);
  });

  it('refuse what has no development', () => {
    expect(() => developCone(0.05, 0.05, 0.1)).toThrow(/larger and a smaller/);
    expect(() => developBend(0.1, Math.PI, 0.05, 8)).toThrow(/too tight/);
    expect(() => developCylinder(0, 1)).toThrow(/positive/);
  });
});

describe.each(Object.entries(engines))('patterns of %s', (_name, make) => {
  const engine = make();
  const patterns = enginePatterns(engine);
  const parts = partsList(engine);

  it('exist for every flat part, and only for those', () => {
    const flat = parts.filter((p) => p.kind !== 'bar' && p.kind !== 'wire').map((p) => `${p.id} ×${p.count}`);
    expect(patterns.map((p) => `${p.id} ×${p.count}`).sort()).toEqual(flat.sort());
  });

  it('close on themselves', () => {
    for (const pattern of patterns) {
      for (const outline of pattern.outlines) {
        expect(closureGap(outline), pattern.id).toBeLessThan(1e-9);
        expect(outlineArea(outline), pattern.id).toBeGreaterThan(0);
      }
    }
  });

  it('have the blank and the area that the parts list orders', () => {
    for (const pattern of patterns) {
      const part = parts.find((p) => p.id === pattern.id)!;
      const { minX, maxX, minY, maxY } = patternBounds(pattern);
      const sides = [maxX - minX, maxY - minY].sort((a, b) => b - a);
      expect(sides[0], pattern.id).toBeLessThanOrEqual(part.blankLength + 1e-6);
      expect(sides[1], pattern.id).toBeLessThanOrEqual(part.blankWidth + 1e-6);
      expect(part.thickness, pattern.id).toBe(pattern.thickness);
      // Rounded corners and boss holes are not in the ordered area.
      expect(Math.abs(patternArea(pattern) / part.area - 1), pattern.id).toBeLessThan(0.04);
    }
  });

  it('meet: both sides of every joint have the same edge length to 0.05 mm', () => {
    const joints = new Map<string, { id: string; length: number }[]>();
    for (const pattern of patterns) {
      for (const mate of pattern.mating) {
        const length = mate.edges.reduce((sum, i) => sum + edgeLength(pattern.outlines[0].edges[i]), 0);
        joints.set(mate.joint, [...(joints.get(mate.joint) ?? []), { id: pattern.id, length }]);
      }
    }
    expect(joints.size).toBeGreaterThan(1);
    for (const [joint, sides] of joints) {
      expect(sides.length, joint).toBeGreaterThan(1);
      for (const side of sides)
        expect(Math.abs(side.length - sides[0].length), `${joint} ${side.id}`).toBeLessThan(5e-5);
    }
  });

  it('keep every hole inside the blank', () => {
    for (const pattern of patterns) {
      const outer = patternBounds(pattern);
      for (const hole of pattern.outlines.slice(1)) {
        const inner = patternBounds({ ...pattern, outlines: [hole] });
        expect(inner.minX, pattern.id).toBeGreaterThan(outer.minX);
        expect(inner.maxX, pattern.id).toBeLessThan(outer.maxX);
        expect(inner.minY, pattern.id).toBeGreaterThan(outer.minY);
        expect(inner.maxY, pattern.id).toBeLessThan(outer.maxY);
      }
    }
  });
});

describe('gores of a mitred bend', () => {
  const engine = uBentEngine();
  const bend = shellPieces(engine).find((p) => p.shape === 'bend')!;
  if (bend.shape !== 'bend') throw new Error('not a bend');

  it('have the edge curve of a cylinder cut by a plane: its length is the ellipse, π d by Ramanujan 1914', () => {
    const gore = find(enginePatterns(engine), `${bend.id}-gore`);
    const a = 0.0305 / Math.cos(Math.PI / 16);
    const b = 0.0305;
    const h = ((a - b) / (a + b)) ** 2;
    const ellipse = Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
    expect(Math.abs(edgeLength(gore.outlines[0].edges[4]) - ellipse)).toBeLessThan(5e-5);
    expect(Math.abs(edgeLength(gore.outlines[0].edges[0]) - ellipse)).toBeLessThan(5e-5);
  });

  it('turn by the whole angle: back and throat lengths are arcs of polygons round the bend', () => {
    const back = 2 * goreHalfLength(bend, 0.5);
    const throat = 2 * goreHalfLength(bend, 0);
    expect(back).toBeCloseTo(2 * Math.tan(Math.PI / 16) * (0.11 + 0.0305), 12);
    expect(throat).toBeCloseTo(2 * Math.tan(Math.PI / 16) * (0.11 - 0.0305), 12);
  });
});

describe('reed templates', () => {
  it('cut ports of the stated area', () => {
    for (const make of [reedEngine, bigReedEngine]) {
      const engine = make();
      if (engine.intake.kind !== 'reed') throw new Error('not a reed');
      const plate = find(enginePatterns(engine), make === reedEngine ? 'valve-plate' : 'wedge-panel');
      expect(outlineArea(plate.outlines[make === reedEngine ? 2 : 1])).toBeCloseTo(engine.intake.portArea, 10);
    }
  });

  it('draw petals of the stated free length and mean width', () => {
    const wheel = find(enginePatterns(reedEngine()), 'petal-wheel');
    const clampRadius = wheel.marks[0].edge.kind === 'arc' ? wheel.marks[0].edge.radius : 0;
    expect(patternBounds(wheel).maxY - clampRadius).toBeCloseTo(0.019, 9);
  });

  it('curve the stop so that an arc of the free length rises by the stop lift', () => {
    const radius = stopRadius(0.02, 0.004);
    expect(radius * (1 - Math.cos(0.02 / radius))).toBeCloseTo(0.004, 9);
    // For small lifts the arc is nearly L²/(2δ).
    expect(stopRadius(0.02, 0.0002) / (0.02 ** 2 / 0.0004)).toBeCloseTo(1, 3);
  });
});
