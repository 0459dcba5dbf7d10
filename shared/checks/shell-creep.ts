import { betterSheet } from './better-sheet.ts';
import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { duration } from './say.ts';
import { serviceLife } from './service-life.ts';

export const shellCreep: CheckRule = {
  id: 'shell-creep',
  title: 'Creep of the shell',
  source: 'Larson & Miller, Trans. ASME 74 (1952) 765, on 1000 h rupture stresses (ASM, NiDI 9004)',
  binding: false,
  judge(facts) {
    const { running, shell, caution } = facts;
    if (running === null) return notApplicable('The engine does not run.');
    const value = shell().creep;
    const limit = serviceLife(facts);
    const cure = betterSheet(
      facts,
      (sheet) => sheet.creepLife >= limit * (1 + caution),
      (sheet) => duration(sheet.creepLife),
    );
    return atLeast(
      { value, limit, unit: 's', cautionMargin: caution },
      {
        pass: `The hot shell would creep to rupture after ${duration(value)}; ${duration(limit)} is asked.`,
        caution: `The hot shell creeps to rupture after ${duration(value)}, just past the ${duration(limit)} asked: ${cure}.`,
        fail: `The hot shell creeps to rupture after ${duration(value)}, short of ${duration(limit)}: ${cure}.`,
      },
    );
  },
};
