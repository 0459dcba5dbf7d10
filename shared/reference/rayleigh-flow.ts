/**
 * Rayleigh flow: steady frictionless flow of a γ-law gas with heat added in a duct of constant area.
 *
 *     T0/T0* = 2(γ+1)M² (1 + (γ−1)/2 M²) / (1 + γM²)²
 *     p/p* = (1+γ)/(1 + γM²)       T/T* = ( (1+γ)M/(1 + γM²) )²
 *
 * Source: Shapiro, "The Dynamics and Thermodynamics of Compressible Fluid Flow", vol. 1, ch. 7.
 */
import { bisect } from './bisect.ts';

/** T0/T0*. */
export function rayleighStagnationTemperature(mach: number, gamma: number): number {
  const m2 = mach * mach;
  return (2 * (gamma + 1) * m2 * (1 + ((gamma - 1) / 2) * m2)) / (1 + gamma * m2) ** 2;
}

/** p/p*. */
export function rayleighPressure(mach: number, gamma: number): number {
  return (1 + gamma) / (1 + gamma * mach * mach);
}

/** T/T*. */
export function rayleighTemperature(mach: number, gamma: number): number {
  return (mach * rayleighPressure(mach, gamma)) ** 2;
}

/** Subsonic Mach number at T0/T0*, between 0 and 1. */
export function rayleighMach(ratio: number, gamma: number): number {
  return bisect((mach) => rayleighStagnationTemperature(mach, gamma) - ratio, 0, 1);
}
