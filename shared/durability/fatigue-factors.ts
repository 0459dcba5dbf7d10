/** Reductions of the smooth-specimen fatigue strength at 10⁶ cycles. */

/** Surface of rolled or ground parts, and edge left by the cutting method. */
export type EdgeFinish = 'polished' | 'stoned' | 'sheared';

/**
 * Cold-rolled or machined surface: ka = 4.51 (σu/MPa)^−0.265 (Shigley, Mechanical Engineering Design, Marin factors;
 * fitted to steels up to about 1700 MPa). `ultimate` in Pa.
 */
export function machinedSurfaceFactor(ultimate: number): number {
  return Math.min(4.51 * (ultimate / 1e6) ** -0.265, 1);
}

/** Ground or bright-rolled surface: ka = 1.58 (σu/MPa)^−0.085 (same source). */
export function groundSurfaceFactor(ultimate: number): number {
  return Math.min(1.58 * (ultimate / 1e6) ** -0.085, 1);
}

/** Edge of a strip part: burrs start the cracks. Common practice, no source. */
export const EDGE_FACTOR: Record<EdgeFinish, number> = { polished: 0.95, stoned: 0.85, sheared: 0.6 };

/**
 * Welded stem-to-head joint. A ground butt weld keeps about 112/160 of the parent's detail category in EN 1993-1-9 and
 * hard valve steels lose more in the heat-affected zone; 0.5 is common practice, no source.
 */
export const WELDED_STEM_FACTOR = 0.5;
