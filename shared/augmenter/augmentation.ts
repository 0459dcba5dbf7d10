/**
 * Thrust of an engine with an augmenter: steady ejector times unsteady gain, faded outside the tested proportions.
 *
 *     thrust ratio = 1 + c · (s · g − 1)      s steady part, g unsteady gain, c credit (1 inside the tested range)
 *     s = 1 + (s_mixed − 1)(1 − e^(−L/(1.5 D)))      s_mixed: full mixing; a short tube mixes less
 */
import type { Augmenter } from '../engine/engine.ts';
import { steadyEjector } from './steady-ejector.ts';
import { testedCredit, untestedProportions } from './tested-range.ts';
import { unsteadyGain } from './unsteady-gain.ts';

export interface Augmentation {
  /** Thrust with over thrust without. */
  ratio: number;
  /** What a steady jet of the same density would give. */
  steady: number;
  /** Factor that pulsing puts on it. */
  unsteadyGain: number;
  /** False when a proportion lies outside what has been tested; the ratio is then cut back. */
  inTestedRange: boolean;
  /** One sentence for the report. */
  note: string;
}

/** Dynamic heads lost at a rounded bell (textbook value for a bellmouth). */
const BELL_LOSS = 0.05;
/** Fanning friction factor of smooth sheet at Re about 10⁵ (Moody chart). */
const FRICTION = 0.004;
/**
 * Fitted so that the best tapered duct gives the measured 1.81 against 1.71 straight (NASA/TM-2006-214224). The taper
 * tested there is not known to us; the model's best is about 1.2.
 */
const DIFFUSER_EFFICIENCY = 0.935;
/** Half angle up to which a cone's flow stays on the wall, and beyond which it gives no pressure, rad (diffuser charts). */
const CONE_ATTACHED = (5 * Math.PI) / 180;
const CONE_STALLED = (10 * Math.PI) / 180;
/** Tube lengths over diameter in which a steady jet is mixed but for 1/e: tubes of five to seven diameters are usual. */
const MIXING_LENGTH = 1.5;

/**
 * exitDiameter in m; jetDensityRatio: mean density of the exhaust jet over that of the outside air.
 * Throws RangeError when a length is not above zero or the duct narrows towards its exit.
 */
export function augmentation(augmenter: Augmenter, exitDiameter: number, jetDensityRatio: number): Augmentation {
  const { diameter, length, gap, taper } = augmenter;
  if (!(exitDiameter > 0 && diameter > 0 && length > 0)) {
    throw new RangeError('Augmenter diameter and length and engine exit diameter must be above zero.');
  }
  if (!(jetDensityRatio > 0))
    throw new RangeError(`Jet density over air density must be above zero; got ${jetDensityRatio}.`);
  if (!(taper >= 1)) throw new RangeError(`Augmenter taper is exit over throat diameter, 1 or more; got ${taper}.`);
  if (diameter <= exitDiameter) {
    const note = 'The augmenter is no wider than the engine exit: it cannot draw in air, and no thrust is added.';
    return { ratio: 1, steady: 1, unsteadyGain: 1, inTestedRange: false, note };
  }
  const halfAngle = Math.atan((0.5 * (taper - 1) * diameter) / length);
  const steady = steadyPart(augmenter, exitDiameter, jetDensityRatio, halfAngle);
  const proportions = { diameter: diameter / exitDiameter, length: length / exitDiameter, gap: gap / exitDiameter };
  const gain = unsteadyGain(proportions);
  const outside = untestedProportions(proportions);
  if (halfAngle > CONE_ATTACHED) {
    outside.push(
      `the cone opens by ${((halfAngle * 180) / Math.PI).toFixed(1)}° to its axis, more than the 5° its flow follows`,
    );
  }
  const inTestedRange = outside.length === 0;
  const ratio = 1 + testedCredit(proportions) * (steady * gain - 1);
  const note = inTestedRange
    ? 'Augmenter proportions lie within published pulsejet tests.'
    : `Beyond published pulsejet tests, so little is claimed: ${outside.join('; ')}.`;
  return { ratio, steady, unsteadyGain: gain, inTestedRange, note };
}

function steadyPart(augmenter: Augmenter, exitDiameter: number, densityRatio: number, halfAngle: number): number {
  const { diameter, length, taper } = augmenter;
  const attached = Math.min(1, Math.max(0, (CONE_STALLED - halfAngle) / (CONE_STALLED - CONE_ATTACHED)));
  const { thrustRatio } = steadyEjector({
    areaRatio: (diameter / exitDiameter) ** 2,
    densityRatio,
    lipLoss: BELL_LOSS,
    wallLoss: (4 * FRICTION * length) / diameter,
    diffuserAreaRatio: taper ** 2,
    diffuserEfficiency: DIFFUSER_EFFICIENCY * attached,
  });
  if (thrustRatio <= 1) return thrustRatio;
  return 1 + (thrustRatio - 1) * (1 - Math.exp(-length / (MIXING_LENGTH * diameter)));
}
