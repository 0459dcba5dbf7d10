/**
 * The one door of this room: engine, performance and brief in, every judgement out.
 *
 *   CheckInput ──▶ Facts (each figure once, when asked for) ──▶ rules ──▶ checks
 *                                                          └──▶ life, size, mass, cost, noise, needs
 *
 * Never throws and never gives NaN or infinity: a check that cannot be computed says so and why.
 */
import { NOISE_UNCERTAINTY } from '../noise/engine-noise.ts';
import { levelAt } from '../noise/monopole.ts';
import { exposureMinutes } from '../noise/noise-dose.ts';
import type { Assessment, Band, Check, CheckInput, PartMass } from './check.ts';
import { type Facts, factsOf } from './facts.ts';
import { needsOf } from './needs.ts';
import { CHECK_RULES } from './registry.ts';
import { type CheckRule, type Judgement, notComputed } from './rule.ts';

export function assess(input: CheckInput): Assessment {
  const facts = factsOf(input);
  const life = facts.running === null ? null : orNull(() => facts.life());
  const { mass, parts } = weigh(facts);
  return {
    checks: CHECK_RULES.map((rule) => checkOf(rule, facts)),
    valveLife: life && finiteBand(life.band),
    valveLifeCycles: life && finiteBand(life.cycles),
    lifeLimiter: life && finiteBand(life.band) ? life.limiter : '',
    ...dimensions(facts),
    mass,
    cost: orNull(() => facts.cost().total),
    parts,
    noise: noiseOf(facts),
    needs: orNull(() => needsOf(facts)) ?? [],
  };
}

function checkOf(rule: CheckRule, facts: Facts): Check {
  const { id, title, source, binding } = rule;
  return { id, title, ...judge(rule, facts), source, binding };
}

function judge(rule: CheckRule, facts: Facts): Judgement {
  try {
    const found = rule.judge(facts);
    const figures = [found.value, found.limit, found.margin];
    return figures.every((f) => f === null || Number.isFinite(f))
      ? found
      : notComputed('Not computed: the model gave no finite figure for it.');
  } catch (error) {
    return notComputed(`Not computed: ${error instanceof Error ? error.message : String(error)}.`);
  }
}

function weigh(facts: Facts): { mass: number; parts: PartMass[] } {
  const parts = orNull(() => {
    const { items } = facts.cost();
    const made = facts.parts().map((part, i) => ({
      part: part.count > 1 ? `${part.name} × ${part.count}` : part.name,
      mass: part.mass * part.count,
      area: part.area * part.count,
      material: part.material,
      cost: items[i].cost,
    }));
    const rest = items
      .slice(made.length)
      .map(({ item, kind, cost }) => ({ part: item, mass: 0, area: 0, material: kind, cost }));
    return [...made, ...rest];
  });
  const mass = orNull(() => facts.mass());
  if (parts !== null && mass !== null && Number.isFinite(mass)) return { mass, parts };
  return { mass: shellMass(facts), parts: [] };
}

/** Bare shell, kg, for an engine whose parts list cannot be drawn. */
function shellMass({ engine, sheet }: Facts): number {
  const area = engine.sections.reduce(
    (sum, s) => sum + (Math.PI * s.length * (s.startDiameter + s.endDiameter)) / 2,
    0,
  );
  return finite(area * engine.shell.thickness * sheet.density);
}

function dimensions(facts: Facts): { overallLength: number; overallDiameter: number } {
  const size = orNull(() => facts.size());
  const { sections } = facts.engine;
  return {
    overallLength: finite(size?.length ?? sections.reduce((sum, s) => sum + s.length, 0)),
    overallDiameter: finite(
      size?.diameter ?? Math.max(...sections.flatMap((s) => [s.startDiameter, s.endDiameter]), 0),
    ),
  };
}

function noiseOf(facts: Facts): Assessment['noise'] {
  if (facts.running === null) return null;
  const distance = facts.brief.limits.operatorDistance;
  const level = orNull(() => levelAt(facts.levelAtOneMetre(), distance));
  if (level === null || !Number.isFinite(level)) return null;
  return { level, uncertainty: NOISE_UNCERTAINTY, distance, exposureMinutes: exposureMinutes(level) };
}

function finiteBand(band: Band): Band | null {
  return [band.low, band.median, band.high].every(Number.isFinite) ? band : null;
}

function finite(value: number): number {
  return Number.isFinite(value) ? value : 0;
}

function orNull<T>(compute: () => T): T | null {
  try {
    return compute();
  } catch {
    return null;
  }
}
