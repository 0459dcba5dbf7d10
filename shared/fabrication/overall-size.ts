/** Overall dimensions as drawn: along the exhaust's axis and square to it. */
import type { Engine } from '../engine/engine.ts';
import { bellRadius } from './bell-pieces.ts';
import { centreline, type PathSection } from './centreline.ts';
import { poppetLengths } from './poppet-layout.ts';
import { headFlange, plateThickness } from './proportions.ts';

export interface OverallSize {
  /** m, along the exhaust axis, with valve plate, bells and augmenter. */
  length: number;
  /** m, largest outside diameter; for a U-bent engine the height over both legs. */
  diameter: number;
}

interface Extent {
  x: [number, number];
  y: [number, number];
}

/** Bounding box of everything that is drawn in the plane of the duct. Pure geometry; metres. */
export function overallSize(engine: Engine): OverallSize {
  const { x, y } = drawnExtent(engine);
  return { length: x[1] - x[0], diameter: y[1] - y[0] };
}

/** Bounding box in the coordinates of `centreline`. */
export function drawnExtent(engine: Engine): Extent {
  const wall = engine.shell.thickness;
  const extent: Extent = { x: [Infinity, -Infinity], y: [Infinity, -Infinity] };
  const include = (x: number, y: number) => {
    extent.x = [Math.min(extent.x[0], x), Math.max(extent.x[1], x)];
    extent.y = [Math.min(extent.y[0], y), Math.max(extent.y[1], y)];
  };
  /** The two wall points of a cross-section `ahead` of a station along the heading. */
  const across = (at: { x: number; y: number }, heading: number, ahead: number, diameter: number) => {
    const cx = at.x + ahead * Math.cos(heading);
    const cy = at.y + ahead * Math.sin(heading);
    for (const side of [-0.5, 0.5]) {
      include(cx - side * diameter * Math.sin(heading), cy + side * diameter * Math.cos(heading));
    }
  };
  const path = centreline(engine);
  for (const leg of path) {
    across(leg.start, leg.startHeading, 0, leg.section.startDiameter + 2 * wall);
    across(leg.end, leg.endHeading, 0, leg.section.endDiameter + 2 * wall);
    if (leg.section.bend) includeBend(leg, wall, include);
  }
  const head = path[0];
  const tail = path.at(-1)!;
  includeHead(engine, (ahead, diameter) => across(head.start, head.startHeading, ahead, diameter));
  if (engine.augmenter) {
    const { gap, diameter, length, taper } = engine.augmenter;
    const bell = bellRadius(diameter);
    across(tail.end, tail.endHeading, gap, diameter + 2 * bell + 2 * wall);
    across(tail.end, tail.endHeading, gap + bell + length, diameter * taper + 2 * wall);
  }
  return extent;
}

/** What stands before the head: valve plate and flange with stems, or the bell of a flared mouth. */
function includeHead(engine: Engine, across: (ahead: number, diameter: number) => void): void {
  const { intake, shell } = engine;
  const diameter = engine.sections[0].startDiameter;
  if (intake.kind === 'valveless') {
    if (intake.lip === 'flared') {
      const bell = bellRadius(diameter);
      across(-bell, diameter + 2 * bell + 2 * shell.thickness);
    }
    return;
  }
  const flange = headFlange(diameter, shell.thickness);
  across(-plateThickness(diameter), flange.outerDiameter);
  across(flange.thickness, flange.outerDiameter);
  if (intake.kind === 'poppet') across(-poppetLengths(engine, intake).stemLength, intake.stemDiameter);
}

/** Extremes of a bend's outer wall in the four axis directions that it sweeps through. */
function includeBend(leg: PathSection, wall: number, include: (x: number, y: number) => void): void {
  const { angle, radius } = leg.section.bend!;
  const outer = radius + Math.max(leg.section.startDiameter, leg.section.endDiameter) / 2 + wall;
  const first = leg.startHeading - Math.PI / 2;
  for (let quarter = -8; quarter <= 8; quarter++) {
    const direction = (quarter * Math.PI) / 2;
    if (direction < first - 1e-9 || direction > first + angle + 1e-9) continue;
    include(leg.centre!.x + outer * Math.cos(direction), leg.centre!.y + outer * Math.sin(direction));
  }
}
