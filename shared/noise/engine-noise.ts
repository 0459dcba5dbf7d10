/** Level of a running engine from its computed exit and intake flow. */
import type { RunningPerformance } from '../engine/performance.ts';
import { jetLevel } from './jet-noise.ts';
import { monopoleLevel, sumLevels } from './monopole.ts';

const GAS_CONSTANT = 287.05;
/** Heat capacity ratio of hot exhaust. */
const HOT_GAMMA = 1.33;
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
  const airDensity = ambient.pressure / (GAS_CONSTANT * ambient.temperature);
  const soundSpeed = Math.sqrt(1.4 * GAS_CONSTANT * ambient.temperature);
  const { traces, profile, frequency } = running;
  const last = profile.diameter.length - 1;
  const diameter = profile.diameter[last];
  const area = (Math.PI / 4) * diameter ** 2;
  const gas = profile.gasTemperature[last];
  const sonic = Math.sqrt(HOT_GAMMA * GAS_CONSTANT * gas);
  // Gas that leaves is hot and at most sonic; air that is drawn back in through the exit is cold.
  const speeds = traces.exitFlow.map((flow, i) => {
    const density = flow > 0 ? traces.exitPressure[i] / (GAS_CONSTANT * gas) : airDensity;
    return Math.min(flow / (density * area), sonic);
  });
  const exit = { radius: diameter / 2, airDensity, soundSpeed };
  const mouth = { radius: profile.diameter[0] / 2, airDensity, soundSpeed };
  return sumLevels([
    monopoleLevel(
      speeds.map((u) => u * area),
      frequency,
      exit,
    ),
    monopoleLevel(
      traces.intakeFlow.map((flow) => flow / airDensity),
      frequency,
      mouth,
    ),
    jetLevel(
      speeds.map((u) => Math.max(u, 0)),
      diameter,
      ambient.pressure / (GAS_CONSTANT * gas),
      soundSpeed,
    ),
  ]);
}
