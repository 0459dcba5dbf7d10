/** One cycle of the engine: pressures, valve lift, mass flows, heat release and thrust over the same time. */
import { scaleLinear } from 'd3-scale';
import type { CycleTraces } from '../../../shared/engine/performance.ts';
import { metric } from '../format/quantity.ts';
import { FONT_SIZE, type Plot, xAxis, yAxis } from './axes.ts';
import { spread } from './labels.ts';
import { el, figure, type Markup, polyline } from './svg.ts';

interface Line {
  name: string;
  values: number[];
  dashed?: boolean;
}

interface Panel {
  title: string;
  lines: Line[];
  /** Horizontal reference, e.g. ambient pressure or the stop. */
  reference: { value: number; name: string } | null;
}

const WIDTH = 680;
const PANEL = 74;
const GAP = 28;
const LEFT = 46;
const RIGHT_LABELS = 96;
/** More points than this cannot be told apart in print. */
const MOST_POINTS = 240;

/** Every n-th sample, first and last kept. */
function thinned(length: number): number[] {
  const step = Math.max(1, Math.ceil(length / MOST_POINTS));
  const indices: number[] = [];
  for (let i = 0; i < length; i += step) indices.push(i);
  if (indices.at(-1) !== length - 1) indices.push(length - 1);
  return indices;
}

function scaled(values: number[], factor: number): number[] {
  return values.map((v) => v * factor);
}

/**
 * @param ambient Pa, drawn as reference of the pressures.
 * @param stopLift m, null for valveless: the lift panel is then left out.
 */
export function cycleTraces(id: string, traces: CycleTraces, ambient: number, stopLift: number | null): Markup {
  const panels: Panel[] = [
    {
      title: 'Pressure, bar absolute',
      lines: [
        { name: 'chamber', values: scaled(traces.headPressure, 1e-5) },
        { name: 'exit', values: scaled(traces.exitPressure, 1e-5), dashed: true },
      ],
      reference: { value: ambient * 1e-5, name: 'outside air' },
    },
    ...(stopLift === null
      ? []
      : [
          {
            title: 'Valve lift, mm',
            lines: [{ name: 'lift', values: scaled(traces.valveLift, 1e3) }],
            reference: { value: stopLift * 1e3, name: 'stop' },
          },
        ]),
    {
      title: 'Mass flow, g/s',
      lines: [
        { name: 'in at intake', values: scaled(traces.intakeFlow, 1e3) },
        { name: 'out at exit', values: scaled(traces.exitFlow, 1e3), dashed: true },
      ],
      reference: { value: 0, name: '' },
    },
    {
      title: 'Heat release, kW',
      lines: [{ name: 'heat', values: scaled(traces.heatRelease, 1e-3) }],
      reference: null,
    },
    {
      title: 'Thrust, N',
      lines: [{ name: 'thrust', values: traces.thrust }],
      reference: { value: 0, name: '' },
    },
  ];
  const height = panels.length * (PANEL + GAP) + 44;
  const time = scaled(traces.time, 1e3);
  const x = scaleLinear([0, time.at(-1) ?? 1], [LEFT, WIDTH - RIGHT_LABELS]);
  const indices = thinned(time.length);

  return figure(
    {
      id,
      title: 'One cycle: pressure, lift, flow, heat release and thrust',
      desc: describe(traces),
      width: WIDTH,
      height,
    },
    panels.map((panel, p) => {
      const top = 22 + p * (PANEL + GAP);
      const plot: Plot = { left: LEFT, top, right: WIDTH - RIGHT_LABELS, bottom: top + PANEL };
      const all = [...panel.lines.flatMap((l) => l.values), ...(panel.reference ? [panel.reference.value] : [])];
      const low = Math.min(...all);
      const high = Math.max(...all);
      const pad = (high - low || Math.abs(high) || 1) * 0.06;
      const y = scaleLinear([low < 0 || low > 0 ? low - pad : 0, high + pad], [plot.bottom, plot.top]);
      return el(
        'g',
        {},
        yAxis(y, plot, panel.title, 4),
        p === panels.length - 1 ? xAxis(x, plot, 'Time, ms', 8) : xGrid(x, plot),
        panel.reference
          ? el('path', { class: 'reference', d: `M${plot.left} ${y(panel.reference.value).toFixed(2)}H${plot.right}` })
          : null,
        panel.lines.map((line, i) =>
          el('path', {
            class: `line line-${i + 1}${line.dashed ? ' dashed' : ''}`,
            d: polyline(indices.map((k) => [x(time[k]), y(line.values[k])])),
          }),
        ),
        endLabels(panel, plot, y),
      );
    }),
  );
}

function xGrid(x: ReturnType<typeof scaleLinear<number, number>>, plot: Plot): Markup {
  return el(
    'g',
    {},
    x.ticks(8).map((t) => el('path', { class: 'grid', d: `M${x(t).toFixed(2)} ${plot.top}V${plot.bottom}` })),
    el('path', { class: 'axis', d: `M${plot.left} ${plot.bottom}H${plot.right}` }),
  );
}

/** Names at the right end of each line and reference, moved apart, with a short stroke back to their line. */
function endLabels(panel: Panel, plot: Plot, y: (v: number) => number): Markup {
  const named = [
    ...panel.lines.map((l, i) => ({
      name: l.name,
      y: y(l.values.at(-1) ?? 0),
      line: `line line-${i + 1}${l.dashed ? ' dashed' : ''}`,
    })),
    ...(panel.reference && panel.reference.name !== ''
      ? [{ name: panel.reference.name, y: y(panel.reference.value), line: 'reference' }]
      : []),
  ];
  const rows = spread(
    named.map((n) => n.y),
    FONT_SIZE + 2,
    plot.top + 4,
    plot.bottom - 2,
  );
  return el(
    'g',
    {},
    named.map((n, i) => [
      el('path', {
        class: n.line,
        d: polyline([
          [plot.right + 2, n.y],
          [plot.right + 8, rows[i]],
          [plot.right + 20, rows[i]],
        ]),
      }),
      el('text', { class: 'label', x: plot.right + 24, y: rows[i] + 4 }, n.name),
    ]),
  );
}

function describe(traces: CycleTraces): string {
  const period = traces.time.at(-1) ?? 0;
  const peak = Math.max(...traces.headPressure);
  const lowest = Math.min(...traces.headPressure);
  return (
    `Over one period of ${metric(period, 's')} the chamber pressure swings between ${metric(lowest, 'Pa')} and ` +
    `${metric(peak, 'Pa')} absolute; thrust swings between ${metric(Math.min(...traces.thrust), 'N')} and ${metric(Math.max(...traces.thrust), 'N')}.`
  );
}
