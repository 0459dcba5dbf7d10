/** Life of the valve of a running engine; for a valveless engine, of the shell. */
import type { Band } from '../checks/check.ts';
import type { Engine } from '../engine/engine.ts';
import type { RunningPerformance } from '../engine/performance.ts';
import { poppetLengths } from '../fabrication/poppet-layout.ts';
import { type FatigueSite, siteSlope, weakestSite } from './fatigue-site.ts';
import { lifeDeviation, lognormalBand } from './life-band.ts';
import { VALVE_MATERIAL_IDS, type ValveMaterialId } from './material-ids.ts';
import { poppetSites } from './poppet-stress.ts';
import { reedSites } from './reed-stress.ts';
import { shellLife } from './shell-life.ts';
import { runningValveTemperature } from './valve-heat.ts';
import { VALVE_MATERIALS } from './valve-materials.ts';

/** Standard deviation of log10(life) of hard strip from one coil (from memory, medium). */
const MATERIAL_SCATTER = 0.2;
/**
 * Relative standard error of a computed stress. A judgement: the share of the impact relation lies between that of a free
 * end (0.49) and that of a span at uniform speed (4/π), which is ± 20 % at most places.
 */
const STRESS_ERROR = 0.15;

export interface ValveLife {
  /** s of running. */
  band: Band;
  cycles: Band;
  limiter: string;
  /** Valve temperature, K; NaN for valveless. */
  temperature: number;
  /** Empty for valveless. */
  sites: FatigueSite[];
}

/** Throws nothing; figures may be NaN when the performance holds NaN. */
export function valveLife(engine: Engine, running: RunningPerformance): ValveLife {
  const { intake } = engine;
  if (intake.kind === 'valveless' || running.valve === null) {
    const shell = shellLife(engine, running);
    return {
      band: shell.band,
      cycles: scaled(shell.band, running.frequency),
      limiter: shell.limiter,
      temperature: Number.NaN,
      sites: [],
    };
  }
  const temperature = runningValveTemperature(engine, running);
  const sites =
    intake.kind === 'reed'
      ? reedSites(intake, running.valve, temperature)
      : poppetSites(intake, poppetLengths(engine, intake), running.valve, temperature);
  const weakest = weakestSite(sites);
  const cycles = cyclesBand(intake.material, weakest);
  return {
    band: scaled(cycles, 1 / running.frequency),
    cycles,
    limiter: `fatigue of the ${intake.kind === 'reed' ? 'petal' : 'poppet'} ${weakest.where}`,
    temperature,
    sites,
  };
}

export interface StripLife {
  material: ValveMaterialId;
  /** s of running. */
  band: Band;
}

/**
 * Life of the same petals, moving as computed, cut from each strip, longest first. Another modulus or density would change
 * the motion a little; that is left out. Empty unless the intake has petals.
 */
export function stripLives(engine: Engine, running: RunningPerformance): StripLife[] {
  const { intake } = engine;
  const { valve, frequency } = running;
  if (intake.kind !== 'reed' || valve === null) return [];
  const temperature = runningValveTemperature(engine, running);
  return VALVE_MATERIAL_IDS.filter((id) => VALVE_MATERIALS[id].form === 'strip')
    .map((material) => {
      const weakest = weakestSite(reedSites({ ...intake, material }, valve, temperature));
      return { material, band: scaled(cyclesBand(material, weakest), 1 / frequency) };
    })
    .sort((a, b) => b.band.median - a.band.median);
}

function cyclesBand(material: ValveMaterialId, site: FatigueSite): Band {
  const slope = siteSlope(VALVE_MATERIALS[material], site);
  return lognormalBand(site.cycles, lifeDeviation(MATERIAL_SCATTER, STRESS_ERROR, slope));
}

function scaled(band: Band, factor: number): Band {
  return { low: band.low * factor, median: band.median * factor, high: band.high * factor };
}
