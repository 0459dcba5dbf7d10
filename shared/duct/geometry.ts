/**
 * The bore of the engine as a function of position: radius, cross-section and volume along the centreline.
 *
 * Sections are frusta, so r(x) is linear inside each and A = π r².
 */
import type { Section } from '../engine/engine.ts';

/** Positions where sections meet, m from the head; length sections.length + 1. */
export function sectionStations(sections: readonly Section[]): number[] {
  const stations = [0];
  for (const s of sections) stations.push(stations[stations.length - 1] + s.length);
  return stations;
}

/** Volume of a frustum, m³: π h (r₁² + r₁ r₂ + r₂²) / 3. */
export function frustumVolume(r1: number, r2: number, height: number): number {
  return (Math.PI * height * (r1 * r1 + r1 * r2 + r2 * r2)) / 3;
}

/** Lateral area of a frustum, m²: π (r₁ + r₂) √(h² + (r₂ − r₁)²). */
export function frustumSide(r1: number, r2: number, height: number): number {
  return Math.PI * (r1 + r2) * Math.hypot(height, r2 - r1);
}

/** Inside radius at x, m; clamped to the ends. */
export function radiusAt(sections: readonly Section[], x: number): number {
  let start = 0;
  for (const s of sections) {
    if (x <= start + s.length) {
      const w = s.length > 0 ? Math.min(1, Math.max(0, (x - start) / s.length)) : 1;
      return 0.5 * (s.startDiameter + w * (s.endDiameter - s.startDiameter));
    }
    start += s.length;
  }
  return 0.5 * sections[sections.length - 1].endDiameter;
}

/** Volume and wall area of the bore between a and b, m³ and m²; beyond the ends the bore goes on as a cylinder without wall. */
export function boreBetween(sections: readonly Section[], a: number, b: number): { volume: number; wall: number } {
  let volume = 0;
  let wall = 0;
  const stations = sectionStations(sections);
  const end = stations[stations.length - 1];
  for (let i = 0; i < sections.length; i++) {
    const lo = Math.max(a, stations[i]);
    const hi = Math.min(b, stations[i + 1]);
    if (hi <= lo) continue;
    const s = sections[i];
    const slope = (s.endDiameter - s.startDiameter) / (2 * s.length);
    const r1 = s.startDiameter / 2 + slope * (lo - stations[i]);
    const r2 = s.startDiameter / 2 + slope * (hi - stations[i]);
    volume += frustumVolume(r1, r2, hi - lo);
    wall += frustumSide(r1, r2, hi - lo);
  }
  if (a < 0) volume += frustumVolume(sections[0].startDiameter / 2, sections[0].startDiameter / 2, Math.min(b, 0) - a);
  if (b > end) {
    const r = sections[sections.length - 1].endDiameter / 2;
    volume += frustumVolume(r, r, b - Math.max(a, end));
  }
  return { volume, wall };
}
