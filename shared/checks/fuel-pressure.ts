import { criticalRatio } from '../supply/orifice.ts';
import { PROPANE } from '../supply/propane.ts';
import { backPressure, jetPressure } from './fuel-line.ts';
import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { bar } from './say.ts';

/** Liquid needs this drop to break into drops: in the intake, where air tears it, and in the chamber, Pa. Common practice, no source. */
const SPRAY_DROP = { intake: 0.8e5, chamber: 3e5 };

/** Pressure at the nozzle against the pressure that pulses behind it. */
export const fuelPressure: CheckRule = {
  id: 'injection-pressure',
  title: 'Pressure at the nozzle',
  source:
    'choking of the jet (NACA Report 1135) for gas; 0.8 bar (intake) or 3 bar (chamber) drop for liquid spray, common practice, no source',
  binding: false,
  judge({ engine, brief, running, caution }) {
    const { supply } = brief;
    if (supply === null || supply.kind === 'carburettor') return notApplicable('Fuel is not fed under pressure.');
    if (running === null) return notApplicable('The engine does not run.');
    const air = engine.site.pressure;
    const back = backPressure(engine, running);
    const peak = engine.feed.mode === 'premixed' ? air : running.peakPressure;
    const value = jetPressure(supply, engine) - air;
    const limit =
      (supply.fuel === 'propane'
        ? Math.max(back / criticalRatio(PROPANE.gamma), peak)
        : peak + SPRAY_DROP[engine.feed.mode === 'premixed' ? 'intake' : 'chamber']) - air;
    const found = `The nozzle has ${bar(value)} gauge; ${bar(limit)} keeps the flow from following the pulses (${bar(peak - air)} at their peak)`;
    return atLeast(
      { value, limit, unit: 'Pa', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: raise the pressure to ${bar(limit * (1 + caution))} to steady it.`,
        fail: `${found}: raise the pressure above that and drill the jet smaller.`,
      },
    );
  },
};
