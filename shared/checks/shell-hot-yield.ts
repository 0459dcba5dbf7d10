import { hoopStress } from '../durability/hoop-stress.ts';
import { valueAt } from '../durability/property-table.ts';
import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { celsius, MPa, percent } from './say.ts';

export const shellHotYield: CheckRule = {
  id: 'shell-hot-yield',
  title: 'Shell stress against hot yield',
  source: 'thin-shell hoop stress; EN 1993-1-2 table 3.1 for low-carbon steel, stainless design data (ASM, NiDI 9004)',
  binding: true,
  judge({ engine, running, sheet, brief, caution }) {
    if (running === null) return notApplicable('The engine does not run.');
    const { profile } = running;
    let worst = { use: Number.NEGATIVE_INFINITY, stress: Number.NaN, temperature: Number.NaN };
    profile.wallTemperature.forEach((temperature, i) => {
      const stress = hoopStress(
        Math.max(profile.peakPressure[i] - engine.site.pressure, 0),
        profile.diameter[i],
        engine.shell.thickness,
      );
      const use = stress / valueAt(sheet.yield, temperature);
      if (!(use <= worst.use)) worst = { use, stress, temperature };
    });
    const limit = brief.limits.maxShellUtilisation;
    const found = `${MPa(worst.stress)} of hoop stress at ${celsius(worst.temperature)} is ${percent(worst.use)} of the hot yield of ${sheet.name}; ${percent(limit)} is allowed`;
    return atMost(
      { value: worst.use, limit, unit: '', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: the next thicker gauge gives room.`,
        fail: `${found}: it bulges; take sheet ${(worst.use / limit).toFixed(1)} times as thick, or one that is stronger when hot.`,
      },
    );
  },
};
