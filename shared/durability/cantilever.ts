/** Bending of a flat petal: Euler–Bernoulli beam theory. SI units. */

/** Roots βL of 1 + cos βL · cosh βL = 0. */
const CANTILEVER_ROOTS = [1.8751041, 4.6940911, 7.8547574] as const;

/** Root stress factor K of σ = K E t δ/(2 L²) by the shape of the deflection. */
export const ROOT_FACTOR = { 'first mode': 3.516, 'uniform pressure': 4, 'tip load': 3 } as const;

/** Root bending stress, Pa, at tip deflection `tip`, m. */
export function rootStress(
  modulus: number,
  thickness: number,
  length: number,
  tip: number,
  shape: keyof typeof ROOT_FACTOR = 'first mode',
): number {
  return (ROOT_FACTOR[shape] * modulus * thickness * tip) / (2 * length * length);
}

/** Natural frequency, Hz, of bending mode 1, 2 or 3: f = (βL)² /(2π L²) √(E t²/(12 ρ)). */
export function cantileverFrequency(
  modulus: number,
  density: number,
  thickness: number,
  length: number,
  mode: 1 | 2 | 3 = 1,
): number {
  const root = CANTILEVER_ROOTS[mode - 1];
  return (
    ((root * root) / (2 * Math.PI * length * length)) * Math.sqrt((modulus * thickness * thickness) / (12 * density))
  );
}
