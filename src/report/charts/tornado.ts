/** Sensitivities, ranked: what one step of each variable does to TSFC, thrust and valve life. */
import { scaleLinear } from 'd3-scale';
import type { Sensitivity } from '../../ranking/results.ts';
import { percent } from '../format/number.ts';
import { FONT_SIZE } from './axes.ts';
import { el, figure, type Markup, round } from './svg.ts';
import { shorten, textWidth } from './text-width.ts';

type Quantity = 'tsfc' | 'thrust' | 'valveLife';

const COLUMNS: { key: Quantity; title: string }[] = [
  { key: 'tsfc', title: 'TSFC' },
  { key: 'thrust', title: 'Thrust' },
  { key: 'valveLife', title: 'Valve life' },
];

const WIDTH = 680;
const NAME_WIDTH = 240;
const ROW = 30;
const HEAD = 26;
const MOST_ROWS = 12;
/** Room for a figure such as "+12.3 %" beside a bar. */
const FIGURE_WIDTH = textWidth('+88.8 %', FONT_SIZE) + 6;

/** Largest change of TSFC or thrust; a step that stops the engine ranks before all. */
function weight(s: Sensitivity): number {
  return s.stops ? Number.POSITIVE_INFINITY : Math.max(Math.abs(s.tsfc ?? 0), Math.abs(s.thrust ?? 0));
}

/** Ranked from the strongest to the weakest; ties keep the order of the variables. */
export function rankSensitivities(sensitivities: readonly Sensitivity[]): Sensitivity[] {
  return sensitivities
    .map((s, i) => ({ s, i }))
    .sort((a, b) => (weight(a.s) === weight(b.s) ? a.i - b.i : weight(b.s) - weight(a.s)))
    .map(({ s }) => s);
}

export function tornado(id: string, sensitivities: readonly Sensitivity[]): Markup | null {
  const rows = rankSensitivities(sensitivities).slice(0, MOST_ROWS);
  if (rows.length === 0) return null;
  const columnWidth = (WIDTH - NAME_WIDTH) / COLUMNS.length;
  const height = HEAD + rows.length * ROW + 6;
  return figure(
    {
      id,
      title: 'What moves TSFC, thrust and valve life most',
      desc: rows.map(sentence).join(' '),
      width: WIDTH,
      height,
    },
    rows.map((row, i) => {
      const y = HEAD + i * ROW;
      return el(
        'g',
        {},
        el('path', { class: 'grid', d: `M0 ${y}H${WIDTH}` }),
        el('text', { class: 'label', x: 2, y: y + 12.5 }, shorten(row.label, FONT_SIZE, NAME_WIDTH - 8)),
        el('text', { class: 'axis-title', x: 2, y: y + 25 }, shorten(row.step, FONT_SIZE, NAME_WIDTH - 8)),
      );
    }),
    COLUMNS.map((column, c) => {
      const left = NAME_WIDTH + c * columnWidth;
      const middle = left + columnWidth / 2;
      const largest = Math.max(...rows.map((r) => (r.stops ? 0 : Math.abs(r[column.key] ?? 0))), 1e-9);
      const x = scaleLinear([0, largest], [0, columnWidth / 2 - FIGURE_WIDTH]);
      return el(
        'g',
        {},
        el('text', { class: 'axis-title', x: middle, y: HEAD - 9, 'text-anchor': 'middle' }, column.title),
        rows.map((row, i) => cell(row, row[column.key], x, middle, HEAD + i * ROW, c === 0)),
        el('path', { class: 'axis', d: `M${round(middle)} ${HEAD}V${height - 6}` }),
      );
    }),
  );
}

function cell(
  row: Sensitivity,
  change: number | null,
  x: (v: number) => number,
  middle: number,
  top: number,
  first: boolean,
): Markup | null {
  if (row.stops)
    return first
      ? el('text', { class: 'label strong halo', x: middle + 6, y: top + 19 }, 'this step stops the engine')
      : null;
  if (change === null) return el('text', { class: 'num', x: middle + 5, y: top + 19 }, 'not known');
  const length = Math.max(0.5, x(Math.abs(change)));
  const sign = change < 0 ? -1 : 1;
  return el(
    'g',
    {},
    el('path', {
      class: change < 0 ? 'bar-hollow' : 'bar-solid',
      d: `M${round(middle)} ${round(top + 8)}h${round(sign * length)}v14h${round(-sign * length)}Z`,
    }),
    el(
      'text',
      { class: 'num', x: middle + sign * (length + 4), y: top + 19, 'text-anchor': sign < 0 ? 'end' : 'start' },
      percent(change, { signed: true }),
    ),
  );
}

function sentence(s: Sensitivity): string {
  if (s.stops) return `${s.label}, ${s.step}: stops the engine.`;
  return `${s.label}, ${s.step}: TSFC ${percent(s.tsfc, { signed: true })}, thrust ${percent(s.thrust, { signed: true })}, life ${percent(s.valveLife, { signed: true })}.`;
}
