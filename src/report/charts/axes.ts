/** Axes, grid and axis titles, common to all charts. Coordinates are CSS pixels; text is 11 px, which prints as 8 pt. */
import type { ScaleContinuousNumeric } from 'd3-scale';
import { significant } from '../format/number.ts';
import { el, type Markup } from './svg.ts';

export type Scale = ScaleContinuousNumeric<number, number>;

export const FONT_SIZE = 11;

export interface Plot {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** Ticks of a linear scale as d3 chooses them; for a logarithmic one 1–2–5 steps of each decade. */
export function ticksOf(scale: Scale, wanted: number): number[] {
  const [low, high] = scale.domain();
  if (!('base' in scale)) return scale.ticks(wanted);
  const ticks: number[] = [];
  for (let e = Math.floor(Math.log10(low)); e <= Math.ceil(Math.log10(high)); e++)
    for (const m of [1, 2, 5]) {
      const tick = m * 10 ** e;
      if (tick >= low * 0.999 && tick <= high * 1.001) ticks.push(tick);
    }
  const tens = ticks.filter((t) => Math.abs(Math.log10(t) - Math.round(Math.log10(t))) < 1e-9);
  return ticks.length > wanted * 1.6 && tens.length > 2 ? tens : ticks;
}

/** One text for each tick, all with the same decimals on a linear scale. */
export function tickTexts(scale: Scale, ticks: readonly number[]): string[] {
  if ('base' in scale)
    return ticks.map((t) =>
      significant(t, 3)
        .replace(/(\.\d*?)0+$/, '$1')
        .replace(/\.$/, ''),
    );
  const format = scale.tickFormat(Math.max(2, ticks.length));
  return ticks.map((t) => format(t));
}

export function xAxis(scale: Scale, plot: Plot, title: string | null, wanted = 6, grid = true): Markup {
  const ticks = ticksOf(scale, wanted);
  const texts = tickTexts(scale, ticks);
  return el(
    'g',
    {},
    ticks.map((tick, i) => [
      grid ? el('path', { class: 'grid', d: `M${scale(tick).toFixed(2)} ${plot.top}V${plot.bottom}` }) : null,
      el('path', { class: 'tick', d: `M${scale(tick).toFixed(2)} ${plot.bottom}v4` }),
      el('text', { class: 'num', x: scale(tick), y: plot.bottom + 16, 'text-anchor': 'middle' }, texts[i]),
    ]),
    el('path', { class: 'axis', d: `M${plot.left} ${plot.bottom}H${plot.right}` }),
    title === null
      ? null
      : el(
          'text',
          { class: 'axis-title', x: (plot.left + plot.right) / 2, y: plot.bottom + 33, 'text-anchor': 'middle' },
          title,
        ),
  );
}

/** The title stands level above the axis, so that nobody has to turn the page. */
export function yAxis(scale: Scale, plot: Plot, title: string, wanted = 5, grid = true, titleRise = 9): Markup {
  const ticks = ticksOf(scale, wanted);
  const texts = tickTexts(scale, ticks);
  return el(
    'g',
    {},
    ticks.map((tick, i) => [
      grid ? el('path', { class: 'grid', d: `M${plot.left} ${scale(tick).toFixed(2)}H${plot.right}` }) : null,
      el('path', { class: 'tick', d: `M${plot.left} ${scale(tick).toFixed(2)}h-4` }),
      el('text', { class: 'num', x: plot.left - 7, y: scale(tick) + 4, 'text-anchor': 'end' }, texts[i]),
    ]),
    el('path', { class: 'axis', d: `M${plot.left} ${plot.top}V${plot.bottom}` }),
    el('text', { class: 'axis-title', x: 2, y: plot.top - titleRise }, title),
  );
}
