/** The engine's side elevation in the plane of its duct, in metres as `centreline` lays it: outlines, joints, axis. */

import type { Engine } from '../../../shared/engine/engine.ts';
import { augmenterPieces, bellRadius, intakeBellPieces } from '../../../shared/fabrication/bell-pieces.ts';
import { centreline, type PathSection, type PlanePoint } from '../../../shared/fabrication/centreline.ts';
import { SPARK_BOSS } from '../../../shared/fabrication/hardware-parts.ts';
import { poppetLayout, poppetLengths } from '../../../shared/fabrication/poppet-layout.ts';
import { headFlange, plateThickness } from '../../../shared/fabrication/proportions.ts';
import { shellPieces } from '../../../shared/fabrication/shell-pieces.ts';

export interface BodyLine {
  points: PlanePoint[];
  kind: 'outline' | 'joint' | 'axis' | 'hidden';
}

/** Point `ahead` of a place along a heading and `side` to its left. */
export function local(at: PlanePoint, heading: number, ahead: number, side: number): PlanePoint {
  return {
    x: at.x + ahead * Math.cos(heading) - side * Math.sin(heading),
    y: at.y + ahead * Math.sin(heading) + side * Math.cos(heading),
  };
}

/** Everything that the side view draws before dimensions. */
export function bodyLines(engine: Engine): BodyLine[] {
  const path = centreline(engine);
  const lines = path.flatMap((leg) => (leg.section.bend ? bendLines(engine, leg) : straightLines(engine, leg)));
  const head = path[0];
  const tail = path.at(-1)!;
  lines.push(...headLines(engine, head), ...augmenterLines(engine, tail));
  lines.push({ kind: 'axis', points: [local(head.start, head.startHeading, -axisReach(engine), 0), head.start] });
  lines.push({ kind: 'outline', points: crossLine(engine, tail.end, tail.endHeading, tail.section.endDiameter) });
  return lines;
}

function axisReach(engine: Engine): number {
  return 0.03 + (engine.intake.kind === 'poppet' ? poppetLengths(engine, engine.intake).stemLength : 0);
}

function crossLine(engine: Engine, at: PlanePoint, heading: number, diameter: number): PlanePoint[] {
  const r = diameter / 2 + engine.shell.thickness;
  return [local(at, heading, 0, r), local(at, heading, 0, -r)];
}

function straightLines(engine: Engine, leg: PathSection): BodyLine[] {
  const { start, end, startHeading: heading, section } = leg;
  const t = engine.shell.thickness;
  const wall = (side: number): BodyLine => ({
    kind: 'outline',
    points: [
      local(start, heading, 0, side * (section.startDiameter / 2 + t)),
      local(end, heading, 0, side * (section.endDiameter / 2 + t)),
    ],
  });
  const inner = shellPieces(engine)
    .filter((p) => p.shape === 'rolled' && p.section === leg.index && p.startStation > leg.startStation + 1e-9)
    .map((p) => {
      const share = (p.startStation - leg.startStation) / section.length;
      const diameter = section.startDiameter + (section.endDiameter - section.startDiameter) * share;
      return crossLine(engine, local(start, heading, share * section.length, 0), heading, diameter);
    });
  return [
    wall(1),
    wall(-1),
    { kind: leg.index === 0 ? 'outline' : 'joint', points: crossLine(engine, start, heading, section.startDiameter) },
    ...inner.map((points): BodyLine => ({ kind: 'joint', points })),
    { kind: 'axis', points: [start, end] },
  ];
}

/** Gores as they lie: walls are straight between the mitre planes, which all pass through the bend's centre. */
function bendLines(engine: Engine, leg: PathSection): BodyLine[] {
  const piece = shellPieces(engine).find((p) => p.section === leg.index)!;
  if (piece.shape !== 'bend') throw new Error('a bend has no mitred piece');
  const { angle, centreRadius, mitres } = piece;
  const half = angle / (2 * mitres);
  const r = piece.diameter / 2 + engine.shell.thickness;
  const centre = leg.centre!;
  const first = leg.startHeading - Math.PI / 2;
  const ray = (turn: number, radius: number): PlanePoint => ({
    x: centre.x + radius * Math.cos(first + turn),
    y: centre.y + radius * Math.sin(first + turn),
  });
  const mitreTurns = Array.from({ length: mitres }, (_, k) => half * (2 * k + 1));
  const wall = (radius: number): PlanePoint[] => [
    ray(0, radius),
    ...mitreTurns.map((turn) => ray(turn, radius / Math.cos(half))),
    ray(angle, radius),
  ];
  const axis = Array.from({ length: 49 }, (_, i) => ray((angle * i) / 48, centreRadius));
  return [
    { kind: 'outline', points: wall(centreRadius + r) },
    { kind: 'outline', points: wall(centreRadius - r) },
    { kind: 'joint', points: [ray(0, centreRadius - r), ray(0, centreRadius + r)] },
    ...mitreTurns.map(
      (turn): BodyLine => ({
        kind: 'joint',
        points: [ray(turn, (centreRadius - r) / Math.cos(half)), ray(turn, (centreRadius + r) / Math.cos(half))],
      }),
    ),
    { kind: 'axis', points: axis },
  ];
}

