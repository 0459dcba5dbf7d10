/** Steady wall temperature along the duct against the limits of the sheet. */
import { scaleLinear } from 'd3-scale';
import type { AxialProfile } from '../../../shared/engine/performance.ts';
import { metric } from '../format/quantity.ts';
import { FONT_SIZE, type Plot, xAxis, yAxis } from './axes.ts';
import { ductOutline } from './duct-outline.ts';
import { spread } from './labels.ts';
import { el, figure, type Markup, polyline } from './svg.ts';
import { textWidth, wrap } from './text-width.ts';

export interface TemperatureLimit {
  name: string;
  /** K. */
  limit: number;
}

const WIDTH = 680;
const HEIGHT = 270;
const LABEL_WIDTH = 136;
const PLOT: Plot = { left: 46, top: 62, right: WIDTH - LABEL_WIDTH - 8, bottom: HEIGHT - 44 };
const ZERO_CELSIUS = 273.15;

export function wallTemperature(id: string, profile: AxialProfile, limits: readonly TemperatureLimit[]): Markup {
  const wall = profile.wallTemperature.map((t) => t - ZERO_CELSIUS);
  const hottest = Math.max(...wall);
  const hottestAt = profile.position[wall.indexOf(hottest)];
  const x = scaleLinear([0, (profile.position.at(-1) ?? 1) * 1e3], [PLOT.left, PLOT.right]);
  const top = Math.max(hottest, ...limits.map((l) => l.limit - ZERO_CELSIUS)) * 1.06;
  const y = scaleLinear([0, top], [PLOT.bottom, PLOT.top]);
  const names = [
    { lines: ['wall'], y: y(wall.at(-1) ?? 0), css: 'line line-1' },
    ...limits.map((l) => ({
      lines: wrap(`${l.name} ${metric(l.limit, 'K')}`, FONT_SIZE, LABEL_WIDTH - 28),
      y: y(l.limit - ZERO_CELSIUS),
      css: 'limit',
    })),
  ];
  const tallest = Math.max(...names.map((n) => n.lines.length)) * (FONT_SIZE + 1) + 3;
  const rows = spread(
    names.map((n) => n.y),
    tallest,
    PLOT.top - 8,
    PLOT.bottom - 4,
  );
  return figure(
    {
      id,
      title: 'Wall temperature along the engine',
      desc:
        `The wall is hottest, ${metric(hottest + ZERO_CELSIUS, 'K')}, at ${metric(hottestAt, 'm')} from the head. ` +
        (limits.length > 0
          ? `Limits: ${limits.map((l) => `${l.name} ${metric(l.limit, 'K')}`).join('; ')}.`
          : 'No limit was stated.'),
      width: WIDTH,
      height: HEIGHT,
    },
    ductOutline(profile.position, profile.diameter, (m) => x(m * 1e3), 24, 16),
    xAxis(x, PLOT, 'Position from the head, mm', 7),
    yAxis(y, PLOT, 'Wall, °C', 6),
    limits.map((l) =>
      el('path', { class: 'limit', d: `M${PLOT.left} ${y(l.limit - ZERO_CELSIUS).toFixed(2)}H${PLOT.right}` }),
    ),
    el('path', {
      class: 'line line-1',
      d: polyline(profile.position.map((p, i) => [x(p * 1e3), y(wall[i])])),
    }),
    hottestMark(x(hottestAt * 1e3), y(hottest), metric(hottest + ZERO_CELSIUS, 'K')),
    names.map((n, i) => [
      el('path', {
        class: n.css,
        d: polyline([
          [PLOT.right + 2, n.y],
          [PLOT.right + 8, rows[i]],
          [PLOT.right + 18, rows[i]],
        ]),
      }),
      n.lines.map((line, k) =>
        el('text', { class: 'label', x: PLOT.right + 22, y: rows[i] + 4 + k * (FONT_SIZE + 1) }, line),
      ),
    ]),
  );
}

/** A ring on the hottest spot with its temperature below the line, where no limit runs. */
function hottestMark(x: number, y: number, text: string): Markup {
  const width = textWidth(text, FONT_SIZE);
  const at = Math.min(Math.max(x, PLOT.left + width / 2 + 4), PLOT.right - width / 2 - 4);
  return el(
    'g',
    {},
    el('circle', { class: 'ring', cx: x, cy: y, r: 4 }),
    el('text', { class: 'label halo', x: at, y: y + 18, 'text-anchor': 'middle' }, text),
  );
}
