import { distanceFor } from '../noise/monopole.ts';
import { levelForMinutes } from '../noise/noise-dose.ts';
import { atLeast, type CheckRule, notApplicable, noWorseThanCaution } from './rule.ts';
import { decibels, duration, metres } from './say.ts';

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
    const found = `Bystanders without protection keep ${metres(limit)} away for ${duration(minutesADay(endurance) * 60)} a day (${decibels(levelForMinutes(minutesADay(endurance)))} there)`;
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
