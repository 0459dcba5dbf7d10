/**
 * Longest daily exposure, minutes: t = 480/2^((L−85)/3). NIOSH, Criteria for a Recommended Standard: Occupational
 * Noise Exposure, publication 98-126 (1998).
 */
export function exposureMinutes(level: number): number {
  return 480 / 2 ** ((level - 85) / 3);
}

/** Level, dB(A), that is allowed for `minutes`. */
export function levelForMinutes(minutes: number): number {
  return 85 + 3 * Math.log2(480 / minutes);
}

/**
 * Protection that worn muffs or plugs give, dB: NIOSH derates labels (earmuffs by 25 %), and both together add about
 * 5 dB to the better one. A 30 dB muff over plugs: about 27 dB (from memory, confidence medium).
 */
export const DOUBLE_PROTECTION = 27;
