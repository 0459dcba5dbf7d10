import { VALVE_MATERIALS } from '../durability/valve-materials.ts';
import { archardVolume, DRY_STEEL_WEAR } from '../durability/wear.ts';
import { atMost, type CheckRule, notApplicable, noWorseThanCaution } from './rule.ts';
import { duration, mm } from './say.ts';

const GRAVITY = 9.81;
/** Side load on the guide over weight: tilt and uneven flow. Common practice, no source. */
const SIDE_LOAD = 3;
/** Clearance that may open before the head lands crooked, over stem diameter. Common practice, no source. */
const CLEARANCE = 0.02;

export const poppetGuideWear: CheckRule = {
  id: 'poppet-guide-wear',
  title: 'Wear of the stem guide',
  source: 'Archard, J. Appl. Phys. 24 (1953) 981; dry steel coefficient from Rabinowicz (from memory, medium)',
  binding: false,
  judge({ engine, running, endurance, caution }) {
    const { intake } = engine;
    if (intake.kind !== 'poppet') return notApplicable('There are no poppets.');
    if (running?.valve == null) return notApplicable('The engine does not run.');
    const distance = 2 * running.valve.peakLift * running.frequency * endurance;
    const volume = archardVolume(
      DRY_STEEL_WEAR,
      SIDE_LOAD * intake.mass * GRAVITY,
      distance,
      VALVE_MATERIALS[intake.material].hardness,
    );
    // Worn over half the girth of a guide four stem diameters long.
    const value = volume / (2 * Math.PI * intake.stemDiameter ** 2);
    const limit = CLEARANCE * intake.stemDiameter;
    const found = `Dry guides open by about ${mm(value)} in ${duration(endurance)}; ${mm(limit)} is where heads land crooked`;
    return noWorseThanCaution(
      atMost(
        { value, limit, unit: 'm', cautionMargin: Math.max(caution, 0.5) },
        {
          pass: `${found}.`,
          caution: `${found}: look at the guides after each run and bush them in bronze or cast iron.`,
          fail: `${found}: bush them in bronze or cast iron with graphite, lighten the valve or shorten its lift.`,
        },
      ),
    );
  },
};
