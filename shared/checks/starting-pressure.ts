import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { bar, kPa } from './say.ts';
import { HOSE_LOSS } from './starting-supply.ts';

export const startingPressure: CheckRule = {
  id: 'starting-pressure',
  title: 'Pressure of starting air',
  source: 'the start that worked in the gas-dynamic model',
  binding: false,
  judge({ start, brief, caution }) {
    if (start === null) return notApplicable('No start worked.');
    const { blower, tank } = brief.startingAir;
    const need = `The start took ${kPa(start.airPressure)} at the intake`;
    if (blower === null && tank === null) return notApplicable(`${need}; no blower or tank is stated.`);
    const value = Math.max(blower?.pressure ?? 0, (tank?.pressure ?? 0) - HOSE_LOSS, 0);
    return atLeast(
      { value, limit: start.airPressure, unit: 'Pa', cautionMargin: caution },
      {
        pass: `${need}; ${kPa(value)} are there.`,
        caution: `${need}; ${kPa(value)} are there, just enough: have ${kPa(start.airPressure * (1 + caution))} to be sure.`,
        fail: `${need}; only ${kPa(value)} are there: use compressed air at ${bar(start.airPressure + HOSE_LOSS)} or more through a nozzle aimed into the intake.`,
      },
    );
  },
};
