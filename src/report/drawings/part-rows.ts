/** The parts list as rows of the report, with stock, cut size, mass and cost. */
import type { Brief } from '../../../shared/engine/brief.ts';
import type { Engine } from '../../../shared/engine/engine.ts';
import { partCost } from '../../../shared/fabrication/cost.ts';
import { nestParts } from '../../../shared/fabrication/nesting.ts';
import { type Part, partsList } from '../../../shared/fabrication/parts.ts';
import { sheetUses } from '../../../shared/fabrication/sheet-use.ts';
import type { PartRow } from '../drawing-set.ts';
import { fixed } from '../format/number.ts';

/** Rows in the order of the marks. A part for which no stated sheet serves says so. */
export function partRows(engine: Engine, brief: Brief): PartRow[] {
  const parts = partsList(engine);
  const { unplaced } = nestParts(parts, brief.sheets);
  const uses = sheetUses(parts, brief.sheets);
  const reasons = new Map(unplaced.map(({ part, reason }) => [part, reason]));
  return parts.map((part, i) =>
    partRow(part, String(i + 1), partCost(part, brief, uses), noteOf(part, reasons.get(part.id), brief)),
  );
}

function noteOf(part: Part, reason: string | undefined, brief: Brief): string {
  if (part.kind === 'strip') {
    const stated = brief.strips.some((s) => s.material === part.material && near(s.thickness, part.thickness));
    return stated || brief.strips.length === 0
      ? ''
      : `no strip of ${part.material}, ${mm(part.thickness)} mm, is stated`;
  }
  // Without any stated sheet there is nothing to compare with.
  return brief.sheets.length === 0 ? '' : (reason ?? '');
}

const near = (a: number, b: number): boolean => Math.abs(a / b - 1) < 0.03;
const mm = (metres: number): string => fixed(metres * 1e3, 2);

const FORMS: Record<Part['kind'], string> = {
  'rolled sheet': 'sheet',
  'flat sheet': 'sheet',
  plate: 'plate',
  strip: 'strip',
  bar: 'bar Ø',
  wire: 'wire Ø',
};

function partRow(part: Part, mark: string, cost: number | null, note: string): PartRow {
  const { name, count, material, kind, thickness, blankLength, blankWidth, area, mass } = part;
  const round = kind === 'bar' || kind === 'wire';
  return {
    mark,
    name,
    count,
    material,
    stock: `${FORMS[kind]} ${mm(thickness)} mm`,
    thickness,
    cutLength: blankLength,
    cutWidth: round ? 0 : blankWidth,
    area,
    mass: mass * count,
    cost,
    note,
  };
}
