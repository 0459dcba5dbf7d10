import { collapsePressure } from '../durability/buckling.ts';
import { valueAt } from '../durability/property-table.ts';
import { sectionAt } from '../durability/wall-stress.ts';
import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { celsius, kPa, mm } from './say.ts';

export const shellExternalPressure: CheckRule = {
  id: 'shell-external-pressure',
  title: 'Shell under suction',
  source:
    'Windenburg & Trilling, Trans. ASME 56 (1934) 819; long tubes Roark table 15.2; knock-down 0.8 for out-of-roundness',
  binding: true,
  judge({ engine, running, sheet, caution }) {
    if (running === null) return notApplicable('The engine does not run.');
    const { profile } = running;
    let worst = { use: Number.NEGATIVE_INFINITY, suction: Number.NaN, collapse: Number.NaN, temperature: Number.NaN };
    profile.wallTemperature.forEach((temperature, i) => {
      // The ends of a section, welded to another shape, count as stiff.
      const span = sectionAt(engine, profile.position[i]).length;
      const modulus = valueAt(sheet.modulus, temperature);
      const collapse = collapsePressure(modulus, sheet.poisson, engine.shell.thickness, profile.diameter[i], span);
      const suction = Math.max(engine.site.pressure - profile.lowestPressure[i], 0);
      if (!(suction / collapse <= worst.use)) worst = { use: suction / collapse, suction, collapse, temperature };
    });
    const found = `Suction reaches ${kPa(worst.suction)}; the wall there, at ${celsius(worst.temperature)}, caves in at about ${kPa(worst.collapse)}`;
    // Collapse goes as 1/span and as thickness to the power 2.5 at least.
    return atMost(
      { value: worst.suction, limit: worst.collapse, unit: 'Pa', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: weld a stiffening ring round the middle of that section.`,
        fail: `${found}: weld ${Math.max(Math.ceil(worst.use) - 1, 1)} stiffening ring(s) round that section, or take sheet of ${mm(engine.shell.thickness * worst.use ** 0.4)}.`,
      },
    );
  },
};
