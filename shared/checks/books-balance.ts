import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { percent } from './say.ts';

/** Allowed errors of the audits: mass and energy 0.1 %, the two ways to compute thrust 1 %. */
const MASS = 1e-3;
const ENERGY = 1e-3;
const THRUST = 1e-2;

export const booksBalance: CheckRule = {
  id: 'books-balance',
  title: 'Computed mass, energy and thrust balance',
  source: 'conservation laws; bounds of the model’s own audits',
  binding: false,
  judge({ running, caution }) {
    if (running === null) return notApplicable('The engine does not run.');
    const { massError, energyError, thrustError } = running.audits;
    const value = Math.max(Math.abs(massError) / MASS, Math.abs(energyError) / ENERGY, Math.abs(thrustError) / THRUST);
    const found = `mass ${percent(Math.abs(massError))}, energy ${percent(Math.abs(energyError))}, thrust ${percent(Math.abs(thrustError))}; ${percent(MASS)}, ${percent(ENERGY)} and ${percent(THRUST)} allowed`;
    return atMost(
      { value, limit: 1, unit: '', cautionMargin: caution },
      {
        pass: `The books balance (${found}).`,
        caution: `The books balance with little room (${found}): run it finer to be sure.`,
        fail: `The books do not balance (${found}): trust none of this engine's figures until a finer run closes them.`,
      },
    );
  },
};
