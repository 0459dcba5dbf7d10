/**
 * Bending modes of a uniform cantilever strip, clamped at x = 0 and free at x = L (Euler–Bernoulli).
 *
 *     cos β cosh β = −1                                roots β_n (= βL)
 *     ω_n = β_n² √(E I/(ρ A L⁴)) = β_n² t/L² √(E/(12ρ))
 *     y_n(s) = ½[cosh β s − cos β s − σ(sinh β s − sin β s)],  σ = (cosh β + cos β)/(sinh β + sin β),  s = x/L;  |y_n(1)| = 1
 *     root stress = K E t δ/(2L²),  K = β_n² for a mode, 4 under uniform pressure, 3 under a tip load;  δ tip lift
 *
 * Source: any text on vibration of beams, e.g. Timoshenko, "Vibration Problems in Engineering".
 */
import { bisect } from './bisect.ts';

export interface Strip {
  /** m. */
  length: number;
  thickness: number;
  /** Young's modulus, Pa. */
  youngsModulus: number;
  /** kg/m³. */
  density: number;
}

/** β_n, n from 1. */
export function cantileverRoot(mode: number): number {
  const middle = (mode - 0.5) * Math.PI;
  // Divided by cosh so that high modes stay finite.
  return bisect((b) => Math.cos(b) + 1 / Math.cosh(b), middle - 0.5, middle + 0.5);
}

/** Natural frequency of mode n, Hz. */
export function cantileverFrequency(strip: Strip, mode: number): number {
  const root = cantileverRoot(mode);
  const omega =
    ((root * root * strip.thickness) / strip.length ** 2) * Math.sqrt(strip.youngsModulus / (12 * strip.density));
  return omega / (2 * Math.PI);
}

/** Deflection of mode n at s = x/L, scaled to ±1 at the tip. */
export function cantileverShape(mode: number, s: number): number {
  const b = cantileverRoot(mode);
  const sigma = (Math.cosh(b) + Math.cos(b)) / (Math.sinh(b) + Math.sin(b));
  return 0.5 * (Math.cosh(b * s) - Math.cos(b * s) - sigma * (Math.sinh(b * s) - Math.sin(b * s)));
}

/** K of the root stress for mode n: root curvature · L² over tip deflection. */
export function modalRootStressFactor(mode: number): number {
  return cantileverRoot(mode) ** 2;
}

export const ROOT_STRESS_FACTOR_UNIFORM_PRESSURE = 4;
export const ROOT_STRESS_FACTOR_TIP_LOAD = 3;

/** Bending stress at the clamp for a tip lift, m, Pa. */
export function rootStress(strip: Strip, tipLift: number, factor: number): number {
  return (factor * strip.youngsModulus * strip.thickness * tipLift) / (2 * strip.length ** 2);
}
