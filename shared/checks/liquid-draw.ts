import { vaporiserDuty } from '../supply/liquid-draw.ts';
import { isCylinder } from './fuel-line.ts';
import { atLeast, type CheckRule, notApplicable, notComputed } from './rule.ts';
import { celsius, kilowatts, perHour } from './say.ts';

/** Superheat that keeps droplets out of the regulator, K. Common practice, no source. */
const SUPERHEAT = 20;

export const liquidDraw: CheckRule = {
  id: 'liquid-draw',
  title: 'Heat for the vaporiser',
  source: 'first law; latent heat 374.9 kJ/kg at 0 °C (CoolProp) with Watson’s rule',
  binding: false,
  judge({ engine, brief, running, caution }) {
    const { supply } = brief;
    if (!isCylinder(supply) || supply.kind !== 'cylinder-liquid')
      return notApplicable('Fuel is not drawn as a liquid.');
    if (running === null) return notApplicable('The engine does not run.');
    const ambient = engine.site.temperature;
    const need = vaporiserDuty(running.fuelFlow, ambient, ambient + SUPERHEAT);
    const found = `${perHour(running.fuelFlow)} of liquid need ${kilowatts(need)} to boil and reach ${celsius(ambient + SUPERHEAT)}`;
    if (supply.vaporiserDuty === null) return notComputed(`${found}; the duty of the vaporiser is not stated.`);
    const has = `the coil gives ${kilowatts(supply.vaporiserDuty)}`;
    return atLeast(
      { value: supply.vaporiserDuty, limit: need, unit: 'W', cautionMargin: caution },
      {
        pass: `${found}; ${has}.`,
        caution: `${found}; ${has}: a few more turns in the hot stream make it sure.`,
        fail: `${found}; ${has}: liquid reaches the regulator; wind ${(need / supply.vaporiserDuty).toFixed(1)} times the coil.`,
      },
    );
  },
};
