/** How long a hot shell lasts: scale eats it, or creep tears it. */
import type { Band } from '../checks/check.ts';
import type { Engine } from '../engine/engine.ts';
import type { RunningPerformance } from '../engine/performance.ts';
import { ruptureHours } from './creep.ts';
import { hoopStress } from './hoop-stress.ts';
import { lognormalBand } from './life-band.ts';
import { oxidationLife } from './oxidation.ts';
import { SHEET_MATERIALS, type SheetMaterial } from './sheet-materials.ts';

/** Share of the wall that may turn to scale. Common practice, no source. */
export const WASTAGE_SHARE = 0.25;
/**
 * Steady stress that creeps as fast as a half-sine of pressure with that peak, creep rate ∝ σ⁵:
 * (mean of sin⁵ over the half wave, /2)^(1/5) = (16/15/(2π))^(1/5) = 0.70.
 */
const CREEP_EQUIVALENT = 0.7;
/** ± K of a computed wall temperature, as a 5–95 % band. */
const TEMPERATURE_ERROR = 25;
/** Rupture times of one heat of steel scatter by about a factor of three (from memory, medium). */
const RUPTURE_SCATTER = 0.25;

export interface WallState {
  /** K. */
  temperature: number;
  diameter: number;
  thickness: number;
  /** Pa gauge. */
  peakGauge: number;
}

/** s of running until a quarter of the wall is scale, and until creep rupture, both faces in air or gas. */
export function wallLives(material: SheetMaterial, wall: WallState): { oxidation: number; creep: number } {
  const stress = CREEP_EQUIVALENT * hoopStress(Math.max(wall.peakGauge, 0), wall.diameter, wall.thickness);
  return {
    oxidation: oxidationLife(material, wall.temperature, wall.thickness, WASTAGE_SHARE),
    creep: 3600 * ruptureHours(material.ruptureStress1000h, stress, wall.temperature),
  };
}

export interface ShellLife {
  /** s. */
  band: Band;
  limiter: 'scaling of the shell' | 'creep of the shell';
  /** Shortest of each kind along the engine, s. */
  oxidation: number;
  creep: number;
}

/** Shortest life along the engine. The band carries the temperature error and the rupture scatter. */
export function shellLife(engine: Engine, running: RunningPerformance): ShellLife {
  const material = SHEET_MATERIALS[engine.shell.material];
  const shortest = (shift: number) => {
    let oxidation = Number.POSITIVE_INFINITY;
    let creep = Number.POSITIVE_INFINITY;
    running.profile.wallTemperature.forEach((t, i) => {
      const lives = wallLives(material, {
        temperature: t + shift,
        diameter: running.profile.diameter[i],
        thickness: engine.shell.thickness,
        peakGauge: running.profile.peakPressure[i] - engine.site.pressure,
      });
      oxidation = Math.min(oxidation, lives.oxidation);
      creep = Math.min(creep, lives.creep);
    });
    return { oxidation, creep, life: Math.min(oxidation, creep) };
  };
  const middle = shortest(0);
  const spread = Math.log10(shortest(-TEMPERATURE_ERROR).life / shortest(TEMPERATURE_ERROR).life) / 2 / 1.645;
  return {
    band: lognormalBand(middle.life, Math.hypot(spread, RUPTURE_SCATTER)),
    limiter: middle.oxidation <= middle.creep ? 'scaling of the shell' : 'creep of the shell',
    oxidation: middle.oxidation,
    creep: middle.creep,
  };
}
