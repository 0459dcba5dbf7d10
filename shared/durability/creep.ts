/** Creep rupture by the Larson–Miller parameter P = T (20 + log10 t), T in K, t in hours; Trans. ASME 74 (1952) 765. */
import type { PropertyTable } from './property-table.ts';

const C = 20;
const LONGEST_HOURS = 1e6;

/** P of the hour figure. */
export function larsonMiller(temperature: number, hours: number): number {
  return temperature * (C + Math.log10(hours));
}

/**
 * Median hours to rupture at `stress`, Pa, and `temperature`, K, from a table of 1000 h rupture stresses.
 * log(stress) against P is taken straight between the points and beyond the ends. Capped at 10⁶ h.
 */
export function ruptureHours(rupture1000h: PropertyTable, stress: number, temperature: number): number {
  if (!(stress > 0)) return LONGEST_HOURS;
  const p = rupture1000h.temperature.map((t) => larsonMiller(t, 1000));
  const s = rupture1000h.value.map(Math.log);
  const target = Math.log(stress);
  let i = 1;
  while (i < s.length - 1 && s[i] > target) i++;
  const parameter = p[i - 1] + ((target - s[i - 1]) / (s[i] - s[i - 1])) * (p[i] - p[i - 1]);
  return Math.min(10 ** (parameter / temperature - C), LONGEST_HOURS);
}
