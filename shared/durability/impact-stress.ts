/** Stress of sudden stops. */

/** Plane elastic wave: σ = v √(E ρ), one-dimensional impact (Timoshenko & Goodier, Theory of Elasticity). Pa. */
export function waveStress(modulus: number, density: number, speed: number): number {
  return speed * Math.sqrt(modulus * density);
}

/**
 * Bending wave in a strip of rectangular section that is stopped from `speed`: σ = √3 v √(E ρ), the velocity–stress
 * relation of Hunt, J. Acoust. Soc. Am. 32 (1960) 1123. Pa.
 */
export function stripImpactStress(modulus: number, density: number, speed: number): number {
  return Math.sqrt(3) * waveStress(modulus, density, speed);
}

/**
 * Share of that stress in a strip whose free end is stopped. The self-similar solution of the bending wave (Boussinesq’s
 * problem of transverse impact) in a half-infinite strip, end at speed v, no moment there, has the bending moment
 * Im erfc(η(1−i)) of that under a strip struck in its middle; its greatest value, at η = √(π/8), is 0.4876. Exact.
 */
export const FREE_END_SHARE = 0.4876;

/**
 * Rod with a mass on its far end, stopped at the near end: σ ≈ σ0 (1 + √(M/m)), σ0 = v √(E ρ)
 * (Timoshenko & Goodier, longitudinal impact on a bar; approximate within about 10 %). Pa.
 */
export function loadedRodImpactStress(
  modulus: number,
  density: number,
  speed: number,
  endMass: number,
  rodMass: number,
): number {
  return waveStress(modulus, density, speed) * (1 + Math.sqrt(endMass / rodMass));
}
