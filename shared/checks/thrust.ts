import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { newtons, percent } from './say.ts';

export const thrust: CheckRule = {
  id: 'thrust',
  title: 'Thrust wanted',
  source: 'the brief, against the gas-dynamic model',
  binding: true,
  judge({ engine, brief, running, caution }) {
    const limit = brief.wanted.thrust;
    if (limit === null) return notApplicable('No thrust is asked for.');
    if (running === null) return notApplicable('The engine does not run.');
    const value = running.thrust;
    const found = `It gives ${newtons(value)}; ${newtons(limit)} is wanted`;
    return atLeast(
      { value, limit, unit: 'N', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}, ${percent(value / limit - 1)} over and within the error of the model: scale every diameter by ${scale(value, limit * (1 + caution))} to be sure.`,
        fail: `${found}, ${percent(1 - value / limit)} short: scale every diameter by ${scale(value, limit)}${engine.augmenter === null ? ', or fit an augmenter' : ''}.`,
      },
    );
  },
};

/** Thrust goes as area, so diameters go as its square root. */
function scale(value: number, wanted: number): string {
  return Math.sqrt(wanted / Math.max(value, 1e-9)).toFixed(2);
}
