import { VALVE_MATERIALS } from '../durability/valve-materials.ts';
import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { celsius } from './say.ts';

/** Room temperature, K: margins of temperature are counted from here. */
const ROOM = 293.15;

export const valveTemperatureCheck: CheckRule = {
  id: 'valve-temperature',
  title: 'Valve temperature',
  source:
    'heat balance over the cycle (Newton’s law of cooling; Incropera & DeWitt flat plate); temper and oxide limits as tabled with the material',
  binding: false,
  judge({ engine, running, life, caution }) {
    if (engine.intake.kind === 'valveless') return notApplicable('There is no valve.');
    if (running === null) return notApplicable('The engine does not run.');
    const material = VALVE_MATERIALS[engine.intake.material];
    const value = life().temperature;
    const limit = material.temperatureLimit;
    const found = `The ${engine.intake.kind === 'reed' ? 'petals' : 'heads'} run at about ${celsius(value)}; ${material.name} keeps its strength to ${celsius(limit)}`;
    const judged = atMost(
      { value: value - ROOM, limit: limit - ROOM, unit: 'K', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: blow cold air through after each stop.`,
        fail: `${found}: they soften; take a hotter-rated material, more air through the valve or a longer chamber.`,
      },
    );
    return { ...judged, value, limit };
  },
};
