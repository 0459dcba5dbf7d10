/** What a thicker or better sheet gains at the same heat and pressure. */
import type { Engine } from '../engine/engine.ts';
import type { RunningPerformance } from '../engine/performance.ts';
import { SHEET_MATERIAL_IDS, type SheetMaterialId } from './material-ids.ts';
import { valueAt } from './property-table.ts';
import { nearestGauge, nextThicker } from './sheet-gauge.ts';
import { SHEET_MATERIALS } from './sheet-materials.ts';
import { wallLives } from './shell-life.ts';
import { wallStress } from './wall-stress.ts';

export interface SheetAlternative {
  material: SheetMaterialId;
  name: string;
  /** m. */
  thickness: number;
  /** Nearest steel gauge number. */
  gauge: number;
  present: boolean;
  /** Hoop stress at peak pressure over hot yield, worst place. */
  yieldUse: number;
  /** s until a quarter of the wall is scale, and until creep rupture, shortest along the engine. */
  oxidationLife: number;
  creepLife: number;
  /** Hottest wall over the limit for runs with cooling between, K; negative is clear. */
  overScalingLimit: number;
  /** Shell mass over the present shell's. */
  massRatio: number;
}

/** The present sheet, the next thicker gauge of it, and every other material at the present thickness. */
export function sheetAlternatives(engine: Engine, running: RunningPerformance): SheetAlternative[] {
  const { material, thickness } = engine.shell;
  const choices: [SheetMaterialId, number][] = [[material, thickness]];
  const thicker = nextThicker(thickness);
  if (thicker) choices.push([material, thicker.thickness]);
  for (const id of SHEET_MATERIAL_IDS) if (id !== material) choices.push([id, thickness]);
  return choices.map(([id, t], index) => judge(engine, running, id, t, index === 0));
}

function judge(
  engine: Engine,
  running: RunningPerformance,
  id: SheetMaterialId,
  thickness: number,
  present: boolean,
): SheetAlternative {
  const material = SHEET_MATERIALS[id];
  const own = SHEET_MATERIALS[engine.shell.material];
  const { profile } = running;
  const result: SheetAlternative = {
    material: id,
    name: material.name,
    thickness,
    gauge: nearestGauge(thickness).gauge,
    present,
    yieldUse: 0,
    oxidationLife: Number.POSITIVE_INFINITY,
    creepLife: Number.POSITIVE_INFINITY,
    overScalingLimit: Number.NEGATIVE_INFINITY,
    massRatio: (material.density * thickness) / (own.density * engine.shell.thickness),
  };
  profile.wallTemperature.forEach((temperature, i) => {
    const diameter = profile.diameter[i];
    const peakGauge = Math.max(profile.peakPressure[i] - engine.site.pressure, 0);
    const lives = wallLives(material, { temperature, diameter, thickness, peakGauge });
    result.yieldUse = Math.max(
      result.yieldUse,
      wallStress(engine, profile, i, thickness) / valueAt(material.yield, temperature),
    );
    result.oxidationLife = Math.min(result.oxidationLife, lives.oxidation);
    result.creepLife = Math.min(result.creepLife, lives.creep);
    result.overScalingLimit = Math.max(result.overScalingLimit, temperature - material.scalingIntermittent);
  });
  return result;
}
