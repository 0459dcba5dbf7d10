/**
 * Sliding wear after Archard, J. Appl. Phys. 24 (1953) 981: volume = K F s/H.
 * K of unlubricated steel on steel 10⁻⁴ to 10⁻³ (Rabinowicz, Friction and Wear of Materials; from memory, medium).
 */
export const DRY_STEEL_WEAR = 3e-4;

/** Volume worn, m³, by `force` N over `distance` m on `hardness` Pa. */
export function archardVolume(coefficient: number, force: number, distance: number, hardness: number): number {
  return (coefficient * force * distance) / hardness;
}
