import { judgeWish } from './envelope.ts';
import { type CheckRule, notApplicable } from './rule.ts';
import { tsfc as say } from './say.ts';

export const tsfc: CheckRule = {
  id: 'tsfc',
  title: 'Fuel per thrust',
  source: 'the brief, against the gas-dynamic model',
  binding: true,
  judge({ engine, brief, running }) {
    if (running === null) return notApplicable('The engine does not run.');
    return judgeWish(
      brief.wanted.maxTsfc,
      () => running.tsfc,
      'kg/(N s)',
      say,
      'fuel per thrust',
      () => `lean it towards the leanest mixture that holds${engine.augmenter === null ? ', or fit an augmenter' : ''}`,
    );
  },
};
