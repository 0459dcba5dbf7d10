/** Engines from ranges far wider than sane, some of them with figures that no engine has. */
import { SHEET_MATERIAL_IDS, VALVE_MATERIAL_IDS } from '../../../shared/durability/material-ids.ts';
import type { Engine, Intake, Section } from '../../../shared/engine/engine.ts';
import { integerBelow, type Random } from '../../search/random.ts';

/** Share of the engines in which one figure is replaced by one that means nothing. */
const ABSURD_SHARE = 0.1;
const ABSURD = [0, -1, 1e-300, 1e300, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];

/** Between low and high, each decade as likely as the next. */
function logUniform(random: Random, low: number, high: number): number {
  return low * (high / low) ** random.uniform();
}

function pick<T>(random: Random, items: readonly T[]): T {
  return items[integerBelow(random, items.length)];
}

function sections(random: Random, valveless: boolean): Section[] {
  const roles: Section['role'][] = valveless ? ['intake', 'intake-cone'] : [];
  roles.push('chamber', 'chamber-cone');
  if (random.uniform() < 0.3) roles.push('tailpipe', 'bend');
  roles.push('tailpipe');
  if (random.uniform() < 0.5) roles.push('exit-flare');
  let diameter = logUniform(random, 0.005, 1);
  return roles.map((role): Section => {
    const start = random.uniform() < 0.05 ? logUniform(random, 0.005, 1) : diameter;
    diameter = role.includes('cone') || role === 'exit-flare' ? start * logUniform(random, 0.2, 5) : start;
    if (role !== 'bend')
      return { role, length: logUniform(random, 0.005, 10), startDiameter: start, endDiameter: diameter };
    const bend = { angle: Math.PI * random.uniform(), radius: start * logUniform(random, 0.3, 5) };
    return { role, length: bend.angle * bend.radius, startDiameter: start, endDiameter: diameter, bend };
  });
}

function intake(random: Random, kind: Intake['kind'], area: number): Intake {
  const material = pick(random, VALVE_MATERIAL_IDS);
  if (kind === 'valveless')
    return { kind, lip: pick(random, ['thin', 'flared'] as const), mouth: pick(random, ['aft', 'forward'] as const) };
  if (kind === 'reed') {
    const petals = 1 + integerBelow(random, 60);
    return {
      kind,
      petals,
      length: logUniform(random, 0.004, 0.2),
      width: logUniform(random, 0.002, 0.1),
      thickness: logUniform(random, 2e-5, 3e-3),
      material,
      stopLift: logUniform(random, 2e-4, 0.05),
      portArea: (area * logUniform(random, 0.02, 3)) / petals,
    };
  }
  const portDiameter = logUniform(random, 0.003, 0.3);
  return {
    kind,
    valves: 1 + integerBelow(random, 40),
    headDiameter: portDiameter * logUniform(random, 0.9, 2),
    portDiameter,
    lift: logUniform(random, 2e-4, 0.1),
    mass: logUniform(random, 1e-4, 5),
    stemDiameter: logUniform(random, 5e-4, 0.05),
    springMass: logUniform(random, 1e-5, 1),
    springRate: logUniform(random, 1, 1e6),
    preload: logUniform(random, 1e-3, 1e4),
    material,
    stemJoint: pick(random, ['one-piece', 'welded'] as const),
    axis: pick(random, ['horizontal', 'vertical'] as const),
  };
}

/** The same (random state, name), the same engine. */
export function randomEngine(random: Random, name: string): Engine {
  const kind = pick(random, ['reed', 'poppet', 'valveless'] as const);
  const duct = sections(random, kind === 'valveless');
  const head = duct[0].startDiameter;
  const engine: Engine = {
    name,
    sections: duct,
    intake: intake(random, kind, (Math.PI / 4) * head * head),
    feed: {
      fuel: pick(random, ['propane', 'petrol'] as const),
      mode: pick(random, ['premixed', 'steady-injection', 'timed-injection'] as const),
      equivalenceRatio: logUniform(random, 0.1, 10),
    },
    shell: { material: pick(random, SHEET_MATERIAL_IDS), thickness: logUniform(random, 1e-4, 0.02) },
    augmenter:
      random.uniform() < 0.3
        ? {
            diameter: logUniform(random, 0.01, 3),
            length: logUniform(random, 0.01, 10),
            gap: logUniform(random, 1e-3, 1),
            taper: logUniform(random, 0.5, 3),
          }
        : null,
    site: { pressure: logUniform(random, 2e4, 2e5), temperature: 200 + 150 * random.uniform() },
  };
  if (random.uniform() < ABSURD_SHARE) makeAbsurd(random, engine);
  return engine;
}

/** Replaces one number somewhere in the engine. */
function makeAbsurd(random: Random, engine: Engine): void {
  const places: { owner: Record<string, unknown>; key: string }[] = [];
  const visit = (value: unknown) => {
    if (value === null || typeof value !== 'object') return;
    const owner = value as Record<string, unknown>;
    for (const key of Object.keys(owner)) {
      if (typeof owner[key] === 'number') places.push({ owner, key });
      else visit(owner[key]);
    }
  };
  visit(engine);
  const { owner, key } = pick(random, places);
  owner[key] = pick(random, ABSURD);
}
