import { ratingAt } from '../supply/carburettor.ts';
import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { figure, kPa, litresPerSecond } from './say.ts';

export const carburettorRating: CheckRule = {
  id: 'carburettor-rating',
  title: 'Air rating of the carburettor',
  source: 'published convention: one and two barrels at 3.0 inHg, four at 1.5 inHg; Bernoulli',
  binding: false,
  judge({ brief, running, airDensity, caution }) {
    const { supply } = brief;
    if (supply?.kind !== 'carburettor') return notApplicable('There is no carburettor.');
    if (running === null) return notApplicable('The engine does not run.');
    const peak = running.peakAirFlow / airDensity;
    const mean = running.airFlow / airDensity;
    const half = ratingAt(supply.ratedFlow, supply.ratingDepression, supply.ratingDepression / 2);
    const found = `Air pulses to ${litresPerSecond(peak)} (mean ${litresPerSecond(mean)}); the carburettor is rated ${litresPerSecond(supply.ratedFlow)} at ${kPa(supply.ratingDepression)}, ${litresPerSecond(half)} at half that`;
    return atLeast(
      { value: supply.ratedFlow, limit: peak, unit: 'm³/s', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: close; take ${figure((peak * (1 + caution)) / supply.ratedFlow, 2)} times the rating, or put a plenum behind it.`,
        fail: `${found}: it chokes the pulses; take ${figure(peak / supply.ratedFlow, 2)} times the rating, several carburettors, or a plenum behind it.`,
      },
    );
  },
};
