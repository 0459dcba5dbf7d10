/**
 * What pulsing adds to an ejector: the starting vortex of each exhaust pulse carries air into the duct far better than
 * steady shear does, so a pulsejet's augmenter beats the steady control volume (shared/augmenter/steady-ejector.ts).
 *
 *     gain = 1 + G · s_D · s_L · s_g                       thrust ratio = steady part · gain
 *     s_D = exp(−½ (ln(D/d ÷ m)/w)²)                       D duct, d engine exit diameter
 *     s_L = (x e^(1−x))^n,  x = L/(λ d)                     L duct length
 *     s_g = exp(−c ln²((g/d + ½)/1½))                       g gap from exit to lip: a weak best value at one diameter
 *
 * Fixed by measurements on a 6.5-inch exit, 100 lbf pulsejet: best straight duct D = 2.46 d, L = 10 d, thrust ratio 1.71
 * (NASA/TM-2006-214224). Small pulsejet drivers reach 1.8 at about the same proportions (NASA/TM-2002-211711), which this
 * fit leaves unclaimed. G, m and λ put the best point there for a jet 0.3 times as dense as air; widths w and n and the
 * gap's c are our own choice, so that halving or doubling a dimension loses what the tests show in outline (from memory,
 * low confidence).
 */
const GAIN = 0.4776;
const DIAMETER_CENTRE = 2.22;
const DIAMETER_WIDTH = 0.35;
const LENGTH_SCALE = 10.68;
const LENGTH_POWER = 0.7;
const GAP_CURVATURE = 0.1;

/** All three over the engine's exit diameter. */
export interface AugmenterProportions {
  diameter: number;
  length: number;
  gap: number;
}

/** Factor on the steady thrust ratio, 1 or more. Proportions must be above zero; a gap below zero puts the exit inside the bell. */
export function unsteadyGain({ diameter, length, gap }: AugmenterProportions): number {
  const offCentre = Math.log(diameter / DIAMETER_CENTRE) / DIAMETER_WIDTH;
  const x = length / LENGTH_SCALE;
  const offGap = Math.log(Math.max(gap + 0.5, 0.1) / 1.5);
  const diameterShape = Math.exp(-0.5 * offCentre * offCentre);
  const lengthShape = (x * Math.exp(1 - x)) ** LENGTH_POWER;
  const gapShape = Math.exp(-GAP_CURVATURE * offGap * offGap);
  return 1 + GAIN * diameterShape * lengthShape * gapShape;
}
