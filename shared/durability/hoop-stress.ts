/** Hoop stress of a thin round wall under inside gauge pressure: σ = p D/(2 t). Thin-shell theory (Timoshenko). Pa. */
export function hoopStress(gaugePressure: number, diameter: number, thickness: number): number {
  return (gaugePressure * diameter) / (2 * thickness);
}

/** Cone: the hoop stress of the circle, divided by the cosine of the half-angle (rad). */
export function coneHoopStress(gaugePressure: number, diameter: number, thickness: number, halfAngle: number): number {
  return hoopStress(gaugePressure, diameter, thickness) / Math.cos(halfAngle);
}
