import { jetFor } from './fuel-line.ts';
import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { mm } from './say.ts';

/** Smallest hole that is drilled by hand and does not clog, m. Common practice, no source. */
const SMALLEST_DRILL = 0.4e-3;

export const fuelJet: CheckRule = {
  id: 'fuel-jet',
  title: 'Size of the fuel jet',
  source:
    'isentropic orifice flow (NACA Report 1135) with the Pitzer–Abbott compressibility; discharge 0.8 common practice, no source',
  binding: false,
  judge({ engine, brief, running, caution }) {
    const { supply } = brief;
    if (supply === null || supply.kind === 'carburettor') return notApplicable('No jet is fed under pressure.');
    if (running === null) return notApplicable('The engine does not run.');
    const value = jetFor(supply, engine, running);
    const found = `One jet of ${mm(value)}, or several of the same total area, passes the fuel`;
    return atLeast(
      { value, limit: SMALLEST_DRILL, unit: 'm', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: fit a filter and drill with care, or lower the pressure and drill larger.`,
        fail: `${found}: a hand drill makes ${mm(SMALLEST_DRILL)} at the least; lower the pressure and drill larger.`,
      },
    );
  },
};
