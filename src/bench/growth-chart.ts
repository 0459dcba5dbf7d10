/** Cost against size in panels side by side, both axes logarithmic, each with the line of the growth that is hoped for. */
import { scaleLog } from 'd3-scale';
import { xAxis, yAxis } from '../report/charts/axes.ts';
import { el, figure } from '../report/charts/svg.ts';

export interface Growth {
  title: string;
  /** Hoped-for growth: cost ∝ size^power. */
  power: number;
  points: { x: number; seconds: number }[];
}

const PANEL = 300;
const HEIGHT = 260;

/** The picture as a file of its own. */
export function drawGrowth(growths: readonly Growth[], when: string): string {
  const style =
    'text{font:11px sans-serif;fill:#222}.grid{stroke:#ddd}.axis,.tick{stroke:#222}.grid,.axis,.tick,.hoped,.line{fill:none}' +
    '.hoped{stroke:#777;stroke-dasharray:5 4}.line{stroke:#0b4f8a;stroke-width:1.6}.mark{fill:#0b4f8a}';
  const picture = figure(
    {
      id: 'growth',
      title: 'How cost grows',
      desc: `Processor time against ${growths.map((g) => g.title).join('; ')}. Dashed: growth with the power ${growths.map((g) => g.power).join(', ')}. ${when}.`,
      width: PANEL * growths.length,
      height: HEIGHT,
    },
    el('style', {}, style),
    el('rect', { x: 0, y: 0, width: PANEL * growths.length, height: HEIGHT, fill: '#fff' }),
    growths.map((g, n) => el('g', { transform: `translate(${n * PANEL} 0)` }, panel(g))),
    el('text', { x: 4, y: HEIGHT - 4 }, `${when}. Dashed: the growth hoped for.`),
  );
  return `${picture.markup}\n`;
}

function panel({ title, power, points }: Growth) {
  const plot = { left: 52, top: 34, right: PANEL - 14, bottom: HEIGHT - 62 };
  const first = points[0];
  const last = points[points.length - 1];
  const hoped = first.seconds * (last.x / first.x) ** power;
  const seconds = [...points.map((p) => p.seconds), hoped];
  const low = Math.min(...seconds) / 1.6;
  const high = Math.max(Math.max(...seconds) * 1.6, 10 * low);
  const x = scaleLog().domain([first.x, last.x]).range([plot.left, plot.right]);
  const y = scaleLog().domain([low, high]).range([plot.bottom, plot.top]);
  const path = points.map((p, i) => `${i === 0 ? 'M' : 'L'}${x(p.x).toFixed(2)} ${y(p.seconds).toFixed(2)}`).join('');
  return [
    xAxis(x, plot, title, 4),
    yAxis(y, plot, 'processor time, s', 4),
    el('path', {
      class: 'hoped',
      d: `M${x(first.x).toFixed(2)} ${y(first.seconds).toFixed(2)}L${x(last.x).toFixed(2)} ${y(hoped).toFixed(2)}`,
    }),
    el('path', { class: 'line', d: path }),
    points.map((p) => el('circle', { class: 'mark', cx: x(p.x), cy: y(p.seconds), r: 3 })),
  ];
}
