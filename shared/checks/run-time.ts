import { fuelAboard } from './fuel-line.ts';
import { atLeast, type CheckRule, notApplicable, noWorseThanCaution } from './rule.ts';
import { duration, kilograms, perHour } from './say.ts';

export const runTime: CheckRule = {
  id: 'run-time',
  title: 'Fuel on board for the run',
  source: 'mass balance',
  binding: true,
  judge({ brief, running, endurance, caution }) {
    const aboard = fuelAboard(brief.supply);
    if (aboard === null) return notApplicable('No fuel supply is stated.');
    if (running === null) return notApplicable('The engine does not run.');
    const value = aboard / running.fuelFlow;
    const found = `${kilograms(aboard)} of fuel last ${duration(value)} at ${perHour(running.fuelFlow)}; ${duration(endurance)} is asked`;
    const judged = atLeast(
      { value, limit: endurance, unit: 's', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: bring ${kilograms(endurance * running.fuelFlow * (1 + caution))} to be sure.`,
        fail: `${found}: bring ${kilograms(endurance * running.fuelFlow)}.`,
      },
    );
    return brief.wanted.endurance === null ? noWorseThanCaution(judged) : judged;
  },
};
