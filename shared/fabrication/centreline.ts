/** The duct's centreline as a plane path, bends turned truly. Head at the origin, x along the exit's direction of flow. */
import type { Engine, Section } from '../engine/engine.ts';

export interface PlanePoint {
  x: number;
  y: number;
}

/** One section on the path. Headings in rad, anticlockwise from +x. */
export interface PathSection {
  section: Section;
  index: number;
  start: PlanePoint;
  end: PlanePoint;
  startHeading: number;
  endHeading: number;
  startStation: number;
  endStation: number;
  /** Bends: centre of the centreline's arc. */
  centre: PlanePoint | null;
}

/**
 * Walks the sections. The first heading is chosen so that the exhaust leaves along +x; bends turn anticlockwise, so that
 * the tail leg of a U lies below its chamber leg.
 */
export function centreline(engine: Engine): PathSection[] {
  const turn = engine.sections.reduce((sum, s) => sum + (s.bend?.angle ?? 0), 0);
  let heading = -turn;
  let at: PlanePoint = { x: 0, y: 0 };
  let station = 0;
  return engine.sections.map((section, index) => {
    const start = at;
    const startHeading = heading;
    let centre: PlanePoint | null = null;
    if (section.bend) {
      const { angle, radius } = section.bend;
      centre = { x: start.x - radius * Math.sin(heading), y: start.y + radius * Math.cos(heading) };
      heading += angle;
      at = { x: centre.x + radius * Math.sin(heading), y: centre.y - radius * Math.cos(heading) };
    } else {
      at = { x: start.x + section.length * Math.cos(heading), y: start.y + section.length * Math.sin(heading) };
    }
    const startStation = station;
    station += section.length;
    return {
      section,
      index,
      start,
      end: at,
      startHeading,
      endHeading: heading,
      startStation,
      endStation: station,
      centre,
    };
  });
}

/** Angle turned by all bends, rad. */
export function totalTurn(engine: Engine): number {
  return engine.sections.reduce((sum, s) => sum + (s.bend?.angle ?? 0), 0);
}
