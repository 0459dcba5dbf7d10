/**
 * The fixed set of starts that a verdict rests on: one failed start is no proof, so medium, strong and gentle air are tried.
 *
 * Pressures are what a leaf blower, a shop compressor's nozzle and a hand-held duster give at an intake (common practice, no
 * source). Durations are counted in acoustic periods, since what matters is how often the engine fires while air is given; they are
 * the longest: a start ends sooner when the engine has been lit for a while (see run.ts).
 */
import type { Section } from '../engine/engine.ts';
import type { StartAttempt } from './performance.ts';

const ATTEMPTS: readonly { pressure: number; periods: number }[] = [
  { pressure: 4000, periods: 10 },
  { pressure: 12000, periods: 10 },
  { pressure: 1500, periods: 16 },
];
/** Without valves that strong air could hold open, gentle air is left out: of 400 random engines that run it saves one. */
const WITHOUT_VALVES = 2;

/** Mean sound speed of hot gas over the whole duct, m/s; only sets time scales. */
const HOT_SOUND_SPEED = 650;

/** Rough acoustic period of the duct, s: four lengths for a closed head, two and a half for two open ends. */
export function acousticPeriod(sections: readonly Section[], closedHead: boolean): number {
  const length = sections.reduce((sum, s) => sum + s.length, 0);
  return ((closedHead ? 4 : 2.5) * length) / HOT_SOUND_SPEED;
}

/** The starts to try, in order; two for an engine without valves, whose head is open. */
export function startAttempts(sections: readonly Section[], closedHead: boolean): StartAttempt[] {
  const period = acousticPeriod(sections, closedHead);
  return ATTEMPTS.slice(0, closedHead ? ATTEMPTS.length : WITHOUT_VALVES).map((a) => ({
    airPressure: a.pressure,
    duration: a.periods * period,
  }));
}
