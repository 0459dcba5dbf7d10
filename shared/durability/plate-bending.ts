/** Flat plates under uniform pressure (Roark’s Formulas for Stress and Strain). SI units. */

/** β of σ = β p b²/t² for a rectangle a × b (a ≥ b), all edges simply supported, ν = 0.3 (Roark table 11.4 case 1a). */
const RECTANGLE: readonly (readonly [number, number])[] = [
  [1, 0.2874],
  [1.2, 0.3762],
  [1.4, 0.453],
  [1.6, 0.5172],
  [1.8, 0.5688],
  [2, 0.6102],
  [3, 0.7134],
  [4, 0.741],
  [5, 0.7476],
  [100, 0.75],
];

/** Greatest bending stress of a rectangular plate, edges simply supported, Pa. */
export function rectangularPlateStress(pressure: number, long: number, short: number, thickness: number): number {
  const [a, b] = long >= short ? [long, short] : [short, long];
  const ratio = Math.min(a / b, 100);
  let i = 1;
  while (RECTANGLE[i][0] < ratio) i++;
  const [r0, b0] = RECTANGLE[i - 1];
  const [r1, b1] = RECTANGLE[i];
  const beta = b0 + ((ratio - r0) / (r1 - r0)) * (b1 - b0);
  return (beta * pressure * b * b) / (thickness * thickness);
}

/** Centre of a circular plate, edge simply supported: σ = 3(3+ν) p a²/(8 t²), a the radius. Pa. */
export function circularPlateStress(pressure: number, radius: number, thickness: number, poisson: number): number {
  return (3 * (3 + poisson) * pressure * radius * radius) / (8 * thickness * thickness);
}
