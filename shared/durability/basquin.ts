/**
 * Stress–life: σa = σf′ (2N)^b, Basquin, Proc. ASTM 10 (1910) 625; coefficients in the manner of SAE J1099.
 * Reduction factors (surface, edge) act in full at 10⁶ cycles and not at all at one cycle, which tilts the line between
 * (Shigley, Mechanical Engineering Design). Beyond 10⁶ the line goes on with exponent b: no endurance limit is claimed
 * (Sonsino, Int. J. Fatigue 29 (2007) 2246).
 */
export interface BasquinLine {
  /** σf′, Pa. */
  coefficient: number;
  /** b, negative. */
  exponent: number;
}

const KNEE = 1e6;
/** Longer lives mean nothing: 10¹² cycles are years of running. */
const MOST_CYCLES = 1e12;

/** Amplitude, Pa, that breaks half of the specimens in `cycles`. */
export function fatigueStrength(line: BasquinLine, cycles: number, reduction = 1): number {
  const tilt = Math.min(Math.log10(Math.max(cycles, 1)) / Math.log10(KNEE), 1);
  return line.coefficient * (2 * cycles) ** line.exponent * reduction ** tilt;
}

/** Median cycles to failure, 1 to 10¹², at fully reversed `amplitude`, Pa. */
export function fatigueCycles(line: BasquinLine, amplitude: number, reduction = 1): number {
  if (!(amplitude > 0)) return amplitude === 0 ? MOST_CYCLES : Number.NaN;
  const atKnee = fatigueStrength(line, KNEE, reduction);
  const slope = amplitude >= atKnee ? slopeAt(line, 1, reduction) : line.exponent;
  const cycles = KNEE * (amplitude / atKnee) ** (1 / slope);
  return Math.min(Math.max(cycles, 1), MOST_CYCLES);
}

/** Local slope d(log σ)/d(log N). */
export function slopeAt(line: BasquinLine, cycles: number, reduction = 1): number {
  return cycles < KNEE ? line.exponent + Math.log10(reduction) / Math.log10(KNEE) : line.exponent;
}
