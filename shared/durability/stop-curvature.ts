/** Stress of a petal that lies on its curved stop. */

/**
 * Radius, m, of the circular stop that lifts the tip by `lift` over an arc of `length`: R (1 − cos(L/R)) = lift.
 * Solved by Newton's method from R = L²/(2 lift). Infinity for zero lift.
 */
export function stopRadius(length: number, lift: number): number {
  if (lift <= 0) return Number.POSITIVE_INFINITY;
  let radius = (length * length) / (2 * lift);
  for (let i = 0; i < 20; i++) {
    const a = length / radius;
    const error = radius * (1 - Math.cos(a)) - lift;
    const slope = 1 - Math.cos(a) - a * Math.sin(a);
    const step = error / slope;
    radius -= step;
    if (Math.abs(step) < 1e-12 * radius) break;
  }
  return radius;
}

/** Bending stress of strip wrapped on radius R: σ = E t/(2 R), plane stress. Pa. */
export function wrapStress(modulus: number, thickness: number, radius: number): number {
  return (modulus * thickness) / (2 * radius);
}

/**
 * Greatest root stress on the way to the stop, Pa: a first-mode petal (curvature 3.516 δ/L² at the root) begins to lie
 * on the arc when it is as curved as the arc, and from then on the arc sets the curvature.
 */
export function rootStressAgainstStop(
  modulus: number,
  thickness: number,
  length: number,
  lift: number,
  stopLift: number,
): number {
  const free = (3.516 * modulus * thickness * lift) / (2 * length * length);
  return Math.min(free, wrapStress(modulus, thickness, stopRadius(length, stopLift)));
}
