import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { newtons } from './say.ts';

export const thrust: CheckRule = {
  id: 'thrust',
  title: 'Thrust wanted',
  source: 'the brief, against the gas-dynamic model',
  binding: true,
  judge({ brief, running, caution }) {
    const limit = brief.wanted.thrust;
    if (limit === null) return notApplicable('No thrust is asked for.');
    if (running === null) return notApplicable('The engine does not run.');
    const value = running.thrust;
    const found = `It gives ${newtons(value)}; ${newtons(limit)} is wanted`;
    return atLeast(
      { value, limit, unit: 'N', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: within the error of the model, so build a little larger.`,
        fail: `${found}: scale every diameter by ${Math.sqrt(limit / Math.max(value, 1e-9)).toFixed(2)}, or fit an augmenter.`,
      },
    );
  },
};
