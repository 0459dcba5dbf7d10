import { steepestCone } from '../fabrication/rollability.ts';
import { atMost, type CheckRule, notApplicable } from './rule.ts';
import { degrees, mm } from './say.ts';

/** Half-angle above which a cone is spun or beaten rather than rolled, rad. Common practice, no source. */
const STEEPEST = (35 * Math.PI) / 180;

export const coneAngle: CheckRule = {
  id: 'cone-angle',
  title: 'Steepest cone',
  source: 'common practice, no source',
  binding: false,
  judge({ engine, caution }) {
    const steepest = steepestCone(engine);
    if (steepest === null) return notApplicable('There is no cone.');
    const found = `The ${steepest.section.role} has a half-angle of ${degrees(steepest.angle)}; above ${degrees(STEEPEST)} a cone no longer rolls`;
    return atMost(
      { value: steepest.angle, limit: STEEPEST, unit: 'rad', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: roll it in two halves.`,
        fail: `${found}: lengthen it to ${mm((steepest.section.length * Math.tan(steepest.angle)) / Math.tan(STEEPEST))}, or have it spun.`,
      },
    );
  },
};
