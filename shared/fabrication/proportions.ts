/**
 * Proportions of the parts that the design variables leave open: flanges, bolts, plates, bells, allowances.
 * All of them are common practice, no source. Lengths in metres.
 */

/** Longest course that is rolled in one piece, m. Longer sections are split into equal courses. */
export const LONGEST_COURSE = 1.2;

/** Strip left beyond the closing line of a rolled seam, m; trim to the line for a butt weld. */
export const SEAM_ALLOWANCE = 0.006;

/** Largest turn at one mitre of a segmented bend, rad. */
export const LARGEST_MITRE = Math.PI / 8;

/** Radius of the rounded lip of a bell over its throat diameter, and the conical segments that make it. */
export const BELL_RADIUS_RATIO = 0.25;
export const BELL_SEGMENTS = 3;

/** Slit between neighbouring petals, m. */
export const PETAL_SLIT = 0.0008;

/** Smallest rim of seat left outside the petal tips, m. */
export const PLATE_RIM = 0.002;

/** Smallest width of seat around a port, m. */
export const SEAT_LAND = 0.0012;

/** Overlap of a petal row's clamp strip, m. */
export const CLAMP_DEPTH = 0.01;

export const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** Thickness of the valve or seat plate, m, by chamber inside diameter. */
export function plateThickness(chamberDiameter: number): number {
  return roundTo(clamp(chamberDiameter / 30, 0.003, 0.008), 0.0005);
}

/** Thickness of the head flange ring, m. */
export function flangeThickness(chamberDiameter: number): number {
  return roundTo(clamp(chamberDiameter / 40, 0.002, 0.006), 0.0005);
}

/** Screw of the head flange: nominal and clearance-hole diameters, m (ISO 273 medium fit). */
export function flangeScrew(chamberDiameter: number): { name: string; diameter: number; hole: number } {
  if (chamberDiameter < 0.08) return { name: 'M4', diameter: 0.004, hole: 0.0045 };
  if (chamberDiameter < 0.16) return { name: 'M5', diameter: 0.005, hole: 0.0055 };
  if (chamberDiameter < 0.35) return { name: 'M6', diameter: 0.006, hole: 0.0066 };
  return { name: 'M8', diameter: 0.008, hole: 0.009 };
}

/** Head flange: radial width outside the shell, bolt circle and number of screws, m. */
export function headFlange(chamberDiameter: number, shellThickness: number) {
  const screw = flangeScrew(chamberDiameter);
  const innerDiameter = chamberDiameter + 2 * shellThickness;
  const width = 3.5 * screw.diameter;
  const boltCircle = innerDiameter + width;
  const screws = Math.max(6, 2 * Math.ceil((Math.PI * boltCircle) / 0.06 / 2));
  return {
    innerDiameter,
    outerDiameter: innerDiameter + 2 * width,
    boltCircle,
    screws,
    screw,
    thickness: flangeThickness(chamberDiameter),
  };
}

export function roundTo(value: number, step: number): number {
  return Math.round(value / step) * step;
}
