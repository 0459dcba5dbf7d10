import { collapsePressure } from '../durability/buckling.ts';
import { valueAt } from '../durability/property-table.ts';
import type { Engine } from '../engine/engine.ts';
import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { celsius, kPa } from './say.ts';

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
      const span = sectionLengthAt(engine, profile.position[i]);
      const modulus = valueAt(sheet.modulus, temperature);
      const collapse = collapsePressure(modulus, sheet.poisson, engine.shell.thickness, profile.diameter[i], span);
      const suction = Math.max(engine.site.pressure - profile.lowestPressure[i], 0);
      if (!(suction / collapse <= worst.use)) worst = { use: suction / collapse, suction, collapse, temperature };
    });
    const found = `Suction reaches ${kPa(worst.suction)}; the wall there, at ${celsius(worst.temperature)}, caves in at about ${kPa(worst.collapse)}`;
    return atMost(
      { value: worst.suction, limit: worst.collapse, unit: 'Pa', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: weld a stiffening ring round the middle of that section.`,
        fail: `${found}: weld stiffening rings on, or go to thicker sheet.`,
      },
    );
  },
};

/** Length of the section that holds a station, m: its ends count as stiff. */
function sectionLengthAt(engine: Engine, position: number): number {
  let end = 0;
  for (const section of engine.sections) {
    end += section.length;
    if (position <= end) return section.length;
  }
  return engine.sections[engine.sections.length - 1].length;
}
