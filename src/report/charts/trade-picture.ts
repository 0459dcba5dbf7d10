/** TSFC against valve life: every finalist with its 5–95 % bands, the non-dominated line, and the rest of the search. */
import { scaleLinear, scaleLog } from 'd3-scale';
import type { Band } from '../../../shared/checks/check.ts';
import type { Architecture } from '../../space/architecture.ts';
import { shortName } from '../format/architecture-name.ts';
import { bandMetric, bandPhrase } from '../format/band.ts';
import { durationUnit } from '../format/duration.ts';
import { count } from '../format/number.ts';
import { displayUnits, metric } from '../format/quantity.ts';
import { FONT_SIZE, type Plot, ticksOf, tickTexts, xAxis, yAxis } from './axes.ts';
import { type Box, placeLabels } from './labels.ts';
import { mark } from './marks.ts';
import { el, figure, type Markup, polyline, round } from './svg.ts';

export interface TradeMark {
  id: string;
  /** Fragment of the page to which the mark links. */
  anchor: string;
  rank: number;
  architecture: Architecture;
  /** kg/(N s) and s. */
  tsfc: Band;
  life: Band;
  feasible: boolean;
  /** First of its architecture: its label carries the architecture's name. */
  bestOfArchitecture: boolean;
}

export interface TradeDot {
  architecture: Architecture;
  tsfc: number;
  life: number;
  feasible: boolean;
  reason: string;
}

export interface TradePictureInput {
  id: string;
  finalists: TradeMark[];
  others: TradeDot[];
  /** Ids along the non-dominated line, by rising TSFC. */
  front: string[];
}

/** A reason for infeasibility, the letter by which the picture names it, and how many designs it stopped. */
export interface TradeReason {
  letter: string;
  reason: string;
  designs: number;
}

const WIDTH = 680;
const HEIGHT = 430;
const PLOT: Plot = { left: 52, top: 44, right: WIDTH - 18, bottom: HEIGHT - 44 };
/** Full bands are drawn for so many ranks; the rest get thin ones. */
const BOLD_BANDS = 10;
const CELL = 5;

/** Ends of a range, widened a little; a single value gets room on both sides. */
function padded(values: number[], logarithmic: boolean): [number, number] {
  const low = Math.min(...values);
  const high = Math.max(...values);
  if (logarithmic)
    return low === high ? [low / 2, high * 2] : [low / (high / low) ** 0.06, high * (high / low) ** 0.08];
  const pad = low === high ? Math.abs(low) * 0.2 || 1 : (high - low) * 0.07;
  return [Math.max(0, low - pad), high + pad];
}

/** The reasons of infeasible designs, most frequent first, with letters a, b, c …; at most six. */
export function tradeReasons(others: readonly TradeDot[]): TradeReason[] {
  const counts = new Map<string, number>();
  for (const dot of others) if (!dot.feasible) counts.set(dot.reason, (counts.get(dot.reason) ?? 0) + 1);
  return [...counts]
    .sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))
    .slice(0, 6)
    .map(([reason, designs], i) => ({ letter: 'abcdef'[i], reason, designs }));
}

