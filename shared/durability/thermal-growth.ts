/** Free growth, m, of pieces of `length` m warmed from `cold` to `hot` K: Σ α ΔT L. */
export function thermalGrowth(
  expansion: number,
  lengths: readonly number[],
  hot: readonly number[],
  cold: number,
): number {
  return lengths.reduce((sum, length, i) => sum + expansion * length * (hot[i] - cold), 0);
}

/** Stress, Pa, if that growth were held at both ends: σ = E ε. */
export function restrainedStress(modulus: number, growth: number, length: number): number {
  return (modulus * growth) / length;
}
