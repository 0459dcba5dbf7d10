/** Manufacturers’ standard gauge for uncoated steel sheet. Stainless is sold by slightly different figures: measure. */

/** Thickness in inches by gauge number. */
const INCHES: readonly (readonly [number, number])[] = [
  [7, 0.1793],
  [8, 0.1644],
  [9, 0.1495],
  [10, 0.1345],
  [11, 0.1196],
  [12, 0.1046],
  [13, 0.0897],
  [14, 0.0747],
  [15, 0.0673],
  [16, 0.0598],
  [17, 0.0538],
  [18, 0.0478],
  [19, 0.0418],
  [20, 0.0359],
  [21, 0.0329],
  [22, 0.0299],
  [23, 0.0269],
  [24, 0.0239],
  [25, 0.0209],
  [26, 0.0179],
  [27, 0.0164],
  [28, 0.0149],
  [29, 0.0135],
  [30, 0.012],
];

export interface Gauge {
  gauge: number;
  /** m. */
  thickness: number;
}

/** Thickest first. Source: manufacturers’ standard gauge table. */
export const gaugeTable: readonly Gauge[] = INCHES.map(([gauge, inches]) => ({ gauge, thickness: inches * 0.0254 }));

/** The gauge nearest to `thickness`, m. */
export function nearestGauge(thickness: number): Gauge {
  return gaugeTable.reduce((best, g) =>
    Math.abs(g.thickness - thickness) < Math.abs(best.thickness - thickness) ? g : best,
  );
}

/** The next thicker gauge, or null above the table. */
export function nextThicker(thickness: number): Gauge | null {
  const thicker = gaugeTable.filter((g) => g.thickness > thickness * 1.02);
  return thicker.length > 0 ? thicker[thicker.length - 1] : null;
}