/** Draws the picture; null when nothing ran, so that there is nothing to draw. */
export function tradePicture(input: TradePictureInput): Markup | null {
  const { finalists, others } = input;
  if (finalists.length + others.length === 0) return null;
  const tsfcUnit = displayUnits('kg/(N s)', 1).metric;
  const imperialUnit = displayUnits('kg/(N s)', 1).imperial!;
  const lives = [...finalists.flatMap((f) => [f.life.low, f.life.high]), ...others.map((o) => o.life)].filter(
    (v) => v > 0,
  );
  const tsfcs = [...finalists.flatMap((f) => [f.tsfc.low, f.tsfc.high]), ...others.map((o) => o.tsfc)];
  const lifeDomain = padded(lives.length > 0 ? lives : [1], true);
  const lifeUnit = durationUnit(Math.sqrt(lifeDomain[0] * lifeDomain[1]));
  const x = scaleLinear(
    padded(tsfcs, false).map((v) => v * tsfcUnit.factor),
    [PLOT.left, PLOT.right],
  );
  const y = scaleLog(
    lifeDomain.map((v) => v / lifeUnit.seconds),
    [PLOT.bottom, PLOT.top],
  );
  const px = (tsfc: number) => x(tsfc * tsfcUnit.factor);
  const py = (life: number) => y(Math.max(life, lifeDomain[0]) / lifeUnit.seconds);

  const byRank = [...finalists].sort((a, b) => a.rank - b.rank);
  const reasons = tradeReasons(others);
  const marksDrawn = byRank.map((f) => ({
    ...f,
    x: px(f.tsfc.median),
    y: py(f.life.median),
    radius: f.rank <= 3 ? 6.5 : 5,
  }));
  const obstacles: Box[] = marksDrawn.flatMap((m) => [
    { x0: m.x - m.radius, x1: m.x + m.radius, y0: m.y - m.radius, y1: m.y + m.radius },
    ...(m.rank <= BOLD_BANDS
      ? [
          { x0: px(m.tsfc.low), x1: px(m.tsfc.high), y0: m.y - 1, y1: m.y + 1 },
          { x0: m.x - 1, x1: m.x + 1, y0: py(m.life.high), y1: py(m.life.low) },
        ]
      : []),
  ]);

  const requests = marksDrawn.map((m) => ({
    text: m.bestOfArchitecture ? `${m.id} ${shortName(m.architecture)}` : m.id,
    shorter: m.id,
    x: m.x,
    y: m.y,
    radius: m.radius,
  }));
  const letters = reasons.flatMap((r) => {
    const dots = others.filter((o) => !o.feasible && o.reason === r.reason);
    // The one that would have been best had it been allowed: nearest to the upper left corner.
    const best = dots.reduce((a, b) => (px(a.tsfc) + py(a.life) <= px(b.tsfc) + py(b.life) ? a : b));
    return [{ text: r.letter, x: px(best.tsfc), y: py(best.life), radius: 3 }];
  });
  const bounds = { x0: PLOT.left + 2, y0: PLOT.top + 2, x1: PLOT.right - 2, y1: PLOT.bottom - 2 };
  const front = input.front.map((id) => marksDrawn.find((m) => m.id === id)).filter((m) => m !== undefined);
  const steps = staircase(front.map((m) => [m.x, m.y]));
  const dots = thin(others, px, py);
  const background = dots.map((o) => ({
    x0: px(o.tsfc) - 3,
    x1: px(o.tsfc) + 3,
    y0: py(o.life) - 3,
    y1: py(o.life) + 3,
  }));
  obstacles.push(...alongPath(steps));
  const labels = placeLabels([...requests, ...letters], obstacles, background, bounds, FONT_SIZE);

  return figure(
    {
      id: input.id,
      title: 'TSFC against valve life',
      desc: describe(
        input,
        front.map((m) => m.id),
      ),
      width: WIDTH,
      height: HEIGHT,
      links: true,
    },
    xAxis(x, PLOT, 'TSFC, kg/(N·h): less is better'),
    topAxis(x, imperialUnit.factor / tsfcUnit.factor),
    yAxis(y, PLOT, `Valve life, ${lifeUnit.unit} of running: more is better`, 7, true, 28),
    dots.map((o) => mark(o.architecture, 3, px(o.tsfc), py(o.life), o.feasible ? 'other' : 'infeasible')),
    front.length > 1 ? el('path', { class: 'front', d: polyline(steps) }) : null,
    marksDrawn.map((m) =>
      el('path', {
        class: m.rank <= BOLD_BANDS ? 'whisker' : 'whisker-thin',
        d: `M${round(px(m.tsfc.low))} ${round(m.y)}H${round(px(m.tsfc.high))}M${round(m.x)} ${round(py(m.life.low))}V${round(py(m.life.high))}`,
      }),
    ),
    labels.map((label) =>
      label?.leader ? el('path', { class: 'leader', d: leaderPath(label.x, label.y, label.box) }) : null,
    ),
    marksDrawn.map((m) =>
      el(
        'a',
        { href: `#${m.anchor}` },
        el(
          'title',
          {},
          `${m.id}, ${shortName(m.architecture)}: ${bandPhrase(bandMetric(m.tsfc, 'kg/(N s)'))}, life ${bandPhrase(bandMetric(m.life, 's'))}`,
        ),
        mark(m.architecture, m.radius, m.x, m.y, m.feasible ? 'finalist' : 'finalist infeasible'),
      ),
    ),
    labels.map((label, i) =>
      label
        ? el(
            'text',
            { class: i < requests.length ? 'label halo' : 'label halo letter', x: label.textX, y: label.baseline },
            label.text,
          )
        : null,
    ),
  );
}

