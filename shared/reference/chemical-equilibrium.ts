/**
 * Composition of hot burnt gas in chemical equilibrium, by Gibbs (or Helmholtz) minimisation with element potentials.
 *
 *     μ_j/RT = g_j°/RT + ln(n_j RT/(V p°)),   minimum of Σ n_j μ_j with Σ_j a_ij n_j = b_i
 *     Newton:  Σ_k (Σ_j a_ij a_kj n_j) π_k [+ Σ_j a_ij n_j Δln n] = b_i − Σ_j a_ij n_j + Σ_j a_ij n_j μ_j/RT
 *              Δln n_j = Σ_i a_ij π_i − μ_j/RT [+ Δln n]            [bracketed terms at given pressure only]
 *
 * Source: Gordon and McBride, "Computer Program for Calculation of Complex Chemical Equilibrium Compositions", NASA
 * RP-1311 (1994), part I. Species: CO2, H2O, CO, H2, O2, OH, H, O, N2, NO, Ar.
 */
import { lusolve } from 'mathjs';
import { MOLAR_GAS_CONSTANT, molarEnthalpy, molarEntropy, SPECIES, type SpeciesName } from '../gas/nasa-polynomials.ts';

export const EQUILIBRIUM_SPECIES = [
  'CO2',
  'H2O',
  'CO',
  'H2',
  'O2',
  'OH',
  'H',
  'O',
  'N2',
  'NO',
  'Ar',
] as const satisfies SpeciesName[];
export type Element = 'C' | 'H' | 'O' | 'N' | 'Ar';
export type Elements = Record<Element, number>;

const ELEMENTS: readonly Element[] = ['C', 'H', 'O', 'N', 'Ar'];
const STANDARD_PRESSURE = 1e5;

/** What is held while the gas finds its equilibrium: pressure, Pa, or volume, m³ (for the moles given). */
export type Held = { pressure: number } | { volume: number };

/**
 * Moles of each of EQUILIBRIUM_SPECIES at a temperature, K, for given moles of each element.
 * Throws Error when Newton's method has not settled after 300 steps.
 */
export function equilibrium(elements: Elements, temperature: number, held: Held): Map<SpeciesName, number> {
  const present = ELEMENTS.filter((element) => elements[element] > 0);
  const names = EQUILIBRIUM_SPECIES.filter((name) =>
    ELEMENTS.every((element) => !(SPECIES[name].atoms[element] ?? 0) || elements[element] > 0),
  );
  const atoms = names.map((name) => present.map((element) => SPECIES[name].atoms[element] ?? 0));
  const standard = names.map(
    (name) => (molarEnthalpy(name, temperature) / temperature - molarEntropy(name, temperature)) / MOLAR_GAS_CONSTANT,
  );
  const atPressure = 'pressure' in held;
  const scale = present.reduce((sum, element) => sum + elements[element], 0);
  let total = scale / 2;
  const n = names.map(() => total / names.length);
  const size = present.length + (atPressure ? 1 : 0);

  for (let step = 0; step < 300; step++) {
    const volume = 'volume' in held ? held.volume : (total * MOLAR_GAS_CONSTANT * temperature) / held.pressure;
    const toPressure = (MOLAR_GAS_CONSTANT * temperature) / (volume * STANDARD_PRESSURE);
    const mu = n.map((nj, j) => standard[j] + Math.log(nj * toPressure));

    const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
    const right = new Array<number>(size).fill(0);
    present.forEach((element, i) => {
      right[i] = elements[element];
      n.forEach((nj, j) => {
        const share = atoms[j][i] * nj;
        right[i] += share * (mu[j] - 1);
        present.forEach((_, k) => {
          matrix[i][k] += share * atoms[j][k];
        });
        if (atPressure) {
          matrix[i][size - 1] += share;
          matrix[size - 1][i] += share;
        }
      });
    });
    if (atPressure) {
      const sum = n.reduce((a, b) => a + b, 0);
      matrix[size - 1][size - 1] = sum - total;
      right[size - 1] = total - sum + n.reduce((a, nj, j) => a + nj * mu[j], 0);
    }
    const solution = (lusolve(matrix, right) as number[][]).map((row) => row[0]);
    const dLnTotal = atPressure ? solution[size - 1] : 0;
    const dLn = n.map((_, j) => dLnTotal - mu[j] + present.reduce((sum, _e, i) => sum + atoms[j][i] * solution[i], 0));

    // Limit growth of what matters to e², of traces to one per cent of the whole; shrinking is free.
    let damping = Math.min(1, 2 / Math.max(Math.abs(dLnTotal), 1e-300));
    n.forEach((nj, j) => {
      if (dLn[j] <= 0) return;
      const logShare = Math.log(nj / total);
      const most = logShare > -18 ? 2 : -logShare - 4.6;
      damping = Math.min(damping, most / dLn[j]);
    });
    n.forEach((nj, j) => {
      n[j] = Math.max(nj * Math.exp(damping * dLn[j]), 1e-80 * scale);
    });
    total *= Math.exp(damping * dLnTotal);
    if (!atPressure) total = n.reduce((a, b) => a + b, 0);
    const change = n.reduce((most, nj, j) => Math.max(most, (nj / total) * Math.abs(dLn[j])), Math.abs(dLnTotal));
    if (damping === 1 && change < 1e-12) return new Map(names.map((name, j) => [name, n[j]]));
  }
  throw new Error(`No chemical equilibrium found at ${temperature} K: Newton's method did not settle in 300 steps.`);
}
