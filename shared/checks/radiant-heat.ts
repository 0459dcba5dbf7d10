import { BEARABLE_FLUX, broadsideFlux } from '../noise/heat-radiation.ts';
import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { figure, metres } from './say.ts';
import { cellLengths } from './thermal-growth.ts';

export const radiantHeat: CheckRule = {
  id: 'radiant-heat',
  title: 'Heat thrown at the operator',
  source: 'Stefan–Boltzmann, side of a cylinder; 1.58 kW/m² bearable for long, API Standard 521',
  binding: false,
  judge({ brief, running, sheet, engine, caution }) {
    if (running === null) return notApplicable('The engine does not run.');
    const distance = brief.limits.operatorDistance;
    const { profile } = running;
    const value = broadsideFlux(
      profile.wallTemperature,
      profile.diameter,
      cellLengths(profile),
      sheet.emissivity,
      engine.site.temperature,
      distance,
    );
    const safe = distance * Math.sqrt(Math.max(value, 0) / BEARABLE_FLUX);
    const found = `The glowing shell throws ${figure(value / 1e3)} kW/m² at ${metres(distance)}; skin bears ${figure(BEARABLE_FLUX / 1e3)} kW/m² for long`;
    return atMost(
      { value, limit: BEARABLE_FLUX, unit: 'W/m²', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: wear long sleeves.`,
        fail: `${found}: stay beyond ${metres(safe)} or put up a screen.`,
      },
    );
  },
};
