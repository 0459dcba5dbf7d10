/**
 * An engine's exhaust through its augmenter: thrust with it, and the air that it must be able to draw in.
 *
 * Entrained flow follows from the augmented thrust F leaving through the exit area A at outside pressure:
 *
 *     (ṁ_j + ṁ_a)(ṁ_j/ρ_j + ṁ_a/ρ_a) = F A          volume flows add in mixing (equal heat capacities)
 *
 * That is the flow of an even exit stream: an upper estimate, since what pulsation is left at the exit carries the same
 * momentum with less flow.
 */
import type { Augmenter, Site } from '../engine/engine.ts';
import { DRY_AIR } from '../gas/mixtures.ts';
import { type Augmentation, augmentation } from './augmentation.ts';

export interface ExhaustJet {
  /** Mean thrust of this exit without augmenter, N. */
  thrust: number;
  /** Mean flow out of it, kg/s. */
  massFlow: number;
  /** Mean temperature of that flow, K, and its gas constant, J/(kg K). */
  temperature: number;
  gasConstant: number;
}

export interface AugmentedThrust extends Augmentation {
  /** N. */
  thrust: number;
  /** Outside air drawn in, kg/s; an upper estimate from the mean momentum. */
  entrainedFlow: number;
}

/** Throws RangeError as `augmentation` does. */
export function augment(input: {
  augmenter: Augmenter;
  exitDiameter: number;
  exhaust: ExhaustJet;
  site: Site;
}): AugmentedThrust {
  const { augmenter, exitDiameter, exhaust, site } = input;
  const airDensity = site.pressure / (DRY_AIR.gasConstant * site.temperature);
  const jetDensity = site.pressure / (exhaust.gasConstant * exhaust.temperature);
  const result = augmentation(augmenter, exitDiameter, jetDensity / airDensity);
  const thrust = exhaust.thrust * result.ratio;
  const exitArea = (Math.PI * (augmenter.diameter * augmenter.taper) ** 2) / 4;
  return {
    ...result,
    thrust,
    entrainedFlow: entrainedFlow(thrust, exitArea, exhaust.massFlow, jetDensity, airDensity),
  };
}

/** Positive root of the exit-momentum equation above for ṁ_a, kg/s; 0 when the jet alone carries the thrust. */
export function entrainedFlow(
  thrust: number,
  exitArea: number,
  jetFlow: number,
  jetDensity: number,
  airDensity: number,
): number {
  const a = 1 / airDensity;
  const b = jetFlow / jetDensity + jetFlow / airDensity;
  const c = jetFlow ** 2 / jetDensity - thrust * exitArea;
  return c >= 0 ? 0 : (-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a);
}
