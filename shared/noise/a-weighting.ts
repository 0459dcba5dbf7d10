/** A-weighting, dB, at `frequency`, Hz: IEC 61672-1, annex E. */
export function aWeighting(frequency: number): number {
  const f2 = frequency * frequency;
  const response =
    (12194 ** 2 * f2 * f2) /
    ((f2 + 20.598997 ** 2) * Math.sqrt((f2 + 107.65265 ** 2) * (f2 + 737.86223 ** 2)) * (f2 + 12194.217 ** 2));
  return 20 * Math.log10(response) + 2.0;
}
