/** Shared by the checks of one stress site of a valve. */
import { allowedAmplitude } from '../durability/fatigue-site.ts';
import { VALVE_MATERIALS } from '../durability/valve-materials.ts';
import type { Facts } from './facts.ts';
import { runningOf } from './facts.ts';
import { atMost, type Judgement, notApplicable } from './rule.ts';
import { duration, MPa, percent, sentenceCase } from './say.ts';

/** Reversed amplitude at a site against what half of the valves bear for the endurance. */
export function judgeSite(facts: Facts, kind: 'reed' | 'poppet', siteId: string, cure: string): Judgement {
  const { engine, running, endurance, caution } = facts;
  if (engine.intake.kind !== kind)
    return notApplicable(kind === 'reed' ? 'There are no petals.' : 'There are no poppets.');
  if (running === null) return notApplicable('The engine does not run.');
  const site = facts.life().sites.find((s) => s.id === siteId)!;
  const material = VALVE_MATERIALS[engine.intake.material];
  const limit = allowedAmplitude(material, site, endurance * runningOf(facts).frequency);
  const found = `${MPa(site.amplitude)} (as a fully reversed stress) ${site.where}; ${material.name} bears ${MPa(limit)} for ${duration(endurance)}`;
  return atMost(
    { value: site.amplitude, limit, unit: 'Pa', cautionMargin: caution },
    {
      pass: `${sentenceCase(found)}.`,
      caution: `${sentenceCase(found)}: only ${percent(1 - site.amplitude / limit)} is left; ${cure}.`,
      fail: `${sentenceCase(found)}: it cracks there first; bring it down by ${percent(1 - limit / site.amplitude)}: ${cure}.`,
    },
  );
}
