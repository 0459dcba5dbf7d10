/** How the search closed in: hypervolume against evaluations. */
import { scaleLinear } from 'd3-scale';
import type { Convergence } from '../../ranking/results.ts';
import { count, significant } from '../format/number.ts';
import { type Plot, xAxis, yAxis } from './axes.ts';
import { el, figure, type Markup, polyline } from './svg.ts';

const WIDTH = 680;
const HEIGHT = 220;
const PLOT: Plot = { left: 52, top: 28, right: WIDTH - 24, bottom: HEIGHT - 44 };

export function convergenceChart(id: string, history: readonly Convergence[]): Markup | null {
  if (history.length < 2) return null;
  const last = history[history.length - 1];
  const x = scaleLinear([0, last.evaluations], [PLOT.left, PLOT.right]);
  const y = scaleLinear([0, Math.max(...history.map((h) => h.hypervolume)) * 1.05 || 1], [PLOT.bottom, PLOT.top]);
  // Between two readings the older value holds: steps.
  const steps: [number, number][] = [];
  history.forEach((h, i) => {
    if (i > 0) steps.push([x(h.evaluations), y(history[i - 1].hypervolume)]);
    steps.push([x(h.evaluations), y(h.hypervolume)]);
  });
  return figure(
    {
      id,
      title: 'Convergence of the search',
      desc: `The hypervolume of feasible designs ends at ${significant(last.hypervolume)} after ${count(last.evaluations, 'evaluation')}.`,
      width: WIDTH,
      height: HEIGHT,
    },
    xAxis(x, PLOT, 'Evaluations', 7),
    yAxis(y, PLOT, 'Hypervolume, normalised', 4),
    el('path', { class: 'line line-1', d: polyline(steps) }),
  );
}
