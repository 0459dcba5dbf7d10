import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { figure } from './say.ts';

/** More fuel than this has no air to burn with inside the engine. Common practice, no source. */
const RICH = 1.2;

export const mixture: CheckRule = {
  id: 'mixture',
  title: 'Air for the fuel',
  source: 'stoichiometry: 15.68 kg of air for 1 kg of propane, 14.7 for petrol (fuel tables)',
  binding: false,
  judge({ running, caution }) {
    if (running === null) return notApplicable('The engine does not run.');
    const phi = running.equivalenceRatio;
    return atMost(
      { value: phi, limit: RICH, unit: '', cautionMargin: caution },
      {
        pass: `Fuel is ${figure(phi)} of what the air can burn.`,
        caution: `Fuel is ${figure(phi)} of what the air can burn: the rest leaves unburnt and still counts as used; lean it towards 1.`,
        fail: `Fuel is ${figure(phi)} of what the air can burn: it burns as a flame outside; lean it below ${RICH}.`,
      },
    );
  },
};