/** Valve plate with flange and stems, or the mouth's bell; and the spark plug boss on the chamber. */
function headLines(engine: Engine, head: PathSection): BodyLine[] {
  const { intake, shell } = engine;
  const diameter = engine.sections[0].startDiameter;
  const box = (from: number, to: number, outer: number, centreSide = 0): BodyLine => ({
    kind: 'outline',
    points: [
      [from, outer],
      [to, outer],
      [to, -outer],
      [from, -outer],
      [from, outer],
    ].map(([ahead, side]) => local(head.start, head.startHeading, ahead, side + centreSide)),
  });
  const lines: BodyLine[] = [];
  if (intake.kind === 'valveless') {
    if (intakeBellPieces(engine).length > 0) {
      lines.push(
        ...profileLines(engine, intakeBellPieces(engine), head.start, head.startHeading, -bellRadius(diameter)),
      );
    }
  } else {
    const flange = headFlange(diameter, shell.thickness);
    lines.push(
      box(-plateThickness(diameter), 0, flange.outerDiameter / 2),
      box(0, flange.thickness, flange.outerDiameter / 2),
    );
    if (intake.kind === 'poppet') {
      const { stemLength, retainerDiameter, retainerThickness } = poppetLengths(engine, intake);
      const sides = [...new Set(poppetLayout(engine, intake).centres.map((c) => Math.round(c.y * 1e5) / 1e5))];
      for (const side of sides) {
        lines.push(box(-stemLength, -plateThickness(diameter), intake.stemDiameter / 2, side));
        lines.push(box(-stemLength, -stemLength + retainerThickness, retainerDiameter / 2, side));
      }
    }
  }
  lines.push(...sparkBoss(engine));
  return lines;
}

/** Stub on the side of the chamber that faces away from the other leg. */
function sparkBoss(engine: Engine): BodyLine[] {
  const leg = centreline(engine).find((p) => p.section.role === 'chamber');
  if (!leg || leg.section.length < 2 * SPARK_BOSS.diameter) return [];
  const side = Math.cos(leg.startHeading) < -0.5 ? -1 : 1;
  const ahead = 0.4 * leg.section.length;
  const wall = leg.section.startDiameter / 2 + engine.shell.thickness;
  const half = SPARK_BOSS.diameter / 2;
  return [
    {
      kind: 'outline',
      points: [
        [ahead - half, wall],
        [ahead - half, wall + SPARK_BOSS.length],
        [ahead + half, wall + SPARK_BOSS.length],
        [ahead + half, wall],
      ].map(([a, s]) => local(leg.start, leg.startHeading, a, side * s)),
    },
    {
      kind: 'axis',
      points: [
        local(leg.start, leg.startHeading, ahead, side * (wall - 0.004)),
        local(leg.start, leg.startHeading, ahead, side * (wall + SPARK_BOSS.length + 0.006)),
      ],
    },
  ];
}

/** Outside profile and joints of rolled pieces that follow one another from a place `offset` along a heading. */
function profileLines(
  engine: Engine,
  pieces: { startStation: number; endStation: number; startDiameter: number; endDiameter: number }[],
  at: PlanePoint,
  heading: number,
  offset: number,
): BodyLine[] {
  const t = engine.shell.thickness;
  const ends = [
    ...pieces.map((p) => ({ station: p.startStation, diameter: p.startDiameter })),
    { station: pieces.at(-1)!.endStation, diameter: pieces.at(-1)!.endDiameter },
  ];
  const wall = (side: number): BodyLine => ({
    kind: 'outline',
    points: ends.map((e) => local(at, heading, offset + e.station, side * (e.diameter / 2 + t))),
  });
  const cross = ends.map(
    (e, i): BodyLine => ({
      kind: i === 0 || i === ends.length - 1 ? 'outline' : 'joint',
      points: [1, -1].map((side) => local(at, heading, offset + e.station, side * (e.diameter / 2 + t))),
    }),
  );
  return [wall(1), wall(-1), ...cross];
}

function augmenterLines(engine: Engine, tail: PathSection): BodyLine[] {
  if (!engine.augmenter) {
    return [{ kind: 'axis', points: [tail.end, local(tail.end, tail.endHeading, 0.03, 0)] }];
  }
  const { gap, diameter, length } = engine.augmenter;
  const exit = engine.sections.at(-1)!.endDiameter / 2 + engine.shell.thickness;
  const throat = diameter / 2 + engine.shell.thickness;
  const reach = gap + bellRadius(diameter);
  const stays = [1, -1].map(
    (side): BodyLine => ({
      kind: 'hidden',
      points: [
        local(tail.end, tail.endHeading, -0.02, side * exit),
        local(tail.end, tail.endHeading, 0, side * exit),
        local(tail.end, tail.endHeading, reach, side * throat),
      ],
    }),
  );
  return [
    ...profileLines(engine, augmenterPieces(engine), tail.end, tail.endHeading, gap),
    ...stays,
    { kind: 'axis', points: [tail.end, local(tail.end, tail.endHeading, reach + length + 0.03, 0)] },
  ];
}
