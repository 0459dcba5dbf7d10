/**
 * Fanno flow: steady adiabatic flow of a γ-law gas with wall friction in a duct of constant area.
 *
 *     4 f L* / D = (1 − M²)/(γM²) + (γ+1)/(2γ) · ln( (γ+1)M² / (2 + (γ−1)M²) )
 *     p/p* = (1/M) √((γ+1)/(2 + (γ−1)M²))       T/T* = (γ+1)/(2 + (γ−1)M²)
 *
 * f is the Fanning friction factor τ_w/(½ρu²); L* is the length that brings the flow to Mach 1.
 * Source: Shapiro, "The Dynamics and Thermodynamics of Compressible Fluid Flow", vol. 1, ch. 6.
 */
import { bisect } from './bisect.ts';

/** 4 f L* / D. */
export function fannoLength(mach: number, gamma: number): number {
  const m2 = mach * mach;
  return (1 - m2) / (gamma * m2) + ((gamma + 1) / (2 * gamma)) * Math.log(((gamma + 1) * m2) / (2 + (gamma - 1) * m2));
}

/** T/T*. */
export function fannoTemperature(mach: number, gamma: number): number {
  return (gamma + 1) / (2 + (gamma - 1) * mach * mach);
}

/** p/p*. */
export function fannoPressure(mach: number, gamma: number): number {
  return Math.sqrt(fannoTemperature(mach, gamma)) / mach;
}

/** Subsonic Mach number from which 4 f L* / D reaches Mach 1. */
export function fannoMach(length: number, gamma: number): number {
  return bisect((mach) => fannoLength(mach, gamma) - length, 1e-6, 1);
}
