/**
 * How far the sound field reaches out of an open pipe end, as extra length over inside radius, at low frequency.
 *
 * Unflanged, thin-walled: 0.6133. Source: Levine and Schwinger, Phys. Rev. 73 (1948) 383.
 */
export const UNFLANGED_END_CORRECTION = 0.6133;

/** Extra length of an unflanged open end, m; diameter in m. */
export function endCorrection(diameter: number): number {
  return (UNFLANGED_END_CORRECTION * diameter) / 2;
}
