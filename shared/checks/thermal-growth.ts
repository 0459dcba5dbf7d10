import type { SheetMaterial } from '../durability/sheet-materials.ts';
import { thermalGrowth } from '../durability/thermal-growth.ts';
import type { Engine } from '../engine/engine.ts';
import type { AxialProfile } from '../engine/performance.ts';
import { atMost, type CheckRule, notApplicable, noWorseThanCaution } from './rule.ts';
import { mm } from './say.ts';

/** A mount without a slide bears this much, m. Common practice, no source. */
const TOLERABLE = 0.5e-3;

export const thermalGrowthCheck: CheckRule = {
  id: 'thermal-growth',
  title: 'Growth of the hot shell',
  source: 'linear expansion Σ α ΔT L',
  binding: false,
  judge({ engine, running, sheet }) {
    if (running === null) return notApplicable('The engine does not run.');
    const value = engineGrowth(engine, running.profile, sheet);
    const found = `The shell grows ${mm(value)} from cold to running`;
    const cure = 'fix one saddle only, let the other slide, and leave this much at fuel and starting-air lines';
    return noWorseThanCaution(
      atMost(
        { value, limit: TOLERABLE, unit: 'm', cautionMargin: 0 },
        { pass: `${found}, which any mount bears.`, caution: `${found}: ${cure}.`, fail: `${found}: ${cure}.` },
      ),
    );
  },
};

/** Growth along the centreline, m. */
export function engineGrowth(engine: Engine, profile: AxialProfile, sheet: SheetMaterial): number {
  return thermalGrowth(sheet.expansion, cellLengths(profile), profile.wallTemperature, engine.site.temperature);
}

/** Length of each cell, m, from the centres of cells that fill the duct from 0. */
export function cellLengths(profile: AxialProfile): number[] {
  let start = 0;
  return profile.position.map((centre) => {
    const length = 2 * (centre - start);
    start += length;
    return length;
  });
}
