/** Hoop stress of the shell at one cell of the profile, Pa. */
import type { Engine, Section } from '../engine/engine.ts';
import type { AxialProfile } from '../engine/performance.ts';
import { halfAngle } from '../fabrication/rollability.ts';
import { coneHoopStress } from './hoop-stress.ts';

/** Section that holds the station `position`, m; the last one beyond the end. */
export function sectionAt(engine: Engine, position: number): Section {
  let end = 0;
  for (const section of engine.sections) {
    end += section.length;
    if (position <= end) return section;
  }
  return engine.sections[engine.sections.length - 1];
}

/** By the larger of peak gauge pressure and deepest suction, over the cosine of the cone's half-angle. `thickness` in m. */
export function wallStress(engine: Engine, profile: AxialProfile, cell: number, thickness: number): number {
  const { pressure } = engine.site;
  const load = Math.max(profile.peakPressure[cell] - pressure, pressure - profile.lowestPressure[cell], 0);
  const section = sectionAt(engine, profile.position[cell]);
  return coneHoopStress(load, profile.diameter[cell], thickness, section.bend ? 0 : halfAngle(section));
}
