/** The blanks of an engine on the stated sheets, each with its true outline and its mark. */
import type { SheetStock } from '../../../shared/engine/brief.ts';
import type { Engine } from '../../../shared/engine/engine.ts';
import { type NestedSheet, nestParts, type Placement } from '../../../shared/fabrication/nesting.ts';
import { partsList } from '../../../shared/fabrication/parts.ts';
import { enginePatterns } from '../../../shared/fabrication/patterns/engine-patterns.ts';
import { type Pattern, patternBounds } from '../../../shared/fabrication/patterns/pattern.ts';
import { turnPattern } from '../../../shared/fabrication/patterns/turn.ts';
import { el, type Markup } from '../charts/svg.ts';
import type { NestingSheet } from '../drawing-set.ts';
import { anchor } from '../format/escape.ts';
import { coordinate, drawingSvg, scaleText, standardScale, TEXT_SIZE, widthOf, write } from './drafting.ts';
import { outlineData } from './pattern-svg.ts';

const LARGEST = { width: 150, height: 80 };
const EDGE = 1;
const FOOT = 6;

export interface SheetOptions {
  id: string;
  marks: Record<string, string>;
}

/** One drawing a sheet; none when no stated sheet serves. */
export function nestingSheets(engine: Engine, stocks: readonly SheetStock[], options: SheetOptions): NestingSheet[] {
  const patterns = new Map(enginePatterns(engine).map((p) => [p.id, p]));
  return nestParts(partsList(engine), stocks).sheets.map((sheet, i) => {
    const { material, thickness, length, width } = sheet.stock;
    const mm = (metres: number) => (metres * 1e3).toFixed(0);
    const size = `${mm(length)} × ${mm(width)} mm`;
    const of = sheet.of > 1 ? `, sheet ${sheet.number} of ${sheet.of}` : '';
    const label = `${material}, ${(thickness * 1e3).toFixed(2)} mm, ${size}${of}`;
    return { label, waste: sheet.waste, svg: sheetSvg(sheet, patterns, label, options, i + 1) };
  });
}

function sheetSvg(
  sheet: NestedSheet,
  patterns: Map<string, Pattern>,
  label: string,
  { id, marks }: SheetOptions,
  number: number,
): string {
  const { length, width } = sheet.stock;
  const scale = standardScale(length, width, LARGEST.width, LARGEST.height);
  const k = scale * 1e3;
  const names = sheet.placements.map((p) => marks[p.part] ?? p.part);
  return drawingSvg(
    {
      id: `${anchor(id)}-nesting-${number}`,
      title: `Blanks of ${id} on ${label}`,
      description: `${sheet.placements.length} blanks with the marks ${names.join(', ')}; ${(sheet.waste * 100).toFixed(0)} % of the sheet is left over.`,
      width: length * k + 2 * EDGE,
      height: width * k + 2 * EDGE + FOOT,
    },
    el('rect', {
      x: coordinate(EDGE),
      y: coordinate(EDGE),
      width: coordinate(length * k),
      height: coordinate(width * k),
      fill: 'none',
      stroke: 'currentColor',
      'stroke-width': 0.5,
    }),
    sheet.placements.map((placement, i) => blank(placement, patterns.get(placement.part), names[i], width, k)),
    write(`Numbers are the marks of the parts list. Scale ${scaleText(scale)}.`, {
      x: EDGE,
      y: width * k + 2 * EDGE + FOOT - 1.5,
    }),
  );
}

/** Outline where there is one; a rectangle round it only where it fills less than its blank. */
function blank(
  placement: Placement,
  pattern: Pattern | undefined,
  name: string,
  sheetWidth: number,
  k: number,
): Markup {
  const { x, y, width, height } = placement;
  const left = EDGE + x * k;
  const top = EDGE + (sheetWidth - y - height) * k;
  const w = width * k;
  const h = height * k;
  const size = Math.max(1.6, Math.min(TEXT_SIZE + 0.5, 0.8 * Math.min(w, h)));
  const fits = widthOf(name, size) <= w && size <= h;
  const parts: Markup[] = [];
  if (pattern) {
    const along = (p: Pattern) => {
      const b = patternBounds(p);
      return b.maxX - b.minX;
    };
    const shown =
      Math.abs(along(pattern) - width) <= Math.abs(along(turnPattern(pattern)) - width)
        ? pattern
        : turnPattern(pattern);
    const bounds = patternBounds(shown);
    const map = { originX: left - bounds.minX * k, originY: top + bounds.maxY * k, scale: k };
    parts.push(
      el('path', {
        d: shown.outlines.map((outline) => outlineData(outline, map)).join(''),
        fill: 'none',
        stroke: 'currentColor',
        'stroke-width': 0.3,
      }),
    );
  }
  parts.push(
    el('rect', {
      x: coordinate(left),
      y: coordinate(top),
      width: coordinate(w),
      height: coordinate(h),
      fill: 'none',
      stroke: 'currentColor',
      'stroke-width': pattern ? 0.1 : 0.3,
      'stroke-dasharray': pattern ? '0.8 0.8' : null,
    }),
  );
  if (fits)
    parts.push(write(name, { x: left + w / 2, y: top + h / 2 + size * 0.36 }, { size, anchor: 'middle', bold: true }));
  return el('g', {}, parts);
}
