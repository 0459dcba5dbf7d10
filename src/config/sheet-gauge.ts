/**
 * Manufacturers' standard gauge for uncoated steel sheet: gauge number → thickness.
 * Source: the published table of the manufacturers' standard gauge (41.82 lb/ft² per inch of thickness), inches.
 */

const METRES_PER_INCH = 0.0254;

const GAUGE_INCHES: Record<number, number> = {
  3: 0.2391,
  4: 0.2242,
  5: 0.2092,
  6: 0.1943,
  7: 0.1793,
  8: 0.1644,
  9: 0.1495,
  10: 0.1345,
  11: 0.1196,
  12: 0.1046,
  13: 0.0897,
  14: 0.0747,
  15: 0.0673,
  16: 0.0598,
  17: 0.0538,
  18: 0.0478,
  19: 0.0418,
  20: 0.0359,
  21: 0.0329,
  22: 0.0299,
  23: 0.0269,
  24: 0.0239,
  25: 0.0209,
  26: 0.0179,
  27: 0.0164,
  28: 0.0149,
  29: 0.0135,
  30: 0.012,
  31: 0.0105,
  32: 0.0097,
  33: 0.009,
  34: 0.0082,
  35: 0.0075,
  36: 0.0067,
  37: 0.0064,
  38: 0.006,
};

/** Thickness of a steel sheet of that gauge, m; null outside 3 to 38. */
export function sheetGaugeThickness(gauge: number): number | null {
  const inches = GAUGE_INCHES[gauge];
  return inches === undefined ? null : inches * METRES_PER_INCH;
}
