/** What the rules ask about one design, each figure computed once and only when asked for. SI units. */
import { type SheetAlternative, sheetAlternatives } from '../durability/sheet-alternatives.ts';
import { SHEET_MATERIALS, type SheetMaterial } from '../durability/sheet-materials.ts';
import { type ShellLife, shellLife } from '../durability/shell-life.ts';
import { type StripLife, stripLives, type ValveLife, valveLife } from '../durability/valve-life.ts';
import type { Brief } from '../engine/brief.ts';
import type { Engine } from '../engine/engine.ts';
import type { Performance, RunningPerformance, StartAttempt } from '../engine/performance.ts';
import { type CostEstimate, costEstimate } from '../fabrication/cost.ts';
import { type OverallSize, overallSize } from '../fabrication/overall-size.ts';
import { type Part, partsList } from '../fabrication/parts.ts';
import { type SheetUse, sheetUses } from '../fabrication/sheet-use.ts';
import { levelAtOneMetre } from '../noise/engine-noise.ts';
import type { CheckInput } from './check.ts';
import { MissingFigure } from './rule.ts';

/** s of running that a design is held to when the brief states no endurance. Common practice, no source. */
const DEFAULT_ENDURANCE = 600;
const AIR_GAS_CONSTANT = 287.05;

export interface Facts {
  engine: Engine;
  performance: Performance;
  brief: Brief;
  /** Null unless self-sustaining. */
  running: RunningPerformance | null;
  /** The start that worked; null when none did. */
  start: (StartAttempt & { airFlow: number }) | null;
  /** The brief's endurance or the default, s. */
  endurance: number;
  caution: number;
  /** Of the still air, kg/m³. */
  airDensity: number;
  sheet: SheetMaterial;
  /** Hottest wall cell, K. */
  hottest(): number;
  life(): ValveLife;
  /** The same petals in each strip, longest life first. */
  strips(): StripLife[];
  shell(): ShellLife;
  /** The present sheet, the next thicker gauge and every other material. */
  alternatives(): SheetAlternative[];
  parts(): Part[];
  size(): OverallSize;
  mass(): number;
  /** Sheet that the parts take as they nest. */
  sheetUses(): SheetUse[];
  cost(): CostEstimate;
  /** dB(A) at 1 m. */
  levelAtOneMetre(): number;
}

/** The running engine, or a reason not to compute. For rules that come after a test of `running`. */
export function runningOf(facts: Facts): RunningPerformance {
  if (facts.running === null) throw new MissingFigure('the engine does not run');
  return facts.running;
}

export function factsOf({ engine, performance, brief }: CheckInput): Facts {
  const running = performance.running;
  const { verdict } = performance;
  const worked = performance.starts.find((s) => s.outcome === 'self-sustaining');
  const start = worked ?? (verdict.kind === 'self-sustaining' ? { ...verdict.start, airFlow: Number.NaN } : null);
  const facts: Facts = {
    engine,
    performance,
    brief,
    running,
    start,
    endurance: brief.wanted.endurance ?? DEFAULT_ENDURANCE,
    caution: brief.limits.cautionMargin,
    airDensity: engine.site.pressure / (AIR_GAS_CONSTANT * engine.site.temperature),
    sheet: SHEET_MATERIALS[engine.shell.material],
    hottest: once(() => hottestWall(runningOf(facts))),
    life: once(() => valveLife(engine, runningOf(facts))),
    strips: once(() => stripLives(engine, runningOf(facts))),
    shell: once(() => shellLife(engine, runningOf(facts))),
    alternatives: once(() => sheetAlternatives(engine, runningOf(facts))),
    parts: once(() => partsList(engine)),
    size: once(() => overallSize(engine)),
    mass: once(() => facts.parts().reduce((sum, part) => sum + part.mass * part.count, 0)),
    sheetUses: once(() => sheetUses(facts.parts(), brief.sheets)),
    cost: once(() => costEstimate(facts.parts(), brief, facts.sheetUses())),
    levelAtOneMetre: once(() => levelAtOneMetre(runningOf(facts), engine.site)),
  };
  return facts;
}

function hottestWall(running: RunningPerformance): number {
  const { wallTemperature } = running.profile;
  if (wallTemperature.length === 0) throw new MissingFigure('the model gave no wall temperatures');
  return Math.max(...wallTemperature);
}

function once<T>(compute: () => T): () => T {
  let known: { value: T } | null = null;
  return () => {
    known ??= { value: compute() };
    return known.value;
  };
}
