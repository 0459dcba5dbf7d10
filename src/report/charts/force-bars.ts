/** What suction offers a valve beside what the valve needs: pairs of bars, force and time. */
import { scaleLinear } from 'd3-scale';
import { metric } from '../format/quantity.ts';
import { FONT_SIZE } from './axes.ts';
import { el, figure, type Markup, round } from './svg.ts';
import { textWidth, wrap } from './text-width.ts';

export interface ForceRow {
  name: string;
  offered: number;
  needed: number;
  /** SI unit, N or s. */
  unit: 'N' | 's';
  /** Words for the two bars, e.g. "suction offers", "valve needs". */
  offeredName: string;
  neededName: string;
}

const WIDTH = 680;
const BAR = 13;
const ROW_GAP = 18;
const NAME_WIDTH = 190;
const SERIES_WIDTH = 96;
const LEFT = NAME_WIDTH + SERIES_WIDTH;

/**
 * Bars of one row share a scale; rows do not, since newtons and milliseconds have none in common.
 * Null without rows.
 */
export function forceBars(id: string, title: string, rows: readonly ForceRow[]): Markup | null {
  if (rows.length === 0) return null;
  const names = rows.map((row) => wrap(row.name, FONT_SIZE, NAME_WIDTH - 12));
  const heights = names.map((lines) => Math.max(2 * BAR + 4, lines.length * (FONT_SIZE + 2)));
  const tops: number[] = [];
  let y = 8;
  for (const h of heights) {
    tops.push(y);
    y += h + ROW_GAP;
  }
  return figure(
    {
      id,
      title,
      desc: rows
        .map(
          (r) =>
            `${r.name}: ${r.offeredName} ${metric(r.offered, r.unit)}, ${r.neededName} ${metric(r.needed, r.unit)}.`,
        )
        .join(' '),
      width: WIDTH,
      height: y,
    },
    rows.map((row, i) => {
      const widest = Math.max(row.offered, row.needed, 1e-300);
      const room =
        WIDTH -
        LEFT -
        Math.max(
          textWidth(metric(row.offered, row.unit), FONT_SIZE),
          textWidth(metric(row.needed, row.unit), FONT_SIZE),
        ) -
        12;
      const x = scaleLinear([0, widest], [0, room]);
      return el(
        'g',
        {},
        names[i].map((line, k) => el('text', { class: 'label', x: 2, y: tops[i] + 11 + k * (FONT_SIZE + 2) }, line)),
        bar(row.offeredName, x(row.offered), metric(row.offered, row.unit), tops[i], 'bar-solid'),
        bar(row.neededName, x(row.needed), metric(row.needed, row.unit), tops[i] + BAR + 3, 'bar-hollow'),
        el('path', { class: 'axis', d: `M${LEFT} ${tops[i] - 3}v${2 * BAR + 9}` }),
      );
    }),
  );
}

function bar(name: string, length: number, text: string, top: number, css: string): Markup {
  return el(
    'g',
    {},
    el('text', { class: 'axis-title', x: LEFT - 7, y: top + 10.5, 'text-anchor': 'end' }, name),
    el('path', {
      class: css,
      d: `M${LEFT} ${round(top)}h${round(Math.max(0.5, length))}v${BAR}h${round(-Math.max(0.5, length))}Z`,
    }),
    el('text', { class: 'num', x: LEFT + Math.max(0.5, length) + 5, y: top + 10.5 }, text),
  );
}
