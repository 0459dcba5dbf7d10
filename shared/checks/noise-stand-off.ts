import { NOISE_UNCERTAINTY } from '../noise/engine-noise.ts';
import { distanceFor, levelAt } from '../noise/monopole.ts';
import { levelForMinutes } from '../noise/noise-dose.ts';
import { atLeast, type CheckRule, notApplicable, noWorseThanCaution } from './rule.ts';
import { decibels, duration, metres } from './say.ts';

/** Told to the neighbours, m. */
const DISTANCES = [10, 30, 100, 300];

/** A longer run is shared between people: nobody listens for more than a working day. */
export function minutesADay(endurance: number): number {
  return Math.min(endurance / 60, 480);
}

/** Distance at which bare ears bear one run a day. */
export function standOff(levelAtOneMetre: number, endurance: number): number {
  return distanceFor(levelAtOneMetre, levelForMinutes(minutesADay(endurance)));
}

export const noiseStandOff: CheckRule = {
  id: 'noise-stand-off',
  title: 'Distance for people without ear protection',
  source: 'NIOSH publication 98-126; −6 dB for each doubling of distance over open ground',
  binding: false,
  judge({ brief, running, levelAtOneMetre, endurance, caution }) {
    if (running === null) return notApplicable('The engine does not run.');
    const limit = standOff(levelAtOneMetre(), endurance);
    const value = brief.limits.operatorDistance;
    const byDistance = DISTANCES.map((d) => `${decibels(levelAt(levelAtOneMetre(), d))} at ${metres(d)}`).join(', ');
    const found = `About ${byDistance}, ± ${NOISE_UNCERTAINTY}. Bystanders without protection keep ${metres(limit)} away for ${duration(minutesADay(endurance) * 60)} a day (${decibels(levelForMinutes(minutesADay(endurance)))} there)`;
    return noWorseThanCaution(
      atLeast(
        { value, limit, unit: 'm', cautionMargin: caution },
        {
          pass: `${found}; the operator's place is farther.`,
          caution: `${found}: nobody comes nearer with bare ears, so keep them away.`,
          fail: `${found}, ${metres(limit - value)} behind the operator: keep everyone with bare ears beyond that, warn the neighbours, and wear both muffs and plugs nearer.`,
        },
      ),
    );
  },
};
