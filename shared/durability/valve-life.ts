/** Life of the valve of a running engine; for a valveless engine, of the shell. */
import type { Band } from '../checks/check.ts';
import type { Engine } from '../engine/engine.ts';
import type { RunningPerformance } from '../engine/performance.ts';
import { poppetLengths } from '../fabrication/poppet-layout.ts';
import { type FatigueSite, siteSlope, weakestSite } from './fatigue-site.ts';
import { lifeDeviation, lognormalBand } from './life-band.ts';
import { poppetSites } from './poppet-stress.ts';
import { reedSites } from './reed-stress.ts';
import { shellLife } from './shell-life.ts';
import { runningValveTemperature } from './valve-heat.ts';
import { VALVE_MATERIALS } from './valve-materials.ts';

/** Standard deviation of log10(life) of hard strip from one coil (from memory, medium), and relative error of a computed stress. */
const MATERIAL_SCATTER = 0.2;
const STRESS_ERROR = 0.1;

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
  const slope = siteSlope(VALVE_MATERIALS[intake.material], weakest);
  const cycles = lognormalBand(weakest.cycles, lifeDeviation(MATERIAL_SCATTER, STRESS_ERROR, slope));
  return {
    band: scaled(cycles, 1 / running.frequency),
    cycles,
    limiter: `fatigue of the ${intake.kind === 'reed' ? 'petal' : 'poppet'} ${weakest.where}`,
    temperature,
    sites,
  };
}

function scaled(band: Band, factor: number): Band {
  return { low: band.low * factor, median: band.median * factor, high: band.high * factor };
}
