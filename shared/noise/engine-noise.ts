/** Level of a running engine from its computed exit and intake flow. */
import type { RunningPerformance } from '../engine/performance.ts';
import { jetLevel } from './jet-noise.ts';
import { levelAt, monopoleLevel, sumLevels } from './monopole.ts';

const GAS_CONSTANT = 287.05;
/**
 * ± dB. Directivity, real ground and rasp from shocks are left out; no measurement was found to fit against, so the
 * band is a judgement (common practice, no source).
 */
export const NOISE_UNCERTAINTY = 6;

/** dB(A) at 1 m over hard ground. @param ambient air: Pa, K */
export function levelAtOneMetre(
  running: RunningPerformance,
  ambient: { pressure: number; temperature: number },
): number {
  const density = ambient.pressure / (GAS_CONSTANT * ambient.temperature);
  const { traces, profile } = running;
  const exitTemperature = profile.gasTemperature[profile.gasTemperature.length - 1];
  const exitDensity = ambient.pressure / (GAS_CONSTANT * exitTemperature);
  // Gas that leaves is hot; air that is drawn back in through the exit is cold.
  const exit = traces.exitFlow.map((m) => (m > 0 ? m / exitDensity : m / density));
  const intake = traces.intakeFlow.map((m) => m / density);
  const diameter = profile.diameter[profile.diameter.length - 1];
  const speeds = traces.exitFlow.map((m) => Math.max(m, 0) / (exitDensity * (Math.PI / 4) * diameter ** 2));
  return sumLevels([
    monopoleLevel(exit, running.frequency, density),
    monopoleLevel(intake, running.frequency, density),
    jetLevel(speeds, diameter, exitDensity, Math.sqrt(1.4 * GAS_CONSTANT * ambient.temperature)),
  ]);
}

/** dB(A) at `distance`, m. */
export function engineLevel(
  running: RunningPerformance,
  ambient: { pressure: number; temperature: number },
  distance: number,
): number {
  return levelAt(levelAtOneMetre(running, ambient), distance);
}
