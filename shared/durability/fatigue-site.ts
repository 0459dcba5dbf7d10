/** One place where a valve may crack: its stress cycle and the life that it allows. */
import { fatigueCycles, fatigueStrength, slopeAt } from './basquin.ts';
import { equivalentAmplitude } from './mean-stress.ts';
import { valueAt } from './property-table.ts';
import type { ValveMaterial } from './valve-materials.ts';

export interface FatigueSite {
  id: string;
  /** Where, in words: "at the root". */
  where: string;
  /** Extremes of the stress cycle, Pa, tension positive. */
  maximum: number;
  minimum: number;
  /** Fully reversed amplitude that does the same harm, Pa. */
  amplitude: number;
  /** Reduction of the smooth-specimen strength at 10⁶ cycles. */
  reduction: number;
  /** Share of room-temperature strength left at the valve's temperature. */
  hotShare: number;
  /** Median cycles to failure. */
  cycles: number;
}

const ROOM = 293.15;

/** Judges a stress cycle on a valve material at `temperature`, K. Hot strength scales the S–N line as it scales UTS. */
export function fatigueSite(
  material: ValveMaterial,
  temperature: number,
  place: { id: string; where: string; maximum: number; minimum: number; reduction: number },
): FatigueSite {
  const ultimate = valueAt(material.ultimate, temperature);
  const hotShare = ultimate / valueAt(material.ultimate, ROOM);
  const amplitude = equivalentAmplitude(place.maximum, place.minimum, ultimate);
  const cycles = Number.isFinite(amplitude)
    ? fatigueCycles(material.fatigue, amplitude / hotShare, place.reduction)
    : 1;
  return { ...place, amplitude, hotShare, cycles };
}

/** Amplitude, Pa, that half of the valves bear for `cycles` at this site. */
export function allowedAmplitude(material: ValveMaterial, site: FatigueSite, cycles: number): number {
  return site.hotShare * fatigueStrength(material.fatigue, cycles, site.reduction);
}

/** Slope of the S–N line at the site's own life. */
export function siteSlope(material: ValveMaterial, site: FatigueSite): number {
  return slopeAt(material.fatigue, site.cycles, site.reduction);
}

/** The site that fails first. */
export function weakestSite(sites: readonly FatigueSite[]): FatigueSite {
  return sites.reduce((worst, site) => (site.cycles < worst.cycles ? site : worst));
}
