/** Computed against measured on known engines: each row scaled by the middle of its measured range. */
import { scaleLinear } from 'd3-scale';
import type { ValidationRow } from '../../ranking/results.ts';
import { percent } from '../format/number.ts';
import { FONT_SIZE, type Plot, xAxis } from './axes.ts';
import { el, figure, type Markup, round } from './svg.ts';
import { shorten, textWidth } from './text-width.ts';

const WIDTH = 680;
const ROW = 20;
const TOP = 12;
const NAME_WIDTH = 290;

/** Deviation of a value from the middle of the measured range, as a fraction. */
function deviation(row: ValidationRow, value: number): number {
  const middle = (row.measuredLow + row.measuredHigh) / 2;
  return value / middle - 1;
}

/** The deviation in words; an engine that does not run in the model has none. */
function verdict(row: ValidationRow): string {
  return row.computed === null ? 'no run' : percent(deviation(row, row.computed), { signed: true });
}

export function validationChart(id: string, rows: readonly ValidationRow[]): Markup | null {
  const usable = rows.filter((r) => r.measuredLow + r.measuredHigh !== 0);
  if (usable.length === 0) return null;
  const all = usable.flatMap((r) =>
    [r.measuredLow, r.measuredHigh, r.computed ?? r.measuredLow, r.acceptLow, r.acceptHigh].map((v) => deviation(r, v)),
  );
  const reach = Math.max(0.1, ...all.map(Math.abs)) * 1.05;
  const plot: Plot = { left: NAME_WIDTH, top: TOP, right: WIDTH - 70, bottom: TOP + usable.length * ROW };
  const x = scaleLinear([-reach * 100, reach * 100], [plot.left, plot.right]);
  const px = (row: ValidationRow, value: number) => x(deviation(row, value) * 100);
  return figure(
    {
      id,
      title: 'Computed against measured',
      desc: usable
        .map((r) => `${r.engine}, ${r.quantity}: ${verdict(r)}, ${r.within ? 'within' : 'outside'} its band.`)
        .join(' '),
      width: WIDTH,
      height: plot.bottom + 42,
    },
    xAxis(x, plot, 'Deviation from the middle of the measured range, %', 7),
    usable.map((row, i) => {
      const y = TOP + i * ROW + ROW / 2;
      return el(
        'g',
        {},
        el(
          'text',
          { class: 'label', x: 2, y: y + 4 },
          shorten(`${row.engine}: ${row.quantity}`, FONT_SIZE, NAME_WIDTH - 12),
        ),
        el('path', { class: 'whisker', d: `M${round(px(row, row.acceptLow))} ${y}H${round(px(row, row.acceptHigh))}` }),
        el('path', {
          class: 'measured',
          d: `M${round(px(row, row.measuredLow))} ${y - 4}H${round(Math.max(px(row, row.measuredHigh), px(row, row.measuredLow) + 1.5))}v8H${round(px(row, row.measuredLow))}Z`,
        }),
        row.computed === null
          ? null
          : el('circle', { class: row.within ? 'dot' : 'dot-hollow', cx: px(row, row.computed), cy: y, r: 3.6 }),
        el('text', { class: 'num', x: WIDTH - textWidth('−100 %', FONT_SIZE) - 12, y: y + 4 }, verdict(row)),
      );
    }),
    el('path', { class: 'axis', d: `M${round(x(0))} ${plot.top}V${plot.bottom}` }),
  );
}
