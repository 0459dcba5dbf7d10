import { vapourPressure } from '../supply/propane.ts';
import { isCylinder, leastCylinderPressure } from './fuel-line.ts';
import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { bar, celsius, perHour } from './say.ts';

export const fuelRegulator: CheckRule = {
  id: 'fuel-regulator',
  title: 'Regulator and cylinder pressure',
  source:
    'propane saturation pressure: Lemmon, McLinden & Wagner, J. Chem. Eng. Data 54 (2009) 3141; 10 % headroom common practice, no source',
  binding: false,
  judge({ engine, brief, running, caution }) {
    const { supply } = brief;
    if (!isCylinder(supply)) return notApplicable('Fuel does not come from a cylinder.');
    if (running === null) return notApplicable('The engine does not run.');
    const { pressure: air, temperature } = engine.site;
    const full = vapourPressure(temperature);
    const least = leastCylinderPressure(supply, engine, running);
    const inside = `the cylinder stands at ${bar(full - air)} gauge at ${celsius(temperature)}`;
    if (supply.regulatorPressure === null) {
      const cold = running.fuelFlow * (vapourPressure(temperature - 20) / full);
      return {
        verdict: 'caution',
        value: full - air,
        limit: least - air,
        unit: 'Pa',
        margin: (full - least) / (least - air),
        sentence: `Without a regulator the flow follows the cylinder's pressure: ${inside}, and once it has chilled by 20 K a jet set for ${perHour(running.fuelFlow)} gives only ${perHour(cold)}; fit a regulator.`,
      };
    }
    return atLeast(
      { value: full - air, limit: least - air, unit: 'Pa', cautionMargin: caution },
      {
        pass: `The regulator, set to ${bar(supply.regulatorPressure)}, has enough: ${inside}.`,
        caution: `The regulator, set to ${bar(supply.regulatorPressure)}, has little to spare: ${inside}; set it lower and drill the jet larger.`,
        fail: `The regulator cannot give ${bar(supply.regulatorPressure)}: ${inside}; set it below ${bar((full - air) / 1.2)} and drill the jet larger.`,
      },
    );
  },
};
