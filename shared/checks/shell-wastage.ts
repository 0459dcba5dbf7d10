import { WASTAGE_SHARE } from '../durability/shell-life.ts';
import { betterSheet } from './better-sheet.ts';
import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { duration, percent } from './say.ts';
import { serviceLife } from './service-life.ts';

/** Life of the wall against scale: must outlast one run, should outlast a season. */
export const shellWastage: CheckRule = {
  id: 'shell-wastage',
  title: 'Metal lost to scale',
  source:
    'cyclic oxidation tables (ASM Metals Handbook vol. 3), iron: Païdassi’s parabolic constant in Oxid. Met. 59 (2003) 433 (from memory, medium)',
  binding: true,
  judge(facts) {
    const { running, shell, endurance } = facts;
    if (running === null) return notApplicable('The engine does not run.');
    const value = shell().oxidation;
    const cure = (asked: number) =>
      betterSheet(
        facts,
        (sheet) => sheet.oxidationLife >= asked,
        (sheet) => duration(sheet.oxidationLife),
      );
    const found = `${percent(WASTAGE_SHARE)} of the wall turns to scale in ${duration(value)} of running`;
    const judged = atLeast(
      { value, limit: endurance, unit: 's', cautionMargin: 0 },
      {
        pass: `${found}.`,
        caution: `${found}.`,
        fail: `${found}, less than one run of ${duration(endurance)}: ${cure(endurance)}.`,
      },
    );
    const season = serviceLife(facts);
    return judged.verdict === 'pass' && value < season
      ? {
          ...judged,
          verdict: 'caution',
          sentence: `${found}, short of a season of ${duration(season)}: measure the wall now and then, or ${cure(season)}.`,
        }
      : judged;
  },
};
