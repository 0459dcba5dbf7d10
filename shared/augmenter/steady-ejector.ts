/**
 * Steady ejector with a mixing tube of constant area, by control volumes. Subsonic and of low Mach number: each stream
 * keeps its density until they mix, and mixing keeps enthalpy, so volume flows add (equal heat capacities).
 *
 *     station 1, tube entry:   p_a − p_1 = (1 + K) ½ρ_a V_1²                 air drawn in past the lip, K heads lost
 *                              p_a + ½ρ_j U² = p_1 + ½ρ_j V_j²               jet sped up by the low pressure
 *     mass and energy:         ṁ = ρ_j V_j A_j + ρ_a V_1 (A − A_j),   V_2 A = V_j A_j + V_1 (A − A_j)
 *     momentum:                p_1 A + ρ_j V_j² A_j + ρ_a V_1² (A − A_j) = p_2 A + ṁ V_2 + F ½ρ_2 V_2² A
 *     diffuser, ratio R:       p_a − p_2 = η ½ρ_2 V_2² (1 − 1/R²),   V_e = V_2/R       (R = 1: p_2 = p_a)
 *     thrust ratio             ṁ V_e / (ρ_j V_j A_j U)           the same primary flow, expanded freely, is the yardstick
 *
 * F = 4 f L/D is the wall loss in dynamic heads. Loss-free and without diffuser the ratio tends to 2 as A/A_j grows.
 * Source: von Kármán, "Theoretical Remarks on Thrust Augmentation", Reissner Anniversary Volume (1949), with losses added.
 */
export interface SteadyEjector {
  /** Tube area over jet area, above 1. */
  areaRatio: number;
  /** Jet density over density of the outside air, both at outside pressure. */
  densityRatio: number;
  /** K, dynamic heads lost at the lip by the air drawn in. */
  lipLoss?: number;
  /** F = 4 f L/D, dynamic heads lost to the tube wall. */
  wallLoss?: number;
  /** Exit area over tube area, 1 or more. */
  diffuserAreaRatio?: number;
  /** Part of the ideal pressure rise that the diffuser gives, 0 to 1. */
  diffuserEfficiency?: number;
}

export interface SteadyEjectorResult {
  /** Thrust with over thrust without. */
  thrustRatio: number;
  /** Air drawn in over jet flow, by mass. */
  entrainmentRatio: number;
  /** Entry velocity of the outside air over the free jet velocity. */
  entryVelocity: number;
}

/** Throws RangeError for an area ratio of 1 or less, a diffuser that narrows, or a density or loss below zero. */
export function steadyEjector(ejector: SteadyEjector): SteadyEjectorResult {
  const { areaRatio, densityRatio, lipLoss = 0, wallLoss = 0, diffuserAreaRatio = 1, diffuserEfficiency = 0 } = ejector;
  if (!(areaRatio > 1))
    throw new RangeError(`An ejector tube must be wider than its jet; got an area ratio of ${areaRatio}.`);
  if (!(densityRatio > 0))
    throw new RangeError(`Jet density over air density must be above zero; got ${densityRatio}.`);
  if (!(diffuserAreaRatio >= 1))
    throw new RangeError(`A diffuser's exit must not be narrower than its entry; got ${diffuserAreaRatio}.`);
  if (!(lipLoss >= 0 && wallLoss >= 0 && diffuserEfficiency >= 0 && diffuserEfficiency <= 1)) {
    throw new RangeError('Lip and wall losses must be zero or more and diffuser efficiency between 0 and 1.');
  }
  // Units: A_j = 1, U = 1, ρ_a = 1; pressures above p_a.
  const airArea = areaRatio - 1;
  const recovery = diffuserEfficiency * (1 - 1 / diffuserAreaRatio ** 2);

  const flowAt = (entry: number) => {
    const suction = 0.5 * (1 + lipLoss) * entry * entry;
    const jet = Math.sqrt(1 + (2 * suction) / densityRatio);
    const jetMass = densityRatio * jet;
    const airMass = entry * airArea;
    const mixed = (jet + entry * airArea) / areaRatio;
    const mass = jetMass + airMass;
    const head = (0.5 * mass * mixed) / areaRatio;
    const into = -suction * areaRatio + jetMass * jet + airMass * entry;
    const outOf = -recovery * head * areaRatio + mass * mixed + wallLoss * head * areaRatio;
    return { surplus: into - outOf, jetMass, airMass, mass, mixed };
  };
  // More air drawn in leaves less momentum over; with none there is a surplus unless walls eat it all.
  let high = 1;
  while (flowAt(high).surplus > 0 && high < 1e3) high *= 2;
  let low = 0;
  for (let i = 0; i < 100; i++) {
    const middle = 0.5 * (low + high);
    if (flowAt(middle).surplus > 0) low = middle;
    else high = middle;
  }
  const flow = flowAt(low);
  return {
    thrustRatio: (flow.mass * flow.mixed) / diffuserAreaRatio / flow.jetMass,
    entrainmentRatio: flow.airMass / flow.jetMass,
    entryVelocity: low,
  };
}
