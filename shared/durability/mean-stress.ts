/** Fully reversed amplitude that does the same harm as a cycle between two stresses. */

/** Goodman (1899): σar = σa / (1 − σm/σu); compression does not help. Infinity when σm ≥ σu. Pa. */
export function goodmanAmplitude(maximum: number, minimum: number, ultimate: number): number {
  const amplitude = (maximum - minimum) / 2;
  const mean = Math.max((maximum + minimum) / 2, 0);
  return mean >= ultimate ? Number.POSITIVE_INFINITY : amplitude / (1 - mean / ultimate);
}

/** Smith–Watson–Topper, J. Materials 5 (1970) 767: σar = √(σmax σa); zero when σmax ≤ 0. Pa. */
export function swtAmplitude(maximum: number, minimum: number): number {
  return maximum <= 0 ? 0 : Math.sqrt((maximum * (maximum - minimum)) / 2);
}

/** The more severe of both: neither is known to hold for hard strip. Pa. */
export function equivalentAmplitude(maximum: number, minimum: number, ultimate: number): number {
  return Math.max(goodmanAmplitude(maximum, minimum, ultimate), swtAmplitude(maximum, minimum));
}
