import { effectiveArea, flowLoss, pulsatingDepression } from '../supply/carburettor.ts';
import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { kPa, litresPerSecond, percent } from './say.ts';

/** Loss of air that is still worth a carburettor. Common practice, no source. */
const BEARABLE_LOSS = 0.1;

export const carburettorLoss: CheckRule = {
  id: 'carburettor-loss',
  title: 'Air lost in the carburettor',
  source: 'Bernoulli in series with the valve’s suction, over the computed intake flow',
  binding: false,
  judge({ brief, running, airDensity, caution }) {
    const { supply } = brief;
    if (supply?.kind !== 'carburettor') return notApplicable('There is no carburettor.');
    if (running === null) return notApplicable('The engine does not run.');
    const area = effectiveArea(supply.ratedFlow, supply.ratingDepression, airDensity);
    const drop = pulsatingDepression(running.traces.intakeFlow, area, airDensity);
    const value = flowLoss(drop.mean, running.meanSuction);
    const smooth = flowLoss(drop.smoothed, running.meanSuction);
    // The drop goes as the inverse square of the rating.
    const bearable = running.meanSuction * ((1 - BEARABLE_LOSS) ** -2 - 1);
    const enough = supply.ratedFlow * Math.sqrt(drop.mean / bearable);
    const found = `For the whole flow the carburettor would need ${kPa(drop.mean)} on top of the ${kPa(running.meanSuction)} of suction, so it costs ${percent(value)} of the air and thrust (${percent(smooth)} behind a large plenum)`;
    return atMost(
      { value, limit: BEARABLE_LOSS, unit: '', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: a plenum or a larger one saves that.`,
        fail: `${found}: take one rated ${litresPerSecond(enough)}, put a plenum behind it, or inject the fuel.`,
      },
    );
  },
};
