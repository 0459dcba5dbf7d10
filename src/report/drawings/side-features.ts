/** What the side view names and measures on each side of the drawing: parts with their spans, lengths, stations. */
import type { Engine } from '../../../shared/engine/engine.ts';
import { augmenterPieces, bellRadius, intakeBellPieces } from '../../../shared/fabrication/bell-pieces.ts';
import { centreline, type PathSection } from '../../../shared/fabrication/centreline.ts';
import { SPARK_BOSS } from '../../../shared/fabrication/hardware-parts.ts';
import { headFlange, plateThickness } from '../../../shared/fabrication/proportions.ts';
import { shellPieces } from '../../../shared/fabrication/shell-pieces.ts';
import { local } from './body.ts';
import { diameterText, lengthText } from './drafting.ts';

/** x in metres along the drawing; `radius` is the half height that the leader or extension line starts from, m. */
export interface NamedSpan {
  partId: string;
  text: string;
  from: number;
  to: number;
  /** Outline's distance from the leg's axis at a share of the span from `from`, m. */
  radiusAt: (share: number) => number;
}

export interface MeasuredLength {
  text: string;
  x0: number;
  x1: number;
}

export interface StationMark {
  text: string;
  x: number;
  radius: number;
}

/** One straight run of the duct that lies along the drawing's x axis. */
export interface Leg {
  /** +1: dimensions go above, −1: below. */
  side: 1 | -1;
  /** Height of the axis, m. */
  axisY: number;
  spans: NamedSpan[];
  lengths: MeasuredLength[];
  stations: StationMark[];
}

/**
 * Legs of the engine. A straight engine gives one, named above and measured below; a U gives the head leg (above) and the tail leg
 * (below).
 */
export function sideLegs(engine: Engine): Leg[] {
  const path = centreline(engine).filter((p) => !p.section.bend && Math.abs(Math.sin(p.startHeading)) < 1e-6);
  const runs: PathSection[][] = [];
  for (const section of path) {
    const last = runs.at(-1);
    if (last && last.at(-1)!.index === section.index - 1) last.push(section);
    else runs.push([section]);
  }
  const ordered = [...runs].sort((a, b) => b[0].start.y - a[0].start.y);
  return runs.map((run) => legOf(engine, run, ordered[0] === run || runs.length === 1 ? 1 : -1));
}

function legOf(engine: Engine, run: PathSection[], side: 1 | -1): Leg {
  const wall = engine.shell.thickness;
  const leg: Leg = { side, axisY: run[0].start.y, spans: [], lengths: [], stations: [] };
  for (const { section, index, start, end, startStation, endStation } of run) {
    const names = shellPieces(engine).filter((p) => p.section === index);
    const name = names[0].name.replace(/, course .*/, '');
    const tapered = Math.abs(section.startDiameter - section.endDiameter) > 1e-6;
    leg.spans.push({
      partId: names[0].id,
      text: tapered
        ? `${name}, Ø ${mm(section.startDiameter)} to ${diameterText(section.endDiameter).slice(2)}`
        : `${name}, ${diameterText(section.startDiameter)}`,
      ...spanOf(start.x, end.x, section.startDiameter / 2 + wall, section.endDiameter / 2 + wall),
    });
    leg.lengths.push({ text: lengthText(section.length), x0: start.x, x1: end.x });
    if (leg.stations.length === 0) {
      leg.stations.push({ text: lengthText(startStation), x: start.x, radius: section.startDiameter / 2 + wall });
    }
    leg.stations.push({ text: lengthText(endStation), x: end.x, radius: section.endDiameter / 2 + wall });
  }
  if (run[0].index === 0) addHead(engine, run[0], leg);
  const chamber = run.find((p) => p.section.role === 'chamber');
  if (chamber && chamber.section.length >= 2 * SPARK_BOSS.diameter) {
    const at = local(chamber.start, chamber.startHeading, 0.4 * chamber.section.length, 0).x;
    const top = chamber.section.startDiameter / 2 + wall + SPARK_BOSS.length;
    leg.spans.push({ partId: 'spark-boss', text: 'Spark plug boss', from: at, to: at, radiusAt: () => top });
  }
  if (run.at(-1)!.index === engine.sections.length - 1) addAugmenter(engine, run.at(-1)!, leg);
  return leg;
}

/** Orders the span's ends from left to right. */
function spanOf(x0: number, x1: number, r0: number, r1: number): Pick<NamedSpan, 'from' | 'to' | 'radiusAt'> {
  const flip = x1 < x0;
  return {
    from: Math.min(x0, x1),
    to: Math.max(x0, x1),
    radiusAt: (share) => (flip ? r1 + (r0 - r1) * share : r0 + (r1 - r0) * share),
  };
}

function addHead(engine: Engine, head: PathSection, leg: Leg): void {
  const diameter = engine.sections[0].startDiameter;
  const x = (ahead: number) => local(head.start, head.startHeading, ahead, 0).x;
  if (engine.intake.kind === 'valveless') {
    const bell = intakeBellPieces(engine);
    if (bell.length === 0) return;
    const radius = bellRadius(diameter);
    const lip = diameter / 2 + radius + engine.shell.thickness;
    leg.spans.push({
      partId: bell[0].id,
      text: `Intake bell lip, R ${lengthText(radius)}`,
      ...spanOf(x(-radius), x(-radius), lip, lip),
    });
    return;
  }
  const flange = headFlange(diameter, engine.shell.thickness);
  const outer = flange.outerDiameter / 2;
  leg.spans.push({
    partId: 'valve-plate',
    text: `${engine.intake.kind === 'poppet' ? 'Seat plate' : 'Valve plate'}, ${diameterText(flange.outerDiameter)}`,
    ...spanOf(x(-plateThickness(diameter)), x(0), outer, outer),
  });
  leg.spans.push({
    partId: 'head-flange',
    text: 'Head flange ring',
    ...spanOf(x(0), x(flange.thickness), outer, outer),
  });
}

function addAugmenter(engine: Engine, tail: PathSection, leg: Leg): void {
  const augmenter = engine.augmenter;
  if (!augmenter) return;
  const wall = engine.shell.thickness;
  const x = (ahead: number) => local(tail.end, tail.endHeading, ahead, 0).x;
  const bell = bellRadius(augmenter.diameter);
  const pieces = augmenterPieces(engine);
  const duct = pieces.find((p) => p.id.startsWith('augmenter-duct'))!;
  const { gap, length, diameter, taper } = augmenter;
  const exit = diameter * taper;
  leg.spans.push(
    {
      partId: pieces[0].id,
      text: `Augmenter bell, R ${lengthText(bell)}`,
      ...spanOf(x(gap), x(gap), diameter / 2 + bell + wall, diameter / 2 + bell + wall),
    },
    {
      partId: duct.id,
      text:
        Math.abs(taper - 1) > 1e-6
          ? `Augmenter duct, Ø ${mm(diameter)} to ${diameterText(exit).slice(2)}`
          : `Augmenter duct, ${diameterText(diameter)}`,
      ...spanOf(x(gap + bell), x(gap + bell + length), diameter / 2 + wall, exit / 2 + wall),
    },
  );
  leg.lengths.push(
    { text: `gap ${lengthText(gap)}`, x0: x(0), x1: x(gap) },
    { text: lengthText(length), x0: x(gap + bell), x1: x(gap + bell + length) },
  );
}

const mm = (metres: number): string => (metres * 1e3).toFixed(1);
