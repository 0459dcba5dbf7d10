/** A material property against temperature: straight lines between points, held constant beyond both ends. */
export interface PropertyTable {
  /** K, rising. */
  temperature: readonly number[];
  value: readonly number[];
}

export const CELSIUS = 273.15;

/** Builds a table from (°C, value) points, each value multiplied by `scale`. */
export function tableFromCelsius(points: readonly (readonly [number, number])[], scale = 1): PropertyTable {
  return { temperature: points.map((p) => p[0] + CELSIUS), value: points.map((p) => p[1] * scale) };
}

/** Linear interpolation at `temperature`, K. NaN in, NaN out, so that a caller can say "not computed". */
export function valueAt(table: PropertyTable, temperature: number): number {
  const { temperature: t, value: v } = table;
  if (Number.isNaN(temperature)) return Number.NaN;
  const last = t.length - 1;
  if (temperature <= t[0]) return v[0];
  if (temperature >= t[last]) return v[last];
  let i = 1;
  while (t[i] < temperature) i++;
  const w = (temperature - t[i - 1]) / (t[i] - t[i - 1]);
  return v[i - 1] + w * (v[i] - v[i - 1]);
}

/** Interpolates log(value) linearly in 1/T and extrapolates along the end slopes: for Arrhenius-like rates. Values must be > 0. */
export function arrheniusAt(table: PropertyTable, temperature: number): number {
  const { temperature: t, value: v } = table;
  let i = 1;
  while (i < t.length - 1 && t[i] < temperature) i++;
  const x0 = 1 / t[i - 1];
  const x1 = 1 / t[i];
  const w = (1 / temperature - x0) / (x1 - x0);
  return Math.exp(Math.log(v[i - 1]) + w * (Math.log(v[i]) - Math.log(v[i - 1])));
}
