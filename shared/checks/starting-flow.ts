import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { duration, kPa, litresPerSecond } from './say.ts';
import { freeAirFlow, secondsOfTank } from './starting-supply.ts';

export const startingFlow: CheckRule = {
  id: 'starting-flow',
  title: 'Flow of starting air',
  source: 'the start that worked in the gas-dynamic model',
  binding: false,
  judge(facts) {
    const { start, brief, engine, caution } = facts;
    if (start === null) return notApplicable('No start worked.');
    const { blower, tank } = brief.startingAir;
    const limit = freeAirFlow(start.airFlow, engine.site);
    const need = `The start took ${litresPerSecond(limit)} of free air at ${kPa(start.airPressure)}`;
    if (blower === null && tank === null) return notApplicable(`${need}; no blower or tank is stated.`);
    const seconds = secondsOfTank(facts);
    const byTank = seconds !== null && seconds >= start.duration;
    const blows = blower !== null && blower.pressure >= start.airPressure ? blower.flow : 0;
    // A tank passes whatever its hose lets through; only its content is limited, which the tank check judges.
    const value = byTank ? Math.max(blows, 2 * limit) : Math.max(blows, tank?.delivery ?? 0);
    const weak =
      blower !== null && blows === 0
        ? `, since a blower of ${kPa(blower.pressure)} moves nothing against that pressure`
        : '';
    return atLeast(
      { value, limit, unit: 'm³/s', cautionMargin: caution },
      {
        pass: `${need}; ${byTank && blows < limit ? 'the tank gives that through a 10 mm hose or wider' : `the blower gives ${litresPerSecond(blows)}`}.`,
        caution: `${need}; the blower gives ${litresPerSecond(value)}, just enough: have ${litresPerSecond(limit * (1 + caution))} to be sure.`,
        fail: `${need}; only ${litresPerSecond(value)} are there${weak}: have a larger blower, or a tank that lasts ${duration(start.duration)}.`,
      },
    );
  },
};