/** One dot for each small cell, architecture and kind, so that a long search prints quickly. */
function thin(others: readonly TradeDot[], px: (v: number) => number, py: (v: number) => number): TradeDot[] {
  const seen = new Set<string>();
  return others.filter((o) => {
    const key = `${o.architecture.id}|${o.feasible}|${Math.round(px(o.tsfc) / CELL)}|${Math.round(py(o.life) / CELL)}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** Between two points nothing better is known than the worse of both: hence steps. */
function staircase(points: [number, number][]): [number, number][] {
  const path: [number, number][] = [];
  points.forEach(([x, y], i) => {
    if (i > 0) path.push([x, points[i - 1][1]]);
    path.push([x, y]);
  });
  return path;
}

/** A thin box round each stretch, so that labels keep off the line. */
function alongPath(points: [number, number][]): Box[] {
  return points.slice(1).map(([x, y], i) => {
    const [px, py] = points[i];
    return { x0: Math.min(x, px) - 1, x1: Math.max(x, px) + 1, y0: Math.min(y, py) - 1, y1: Math.max(y, py) + 1 };
  });
}

function leaderPath(x: number, y: number, box: Box): string {
  const tx = Math.min(Math.max(x, box.x0), box.x1);
  const ty = Math.min(Math.max(y, box.y0 + 3), box.y1 - 3);
  return `M${round(x)} ${round(y)}L${round(tx)} ${round(ty)}`;
}

/** Twin axis in lb/(lbf·h) along the top. */
function topAxis(x: ReturnType<typeof scaleLinear<number, number>>, ratio: number): Markup {
  const twin = scaleLinear(
    x.domain().map((v) => v * ratio),
    x.range(),
  );
  const ticks = ticksOf(twin, 6);
  const texts = tickTexts(twin, ticks);
  return el(
    'g',
    {},
    el('path', { class: 'axis', d: `M${PLOT.left} ${PLOT.top}H${PLOT.right}` }),
    ticks.map((tick, i) => [
      el('path', { class: 'tick', d: `M${round(twin(tick))} ${PLOT.top}v-4` }),
      el('text', { class: 'num', x: twin(tick), y: PLOT.top - 8, 'text-anchor': 'middle' }, texts[i]),
    ]),
    el('text', { class: 'axis-title', x: PLOT.right, y: PLOT.top - 28, 'text-anchor': 'end' }, 'TSFC, lb/(lbf·h)'),
  );
}

function describe(input: TradePictureInput, front: string[]): string {
  const parts = [
    `${count(input.finalists.length, 'finalist')} and ${count(input.others.length, 'other design')} that ran are drawn by thrust-specific fuel consumption (level) and valve life (upright, logarithmic).`,
  ];
  const first = [...input.finalists].sort((a, b) => a.rank - b.rank)[0];
  if (first)
    parts.push(
      `${first.id}, ranked first, stands at ${metric(first.tsfc.median, 'kg/(N s)')} and ${metric(first.life.median, 's')}.`,
    );
  if (front.length > 0) parts.push(`The non-dominated line joins ${front.join(', ')}.`);
  return parts.join(' ');
}
