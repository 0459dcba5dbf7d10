import { greatestDraw } from '../supply/cylinder-evaporation.ts';
import { cylinderGeometry } from '../supply/cylinder-geometry.ts';
import type { Facts } from './facts.ts';
import { runningOf } from './facts.ts';
import { type Cylinder, isCylinder, leastCylinderPressure } from './fuel-line.ts';
import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { bar, celsius, duration, perHour } from './say.ts';

/** Flow that all cylinders together hold for the endurance, kg/s. */
function vapourFlow(facts: Facts, supply: Cylinder): number {
  const { engine, endurance } = facts;
  const least = leastCylinderPressure(supply, engine, runningOf(facts));
  const each = greatestDraw(
    cylinderGeometry(supply.capacity),
    supply.capacity,
    supply.fill,
    engine.site.temperature,
    endurance,
    least,
  );
  return supply.cylinders * each;
}

export const cylinderEvaporation: CheckRule = {
  id: 'cylinder-evaporation',
  title: 'Vapour that the cylinder can give',
  source:
    'heat balance of the liquid, fitted to draw tables in cylinder suppliers’ and generator makers’ manuals (100-lb cylinder)',
  binding: true,
  judge(facts) {
    const { brief, running, engine, endurance, caution } = facts;
    const { supply } = brief;
    if (!isCylinder(supply) || supply.kind !== 'cylinder-vapour')
      return notApplicable('Fuel is not drawn as vapour from a cylinder.');
    if (running === null) return notApplicable('The engine does not run.');
    const value = vapourFlow(facts, supply);
    const limit = running.fuelFlow;
    const least = leastCylinderPressure(supply, engine, running);
    const found = `${supply.cylinders} cylinder(s) at ${celsius(engine.site.temperature)} hold ${perHour(value)} for ${duration(endurance)} before the pressure falls to ${bar(least - engine.site.pressure)}; the engine burns ${perHour(limit)}`;
    return atLeast(
      { value, limit, unit: 'kg/s', cautionMargin: caution },
      {
        pass: `${found}.`,
        caution: `${found}: start with warm, full cylinders.`,
        fail: `${found}: the cylinder freezes; draw liquid through a vaporiser, couple ${Math.ceil((supply.cylinders * limit) / Math.max(value, 1e-9)) > 99 ? 'many more' : Math.ceil((supply.cylinders * limit) / Math.max(value, 1e-9))} cylinders, or lower the regulator.`,
      },
    );
  },
};
