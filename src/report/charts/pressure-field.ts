/** Pressure over position and time as a picture of level cells, with a key. Runs of equal cells become one rectangle. */
import { range } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import type { PressureField } from '../../../shared/engine/performance.ts';
import { fixed } from '../format/number.ts';
import { metric } from '../format/quantity.ts';
import { type Plot, xAxis, yAxis } from './axes.ts';
import { ductOutline } from './duct-outline.ts';
import { el, figure, type Markup, round } from './svg.ts';

const WIDTH = 680;
const HEIGHT = 316;
const PLOT: Plot = { left: 46, top: 62, right: WIDTH - 96, bottom: HEIGHT - 44 };
const MOST_COLUMNS = 60;
const MOST_ROWS = 80;
/** Shades that stay apart in grey print; class xt-0 is the lowest pressure. */
export const SHADES = 9;

/** Means of blocks, so that the picture has at most the given size. result[row][column]. */
export function thinField(pressure: readonly (readonly number[])[], rows: number, columns: number): number[][] {
  const fromRows = pressure.length;
  const fromColumns = pressure[0]?.length ?? 0;
  const outRows = Math.min(rows, fromRows);
  const outColumns = Math.min(columns, fromColumns);
  return range(outRows).map((r) =>
    range(outColumns).map((c) => {
      let sum = 0;
      let n = 0;
      for (let i = Math.floor((r * fromRows) / outRows); i < Math.floor(((r + 1) * fromRows) / outRows); i++)
        for (
          let j = Math.floor((c * fromColumns) / outColumns);
          j < Math.floor(((c + 1) * fromColumns) / outColumns);
          j++
        ) {
          sum += pressure[i][j];
          n++;
        }
      return sum / n;
    }),
  );
}

/** One path for each shade: a rectangle for every run of equal shade along a row. */
function shadePaths(levels: number[][], cellWidth: number, cellHeight: number): string[] {
  const paths = new Array<string>(SHADES).fill('');
  levels.forEach((row, r) => {
    // Time runs upwards.
    const y = PLOT.bottom - (r + 1) * cellHeight;
    for (let c = 0; c < row.length; ) {
      let end = c + 1;
      while (end < row.length && row[end] === row[c]) end++;
      // A hair of overlap hides the seams that renderers leave between neighbours.
      paths[row[c]] +=
        `M${round(PLOT.left + c * cellWidth)} ${round(y)}h${round((end - c) * cellWidth + (end < row.length ? 0.3 : 0))}v${round(cellHeight + (r > 0 ? 0.3 : 0))}H${round(PLOT.left + c * cellWidth)}Z`;
      c = end;
    }
  });
  return paths;
}

export function pressureField(id: string, field: PressureField, position: number[], diameter: number[]): Markup | null {
  if (field.pressure.length < 2 || field.position.length < 2) return null;
  const cells = thinField(field.pressure, MOST_ROWS, MOST_COLUMNS);
  const low = Math.min(...cells.flat());
  const high = Math.max(...cells.flat());
  const level = (p: number) => Math.min(SHADES - 1, Math.floor(((p - low) / (high - low || 1)) * SHADES));
  const cellWidth = (PLOT.right - PLOT.left) / cells[0].length;
  const cellHeight = (PLOT.bottom - PLOT.top) / cells.length;
  const length = Math.max(position.at(-1) ?? 0, field.position.at(-1)!);
  const x = scaleLinear([0, length * 1e3], [PLOT.left, PLOT.right]);
  const start = field.time[0];
  const y = scaleLinear([0, (field.time.at(-1)! - start) * 1e3], [PLOT.bottom, PLOT.top]);
  return figure(
    {
      id,
      title: 'Pressure over position and time',
      desc:
        `Position runs to the right from the head, time upwards over one cycle. Pressure lies between ${metric(low, 'Pa')} ` +
        `and ${metric(high, 'Pa')} absolute; darker is higher. Slanted bands are pressure waves that run along the duct.`,
      width: WIDTH,
      height: HEIGHT,
    },
    ductOutline(position, diameter, (m) => x(m * 1e3), 24, 16),
    shadePaths(
      cells.map((row) => row.map(level)),
      cellWidth,
      cellHeight,
    ).map((d, i) => (d === '' ? null : el('path', { class: `xt xt-${i}`, d }))),
    xAxis(x, PLOT, 'Position from the head, mm', 7, false),
    yAxis(y, PLOT, 'Time, ms', 6, false),
    key(low, high),
  );
}

/** Column of shades at the right with the pressures at their edges. */
function key(low: number, high: number): Markup {
  const left = PLOT.right + 18;
  const cell = (PLOT.bottom - PLOT.top) / SHADES;
  return el(
    'g',
    {},
    el('text', { class: 'axis-title', x: left, y: PLOT.top - 9 }, 'bar absolute'),
    range(SHADES).map((i) =>
      el('path', {
        class: `xt xt-${i} xt-key`,
        d: `M${left} ${round(PLOT.bottom - (i + 1) * cell)}h14v${round(cell)}h-14Z`,
      }),
    ),
    range(SHADES + 1).map((i) =>
      el(
        'text',
        { class: 'num', x: left + 19, y: PLOT.bottom - i * cell + 4 },
        fixed((low + ((high - low) * i) / SHADES) * 1e-5, 2),
      ),
    ),
  );
}
