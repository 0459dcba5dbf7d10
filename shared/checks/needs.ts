/** What the engine needs from its supply, for the supply page of the report. SI values with labels. */
import { greatestDraw } from '../supply/cylinder-evaporation.ts';
import { cylinderGeometry } from '../supply/cylinder-geometry.ts';
import { vaporiserDuty } from '../supply/liquid-draw.ts';
import type { Assessment } from './check.ts';
import type { Facts } from './facts.ts';
import { isCylinder, jetFor, jetPressure, leastCylinderPressure } from './fuel-line.ts';
import { standOff } from './noise-stand-off.ts';
import { freeAirFlow, secondsOfTank } from './starting-supply.ts';
import { engineGrowth } from './thermal-growth.ts';

type Need = Assessment['needs'][number];

/** Cylinder used when none is stated, kg: the size that most yards refill. */
const COMMON_CYLINDER = 45;
const SUPERHEAT = 20;

/** Empty when the engine does not run. Figures that are not finite are left out. */
export function needsOf(facts: Facts): Need[] {
  const { running, engine, brief, endurance, start, airDensity } = facts;
  if (running === null) return [];
  const needs: Need[] = [];
  const add = (id: string, label: string, unit: string, note: string, value: () => number) => {
    try {
      const found = value();
      if (Number.isFinite(found)) needs.push({ id, label, value: found, unit, note });
    } catch {
      // A need that cannot be computed is left out; the check of the same name says why.
    }
  };
  const { supply } = brief;
  const { fuelFlow } = running;
  add('fuel-flow', 'Fuel flow', 'kg/s', `${engine.feed.fuel}, ${engine.feed.mode}`, () => fuelFlow);
  add('fuel-for-run', 'Fuel for one run', 'kg', 'flow times endurance', () => fuelFlow * endurance);
  add('air-flow', 'Air flow, mean', 'm³/s', 'free air', () => running.airFlow / airDensity);
  add(
    'air-flow-peak',
    'Air flow at the peak of a pulse',
    'm³/s',
    'what a carburettor without plenum sees',
    () => running.peakAirFlow / airDensity,
  );
  if (engine.feed.fuel === 'propane') {
    const ambient = engine.site.temperature;
    add(
      'cylinders-vapour',
      'Cylinders for vapour draw',
      '',
      'to hold the flow for one run at this air temperature',
      () => {
        const stated = isCylinder(supply) ? supply : null;
        const capacity = stated?.capacity ?? COMMON_CYLINDER;
        const least = stated ? leastCylinderPressure(stated, engine, running) : 2.5 * engine.site.pressure;
        return Math.ceil(
          fuelFlow / greatestDraw(cylinderGeometry(capacity), capacity, stated?.fill ?? 0.8, ambient, endurance, least),
        );
      },
    );
    add('vaporiser-duty', 'Vaporiser duty for liquid draw', 'W', 'boiling and 20 K of superheat', () =>
      vaporiserDuty(fuelFlow, ambient, ambient + SUPERHEAT),
    );
  }
  if (supply !== null && supply.kind !== 'carburettor') {
    add(
      'jet-pressure',
      'Pressure ahead of the jet',
      'Pa',
      'gauge',
      () => jetPressure(supply, engine) - engine.site.pressure,
    );
    add(
      'jet-diameter',
      'Fuel jet, one hole',
      'm',
      'drilled and deburred, discharge 0.8; several holes share the area',
      () => jetFor(supply, engine, running),
    );
  }
  if (start !== null) {
    add('starting-pressure', 'Starting air pressure', 'Pa', 'gauge, at the intake', () => start.airPressure);
    add('starting-flow', 'Starting air flow', 'm³/s', 'free air', () => freeAirFlow(start.airFlow, engine.site));
    add('starting-time', 'Starting air and spark', 's', 'then both off', () => start.duration);
    add(
      'tank-seconds',
      'Seconds of air in the tank',
      's',
      'adiabatic blowdown',
      () => secondsOfTank(facts) ?? Number.NaN,
    );
  }
  add('thermal-growth', 'Growth of the hot shell', 'm', 'leave it at the sliding saddle and at every line', () =>
    engineGrowth(engine, running.profile, facts.sheet),
  );
  add('stand-off', 'Distance for bare ears', 'm', 'one run a day, NIOSH dose', () =>
    standOff(facts.levelAtOneMetre(), endurance),
  );
  return needs;
}
