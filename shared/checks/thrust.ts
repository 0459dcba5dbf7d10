import { normalChance } from './chance.ts';
import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { newtons, percent } from './say.ts';

/** Relative standard error of a computed thrust, from the comparison with published engines (README). A judgement. */
const MODEL_ERROR = 0.15;

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
    const chance = normalChance((value / limit - 1) / MODEL_ERROR);
    const found = `It gives ${newtons(value)}; ${newtons(limit)} is wanted, which the model's error of ± ${percent(MODEL_ERROR)} alone makes ${sure(chance)} sure`;
    return atLeast(
      { value, limit, unit: 'N', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: it is only ${percent(value / limit - 1)} over, so scale every diameter by ${scale(value, limit * (1 + caution))} to be sure.`,
        fail: `${found}: it is ${percent(1 - value / limit)} short, so scale every diameter by ${scale(value, limit)}${engine.augmenter === null ? ', or fit an augmenter' : ''}.`,
      },
    );
  },
};

/** Thrust goes as area, so diameters go as its square root. */
function scale(value: number, wanted: number): string {
  return Math.sqrt(wanted / Math.max(value, 1e-9)).toFixed(2);
}

/** Nothing about an engine is certain. */
function sure(chance: number): string {
  if (chance > 0.99) return 'over 99 %';
  return chance < 0.01 ? 'under 1 %' : percent(chance);
}
