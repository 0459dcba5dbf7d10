import { NOISE_UNCERTAINTY } from '../noise/engine-noise.ts';
import { distanceFor, levelAt } from '../noise/monopole.ts';
import { DOUBLE_PROTECTION, exposureMinutes, levelForMinutes } from '../noise/noise-dose.ts';
import { minutesADay } from './noise-stand-off.ts';
import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { decibels, duration, metres } from './say.ts';

export const noiseExposure: CheckRule = {
  id: 'noise-exposure',
  title: 'Noise at the operator',
  source:
    'NIOSH publication 98-126: 85 dB(A) for 8 h, half the time for each 3 dB; muffs over plugs about 27 dB (from memory, medium)',
  binding: false,
  judge({ brief, running, levelAtOneMetre, endurance, caution }) {
    if (running === null) return notApplicable('The engine does not run.');
    const { operatorDistance, maxExposureMinutes } = brief.limits;
    const level = levelAt(levelAtOneMetre(), operatorDistance);
    const value = exposureMinutes(level - DOUBLE_PROTECTION) * 60;
    const bare = exposureMinutes(level) * 60;
    const limit = 60 * (maxExposureMinutes ?? minutesADay(endurance));
    const enough = distanceFor(levelAtOneMetre(), levelForMinutes(limit / 60) + DOUBLE_PROTECTION);
    const found = `About ${decibels(level)} ± ${NOISE_UNCERTAINTY} at ${metres(operatorDistance)}: ${allowed(bare)} a day with bare ears, ${allowed(value)} with muffs over plugs; ${duration(limit)} is planned`;
    return atLeast(
      { value, limit, unit: 's', cautionMargin: Math.max(caution, 3) },
      {
        pass: `${found}. Always wear both.`,
        caution: `${found}: wear both, and keep runs short.`,
        fail: `${found}: stand ${metres(enough)} off, run by remote control, or run shorter.`,
      },
    );
  },
};

/** Times below a second are no time for a person. */
function allowed(seconds: number): string {
  return seconds < 1 ? 'no time' : duration(seconds);
}
