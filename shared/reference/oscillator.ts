/**
 * One mass on a spring with viscous damping:  x″ + 2ζω x′ + ω² x = f(t)/m.
 *
 *     free:    x = e^(−ζωt) (x_0 cos ω_d t + (v_0 + ζω x_0)/ω_d · sin ω_d t),   ω_d = ω√(1−ζ²)
 *     forced by F cos Ωt, steady:  amplitude F/m / √((ω²−Ω²)² + (2ζωΩ)²),  lag atan2(2ζωΩ, ω²−Ω²)
 *
 * Source: any text on mechanical vibration, e.g. den Hartog, "Mechanical Vibrations".
 */
export interface Oscillator {
  /** kg. */
  mass: number;
  /** N/m. */
  stiffness: number;
  /** Fraction of critical, 0 to below 1. */
  dampingRatio: number;
}

export interface Motion {
  /** m. */
  position: number;
  /** m/s. */
  velocity: number;
}

/** Undamped natural frequency, rad/s. */
export function naturalFrequency(oscillator: Oscillator): number {
  return Math.sqrt(oscillator.stiffness / oscillator.mass);
}

/** Free motion after a time, s. */
export function freeMotion(oscillator: Oscillator, start: Motion, time: number): Motion {
  const omega = naturalFrequency(oscillator);
  const zeta = oscillator.dampingRatio;
  if (!(zeta >= 0 && zeta < 1)) throw new RangeError(`Damping ratio must be from 0 to below 1; got ${zeta}.`);
  const damped = omega * Math.sqrt(1 - zeta * zeta);
  const cosine = Math.cos(damped * time);
  const sine = Math.sin(damped * time);
  const b = (start.velocity + zeta * omega * start.position) / damped;
  const decay = Math.exp(-zeta * omega * time);
  const position = decay * (start.position * cosine + b * sine);
  const velocity = decay * (b * damped * cosine - start.position * damped * sine) - zeta * omega * position;
  return { position, velocity };
}

/** Motion from a start under a force, N, that is switched on and stays. */
export function stepMotion(oscillator: Oscillator, start: Motion, force: number, time: number): Motion {
  const rest = force / oscillator.stiffness;
  const about = freeMotion(oscillator, { position: start.position - rest, velocity: start.velocity }, time);
  return { position: about.position + rest, velocity: about.velocity };
}

/** Steady answer to a force of amplitude force, N, at drive, rad/s: amplitude, m, and lag behind the force, rad. */
export function forcedResponse(
  oscillator: Oscillator,
  force: number,
  drive: number,
): { amplitude: number; lag: number } {
  const omega = naturalFrequency(oscillator);
  const real = omega * omega - drive * drive;
  const imaginary = 2 * oscillator.dampingRatio * omega * drive;
  return { amplitude: force / oscillator.mass / Math.hypot(real, imaginary), lag: Math.atan2(imaginary, real) };
}
