/**
 * Adiabatic flame temperature of fuel vapour in dry air.
 *
 *     constant pressure:  H(products, T) = H(reactants, T_0)
 *     constant volume:    U(products, T) = U(reactants, T_0),  U = H − n R T
 *
 * Without dissociation the products are the frozen complete ones that the performance model burns to, with spare air or
 * spare fuel vapour left over; with it they are in equilibrium (see chemical-equilibrium.ts). The model's gas is
 * therefore too hot near stoichiometric by the difference: for propane about 130 K at constant pressure.
 */
import type { FuelName } from '../gas/fuels.ts';
import { airDemand, DRY_AIR, FUEL_FORMULA, FUEL_VAPOUR, type Mixture } from '../gas/mixtures.ts';
import { MOLAR_GAS_CONSTANT, molarEnthalpy, SPECIES, type SpeciesName } from '../gas/nasa-polynomials.ts';
import { bisect } from './bisect.ts';
import { type Elements, equilibrium } from './chemical-equilibrium.ts';

export interface Flame {
  fuel: FuelName;
  equivalenceRatio: number;
  /** Of fuel vapour and air before burning, K and Pa. */
  temperature: number;
  pressure: number;
  held: 'pressure' | 'volume';
  dissociation: boolean;
}

type Moles = Map<SpeciesName, number>;

/** K. */
export function adiabaticFlameTemperature(flame: Flame): number {
  const { fuel, equivalenceRatio: phi, temperature, pressure, held, dissociation } = flame;
  // One C-H formula unit of the table fuel per unit of surrogate carbon, so that air demand stays exact.
  const units = FUEL_FORMULA[fuel].carbon / carbonPerMole(FUEL_VAPOUR[fuel]);
  const air = airDemand(fuel) / phi;
  const reactants: Moles = new Map();
  addMixture(reactants, FUEL_VAPOUR[fuel], units);
  addMixture(reactants, DRY_AIR, air);

  const volume = (count(reactants) * MOLAR_GAS_CONSTANT * temperature) / pressure;
  const content = (moles: Moles, t: number) =>
    enthalpy(moles, t) - (held === 'volume' ? count(moles) * MOLAR_GAS_CONSTANT * t : 0);
  const frozen = completeProducts(reactants, fuel, phi);
  const atoms = elementsOf(reactants);
  const products = (t: number) =>
    dissociation ? equilibrium(atoms, t, held === 'volume' ? { volume } : { pressure }) : frozen;
  const before = content(reactants, temperature);
  return bisect((t) => content(products(t), t) - before, 500, 4500);
}

/** CO2, H2O and what is left over: air when lean, fuel vapour when rich. */
function completeProducts(reactants: Moles, fuel: FuelName, phi: number): Moles {
  const burnt = Math.min(1, 1 / phi);
  const left: Moles = new Map(reactants);
  let carbon = 0;
  let hydrogen = 0;
  for (const [name] of FUEL_VAPOUR[fuel].moles) {
    const used = (reactants.get(name) ?? 0) * burnt;
    left.set(name, (reactants.get(name) ?? 0) - used);
    carbon += used * (SPECIES[name].atoms.C ?? 0);
    hydrogen += used * (SPECIES[name].atoms.H ?? 0);
  }
  add(left, 'O2', -(carbon + hydrogen / 4));
  add(left, 'CO2', carbon);
  add(left, 'H2O', hydrogen / 2);
  return left;
}

function elementsOf(moles: Moles): Elements {
  const sum: Elements = { C: 0, H: 0, O: 0, N: 0, Ar: 0 };
  for (const [name, n] of moles) {
    for (const [element, number] of Object.entries(SPECIES[name].atoms)) sum[element as keyof Elements] += n * number;
  }
  return sum;
}

function addMixture(moles: Moles, gas: Mixture, amount: number): void {
  for (const [name, x] of gas.moles) add(moles, name, x * amount);
}

function add(moles: Moles, name: SpeciesName, amount: number): void {
  moles.set(name, (moles.get(name) ?? 0) + amount);
}

function count(moles: Moles): number {
  return [...moles.values()].reduce((sum, n) => sum + n, 0);
}

function enthalpy(moles: Moles, temperature: number): number {
  return [...moles].reduce((sum, [name, n]) => sum + n * molarEnthalpy(name, temperature), 0);
}

function carbonPerMole(gas: Mixture): number {
  return gas.moles.reduce((sum, [name, x]) => sum + x * (SPECIES[name].atoms.C ?? 0), 0);
}
