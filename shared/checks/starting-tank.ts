import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { duration, figure } from './say.ts';
import { secondsOfTank } from './starting-supply.ts';

/** Starts that one filling should allow. Common practice, no source. */
const TRIES = 3;
/** A hand on an air valve takes this long at least, s. Common practice, no source. */
const SHORTEST_TRY = 3;
/** Seconds that stand for "without limit" when the compressor keeps up. */
const FOR_EVER = 3600;

export const startingTank: CheckRule = {
  id: 'starting-tank',
  title: 'Seconds of starting air in the tank',
  source: 'adiabatic blowdown: m/m0 = (p/p0)^(1/γ)',
  binding: false,
  judge(facts) {
    const { start, caution } = facts;
    if (start === null) return notApplicable('No start worked.');
    const seconds = secondsOfTank(facts);
    if (seconds === null) return notApplicable('No tank is stated.');
    const value = Math.min(seconds, FOR_EVER);
    const limit = TRIES * Math.max(start.duration, SHORTEST_TRY);
    const found =
      seconds >= FOR_EVER
        ? 'The compressor keeps up with the start'
        : `The tank blows for ${duration(value)}; one start took ${duration(start.duration)}`;
    return atLeast(
      { value, limit, unit: 's', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}, about ${TRIES} tries from one filling: let it refill after each.`,
        fail: `${found}, which leaves fewer than ${TRIES} tries: take a tank ${figure(limit / Math.max(value, 0.01), 2)} times as large, or let it refill between tries.`,
      },
    );
  },
};
