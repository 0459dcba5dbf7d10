import { WELDED_STEM_FACTOR } from '../durability/fatigue-factors.ts';
import { weakestSite } from '../durability/fatigue-site.ts';
import { atLeast, type CheckRule, notApplicable, noWorseThanCaution } from './rule.ts';
import { duration } from './say.ts';

export const poppetWeld: CheckRule = {
  id: 'poppet-weld',
  title: 'Welded joint of stem and head',
  source:
    'joint factor 0.5: common practice, no source (EN 1993-1-9 detail categories give 0.7 for ground butt welds in mild steel)',
  binding: false,
  judge({ engine, running, life, endurance }) {
    if (engine.intake.kind !== 'poppet') return notApplicable('There are no poppets.');
    if (engine.intake.stemJoint !== 'welded') return notApplicable('The valves are in one piece.');
    if (running === null) return notApplicable('The engine does not run.');
    const atWeld = life().sites.filter((s) => s.id !== 'pressure');
    const seconds = weakestSite(atWeld).cycles / running.frequency;
    const found = `Welded stems keep ${WELDED_STEM_FACTOR} of their fatigue strength and last about ${duration(seconds)} at the joint`;
    return noWorseThanCaution(
      atLeast(
        { value: seconds, limit: endurance, unit: 's', cautionMargin: 9 },
        {
          pass: `${found}, over ten times what is asked.`,
          caution: `${found}: stress-relieve and grind the weld, check it for cracks after each run, or turn the valve in one piece.`,
          fail: `${found}, less than the ${duration(endurance)} asked: turn the valve in one piece.`,
        },
      ),
    );
  },
};
