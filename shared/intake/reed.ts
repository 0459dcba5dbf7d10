/**
 * A reed petal as a cantilever in its first two bending modes, driven by the pressure difference and caught by a stop.
 *
 * Euler–Bernoulli: ω_n = β_n²/L² √(E I/(ρ A)), β₁ = 1.8751041, β₂ = 4.6940911. With each mode shape scaled to 1 at the tip,
 *   q̈_n + 2 ζ ω_n q̇_n + ω_n² q_n = Γ_n Δp/(ρ t),   Γ₁ = 1.5660, Γ₂ = −0.8679   (Γ = ∫φ dx / ∫φ² dx)
 * and the tip lift is q₁ + q₂. The petal cannot pass its seat or its stop; it comes back with a share of its speed.
 *
 * The pressure difference that lifts an open petal is smaller than across the port, since the jet beneath it has taken part
 * of it: Δp (1 − s²/2), s = opening over port area (from memory, low confidence).
 */
import { valveMaterialStiffness } from '../durability/valve-stiffness.ts';
import type { ReedIntake } from '../engine/engine.ts';
import type { IntakeValve } from './valve.ts';

export const CANTILEVER_ROOTS = [1.8751041, 4.6940911] as const;
const PARTICIPATION = [1.566, -0.8679] as const;
/** ∫φ₁ dx / L with the tip at 1: mean lift along the petal over tip lift. */
const MEAN_SHAPE = 0.3915;
/** Damping ratio of a strip in moving air (from memory, low confidence). */
const DAMPING = 0.04;
/** Share of speed kept after meeting seat or stop (from memory, low confidence). */
const RESTITUTION = 0.25;
/** Leakage of a shut petal, share of its port area (common practice, no source). */
const LEAKAGE = 0.004;

/** Frequency of bending mode 1 or 2, Hz, of a strip of thickness t and free length L, m. E in Pa, density in kg/m³. */
export function reedFrequency(
  mode: 1 | 2,
  thickness: number,
  length: number,
  modulus: number,
  density: number,
): number {
  const beta = CANTILEVER_ROOTS[mode - 1];
  return (
    ((beta * beta) / (2 * Math.PI * length * length)) * Math.sqrt((modulus * thickness * thickness) / (12 * density))
  );
}

/** Curtain between a lifted petal and its plate, m²: tip width plus both sides at their mean lift. */
export function reedCurtain(tipLift: number, width: number, length: number): number {
  return tipLift * (width + 2 * MEAN_SHAPE * length);
}

/** Two areas in series as one: A₁A₂/√(A₁² + A₂²). */
export function seriesArea(a: number, b: number): number {
  return a > 0 && b > 0 ? (a * b) / Math.sqrt(a * a + b * b) : 0;
}

/** Makes the reed valve of an engine. `discharge` is the model's C_d of reed ports. */
export function makeReedValve(reed: ReedIntake, discharge: number): IntakeValve {
  const { modulus, density } = valveMaterialStiffness(reed.material);
  const omega1 = 2 * Math.PI * reedFrequency(1, reed.thickness, reed.length, modulus, density);
  const omega2 = 2 * Math.PI * reedFrequency(2, reed.thickness, reed.length, modulus, density);
  const perPressure = 1 / (density * reed.thickness);
  const mass = density * reed.thickness * reed.width * reed.length;
  const portArea = reed.portArea * reed.petals;
  const leak = LEAKAGE * portArea;
  // Lift and speed of both modes, and the opening at that lift: q₁, v₁, q₂, v₂, A. An array, since a closure's own numbers
  // cost an allocation at each change.
  const motion = new Float64Array(5);
  const tipLift = () => Math.max(0, motion[0] + motion[2]);
  const opening = (tip: number) => reed.petals * seriesArea(reedCurtain(tip, reed.width, reed.length), reed.portArea);
  const valve: IntakeValve = {
    fullArea: opening(reed.stopLift),
    stopLift: reed.stopLift,
    movingMass: 0.25 * mass,
    naturalFrequency: omega1 / (2 * Math.PI),
    pressureArea: MEAN_SHAPE * reed.width * reed.length,
    preload: 0,
    stiffness: 0.25 * mass * omega1 * omega1,
    count: reed.petals,
    seatImpact: 0,
    stopImpact: 0,
    peakLift: 0,
    lift: tipLift,
    openArea: () => motion[4],
    effectiveArea: () => discharge * motion[4] + leak,
    resetExtremes() {
      valve.seatImpact = 0;
      valve.stopImpact = 0;
      valve.peakLift = 0;
    },
    advance(dt, difference) {
      const pieces = Math.ceil((omega2 * dt) / 0.4);
      const h = dt / pieces;
      let q1 = motion[0];
      let v1 = motion[1];
      let q2 = motion[2];
      let v2 = motion[3];
      for (let n = 0; n < pieces; n++) {
        const tip = q1 + q2;
        if (tip <= 0 && difference <= 0 && v1 + v2 <= 0) {
          q1 = v1 = q2 = v2 = 0;
          break;
        }
        const s = opening(Math.max(0, tip)) / portArea;
        const drive = difference * (1 - 0.5 * s * s) * perPressure;
        v1 += h * (PARTICIPATION[0] * drive - omega1 * omega1 * q1 - 2 * DAMPING * omega1 * v1);
        v2 += h * (PARTICIPATION[1] * drive - omega2 * omega2 * q2 - 2 * DAMPING * omega2 * v2);
        q1 += h * v1;
        q2 += h * v2;
        const lift = q1 + q2;
        const speed = v1 + v2;
        if (lift < 0) {
          if (-speed > valve.seatImpact) valve.seatImpact = -speed;
          q1 = q2 = v2 = 0;
          v1 = -RESTITUTION * Math.min(0, speed);
        } else if (lift > reed.stopLift) {
          if (speed > valve.stopImpact) valve.stopImpact = speed;
          q1 = reed.stopLift;
          q2 = 0;
          v1 = -RESTITUTION * Math.max(0, speed);
          v2 = 0;
        }
        if (lift > valve.peakLift) valve.peakLift = Math.min(lift, reed.stopLift);
      }
      motion[0] = q1;
      motion[1] = v1;
      motion[2] = q2;
      motion[3] = v2;
      motion[4] = opening(tipLift());
    },
  };
  return valve;
}
