import { valueAt } from '../durability/property-table.ts';
import { wallStress } from '../durability/wall-stress.ts';
import { betterSheet } from './better-sheet.ts';
import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { celsius, MPa, percent } from './say.ts';

export const shellHotYield: CheckRule = {
  id: 'shell-hot-yield',
  title: 'Shell stress against hot yield',
  source:
    'thin-shell hoop stress, by peak pressure or suction, cones over their cosine; EN 1993-1-2 table 3.1 for low-carbon steel, stainless design data (ASM, NiDI 9004)',
  binding: true,
  judge(facts) {
    const { engine, running, sheet, brief, caution } = facts;
    if (running === null) return notApplicable('The engine does not run.');
    const { profile } = running;
    let worst = { use: Number.NEGATIVE_INFINITY, stress: Number.NaN, temperature: Number.NaN };
    profile.wallTemperature.forEach((temperature, i) => {
      const stress = wallStress(engine, profile, i, engine.shell.thickness);
      const use = stress / valueAt(sheet.yield, temperature);
      if (!(use <= worst.use)) worst = { use, stress, temperature };
    });
    const limit = brief.limits.maxShellUtilisation;
    const cure = betterSheet(
      facts,
      (other) => other.yieldUse <= limit * (1 - caution),
      (other) => `${percent(other.yieldUse)}`,
    );
    const found = `${MPa(worst.stress)} of hoop stress at ${celsius(worst.temperature)} is ${percent(worst.use)} of the hot yield of ${sheet.name}; ${percent(limit)} is allowed`;
    return atMost(
      { value: worst.use, limit, unit: '', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: for more room ${cure}.`,
        fail: `${found}: it bulges; ${cure}, or sheet ${(worst.use / limit).toFixed(1)} times as thick.`,
      },
    );
  },
};
