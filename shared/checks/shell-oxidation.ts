import { betterSheet } from './better-sheet.ts';
import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { celsius } from './say.ts';

const ROOM = 293.15;

export const shellOxidation: CheckRule = {
  id: 'shell-oxidation',
  title: 'Scaling limit of the sheet',
  source:
    'scaling temperatures in air for intermittent service: ASM (304 and 321 870 °C, 310 1035 °C; low-carbon steel 480–540 °C)',
  binding: false,
  judge(facts) {
    const { running, hottest, sheet, caution } = facts;
    if (running === null) return notApplicable('The engine does not run.');
    const value = hottest();
    const limit = sheet.scalingIntermittent;
    const cure = betterSheet(
      facts,
      (other) => other.overScalingLimit < 0,
      (other) => `${celsius(value - other.overScalingLimit)}`,
    );
    const found = `The hottest wall is ${celsius(value)}; ${sheet.name} with cooling between runs scales above ${celsius(limit)}`;
    const judged = atMost(
      { value: value - ROOM, limit: limit - ROOM, unit: 'K', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: close; ${cure}.`,
        fail: `${found}: it flakes from run to run; ${cure}.`,
      },
    );
    return { ...judged, value, limit };
  },
};
