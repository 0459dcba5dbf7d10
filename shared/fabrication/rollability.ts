/** Whether the stated tools can form the shell. Lengths in metres, angles in radians. */
import type { Engine, Section } from '../engine/engine.ts';

/** Smallest inside diameter that must be rolled, and the section that has it. */
export function smallestRolled(engine: Engine): { diameter: number; section: Section } {
  const section = engine.sections.reduce((a, b) => (smallEnd(b) < smallEnd(a) ? b : a));
  return { diameter: smallEnd(section), section };
}

function smallEnd(section: Section): number {
  return Math.min(section.startDiameter, section.endDiameter);
}

/** Rolled width of the longest section and how many courses it takes on rolls of `rollWidth`. */
export function longestCourse(engine: Engine, rollWidth: number): { length: number; courses: number } {
  const length = Math.max(...engine.sections.filter((s) => !s.bend).map((s) => s.length), 0);
  return { length, courses: Math.max(1, Math.ceil(length / rollWidth - 1e-9)) };
}

/** Half-angle of a cone, rad: atan(|ΔD|/2L). */
export function halfAngle(section: Section): number {
  return Math.atan(Math.abs(section.endDiameter - section.startDiameter) / (2 * section.length));
}

/** Cones in order of steepness, steepest first. */
export function steepestCone(engine: Engine): { angle: number; section: Section } | null {
  const cones = engine.sections.filter((s) => !s.bend && halfAngle(s) > 1e-6);
  if (cones.length === 0) return null;
  const section = cones.reduce((a, b) => (halfAngle(b) > halfAngle(a) ? b : a));
  return { angle: halfAngle(section), section };
}

/** Tightest bend as centreline radius over diameter; null without bends. */
export function tightestBend(engine: Engine): number | null {
  const ratios = engine.sections.flatMap((s) =>
    s.bend ? [s.bend.radius / Math.max(s.startDiameter, s.endDiameter)] : [],
  );
  return ratios.length > 0 ? Math.min(...ratios) : null;
}

/** Thinnest sheet, m, that each process joins without burning through in careful hands. Common practice, no source. */
export const THINNEST_WELD = { gas: 0.8e-3, TIG: 0.5e-3, MIG: 0.8e-3, spot: 0.4e-3 } as const;
