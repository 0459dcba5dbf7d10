/**
 * A carburettor as a hole of fixed effective area: Q = CdA √(2 Δp/ρ), with CdA from its rated flow at its rating
 * depression. Convention: one- and two-barrel 3.0 inHg, four-barrel 1.5 inHg. Bernoulli, low speed.
 */
export const INCH_MERCURY = 3386.39;

/** Effective area, m², from rated volume flow, m³/s, at `depression`, Pa, in air of `density`, kg/m³. */
export function effectiveArea(ratedFlow: number, depression: number, density: number): number {
  return ratedFlow / Math.sqrt((2 * depression) / density);
}

/** Depression, Pa, at `volumeFlow`, m³/s. */
export function depressionAt(volumeFlow: number, area: number, density: number): number {
  return (density / 2) * (volumeFlow / area) ** 2;
}

/** Rated flow at another depression: Q ∝ √Δp. */
export function ratingAt(ratedFlow: number, depression: number, otherDepression: number): number {
  return ratedFlow * Math.sqrt(otherDepression / depression);
}

export interface PulsatingDepression {
  /** Flow-weighted mean, Pa: Σ ṁ Δp / Σ ṁ, what the charge has to pay. */
  mean: number;
  peak: number;
  /** With a plenum large enough to smooth the flow, Pa. */
  smoothed: number;
}

/** Depression over one cycle of intake flow (kg/s, equal time steps, inwards positive), with no plenum between. */
export function pulsatingDepression(massFlow: readonly number[], area: number, density: number): PulsatingDepression {
  let flow = 0;
  let weighted = 0;
  let peak = 0;
  for (const m of massFlow) {
    const inward = Math.max(m, 0);
    const drop = depressionAt(inward / density, area, density);
    flow += inward;
    weighted += inward * drop;
    peak = Math.max(peak, drop);
  }
  const mean = flow > 0 ? weighted / flow : 0;
  return { mean, peak, smoothed: depressionAt(flow / Math.max(massFlow.length, 1) / density, area, density) };
}

/**
 * Share of the air flow lost when a depression `drop` stands in series with the suction `suction` that draws the air:
 * both go as flow squared, so the flow falls by 1/√(1 + drop/suction). Own estimate from Bernoulli in series.
 */
export function flowLoss(drop: number, suction: number): number {
  return 1 - 1 / Math.sqrt(1 + drop / suction);
}
