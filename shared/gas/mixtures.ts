/**
 * The three gases that the model mixes: dry air, fuel vapour, and complete products of a stoichiometric burn.
 *
 * Products are frozen: carbon to CO2, hydrogen to H2O, no dissociation. Lean of stoichiometric the spare air stays
 * air; rich, the spare fuel stays fuel vapour. So any state is a blend of these three by mass.
 */
import type { FuelName } from './fuels.ts';
import {
  ATOMIC_MASS,
  MOLAR_GAS_CONSTANT,
  molarEnthalpy,
  molarHeatCapacity,
  REFERENCE_TEMPERATURE,
  SPECIES,
  type SpeciesName,
} from './nasa-polynomials.ts';

export interface Mixture {
  /** Mole fractions, sum 1. */
  moles: readonly (readonly [SpeciesName, number])[];
  /** kg/mol. */
  molarMass: number;
  /** J/(kg K). */
  gasConstant: number;
}

/** A mixture from relative mole numbers. Throws RangeError when a number is negative or all are zero. */
export function mixture(amounts: Partial<Record<SpeciesName, number>>): Mixture {
  const entries = Object.entries(amounts) as [SpeciesName, number][];
  const total = entries.reduce((sum, [, n]) => sum + n, 0);
  if (!(total > 0) || entries.some(([, n]) => n < 0)) {
    throw new RangeError('A gas mixture needs mole numbers of zero or more that add up to more than zero.');
  }
  const moles = entries.filter(([, n]) => n > 0).map(([name, n]) => [name, n / total] as const);
  const molarMass = moles.reduce((sum, [name, x]) => sum + x * SPECIES[name].molarMass, 0);
  return { moles, molarMass, gasConstant: MOLAR_GAS_CONSTANT / molarMass };
}

/** cp of a mixture, J/(kg K). */
export function heatCapacity(gas: Mixture, temperature: number): number {
  return gas.moles.reduce((sum, [name, x]) => sum + x * molarHeatCapacity(name, temperature), 0) / gas.molarMass;
}

/** Enthalpy with heat of formation, J/kg. */
export function enthalpy(gas: Mixture, temperature: number): number {
  return gas.moles.reduce((sum, [name, x]) => sum + x * molarEnthalpy(name, temperature), 0) / gas.molarMass;
}

/** Enthalpy above 298.15 K, J/kg. */
export function sensibleEnthalpy(gas: Mixture, temperature: number): number {
  return enthalpy(gas, temperature) - enthalpy(gas, REFERENCE_TEMPERATURE);
}

/** Dry air by moles. Source: U.S. Standard Atmosphere 1976, table 3, without the gases rarer than CO2. */
export const DRY_AIR = mixture({ N2: 0.78084, O2: 0.209476, Ar: 0.00934, CO2: 0.000314 });

/** Carbon and hydrogen atoms in the mean fuel molecule: propane C3H8; petrol C8H15 (H/C 1.875, usual for petrol). */
export const FUEL_FORMULA: Readonly<Record<FuelName, { carbon: number; hydrogen: number }>> = {
  propane: { carbon: 3, hydrogen: 8 },
  petrol: { carbon: 8, hydrogen: 15 },
};

/**
 * Vapour whose heat capacity per kg stands for the fuel's. Petrol: iso-octane and toluene, 0.6308 : 0.3692 by moles,
 * the blend of the two with the H/C of C8H15 (toluene reference fuel; our choice of proportion).
 */
export const FUEL_VAPOUR: Readonly<Record<FuelName, Mixture>> = {
  propane: mixture({ C3H8: 1 }),
  petrol: mixture({ iC8H18: 0.6308, C7H8: 0.3692 }),
};

/** Moles of O2 that burn one mole of fuel completely. */
export function oxygenDemand(fuel: FuelName): number {
  const { carbon, hydrogen } = FUEL_FORMULA[fuel];
  return carbon + hydrogen / 4;
}

/** Mole fraction of one gas in dry air. */
function inAir(name: SpeciesName): number {
  return DRY_AIR.moles.find(([gas]) => gas === name)?.[1] ?? 0;
}

/** Moles of dry air that burn one mole of fuel completely. */
export function airDemand(fuel: FuelName): number {
  return oxygenDemand(fuel) / inAir('O2');
}

/** Complete products of a stoichiometric burn in dry air, frozen. */
export function stoichiometricProducts(fuel: FuelName): Mixture {
  const { carbon, hydrogen } = FUEL_FORMULA[fuel];
  const air = airDemand(fuel);
  return mixture({
    CO2: carbon + air * inAir('CO2'),
    H2O: hydrogen / 2,
    N2: air * inAir('N2'),
    Ar: air * inAir('Ar'),
  });
}

/** kg of dry air that burns 1 kg of fuel, from the formula. */
export function stoichiometricAirFuelRatio(fuel: FuelName): number {
  const { carbon, hydrogen } = FUEL_FORMULA[fuel];
  const fuelMolarMass = carbon * ATOMIC_MASS.C + hydrogen * ATOMIC_MASS.H;
  return (airDemand(fuel) * DRY_AIR.molarMass) / fuelMolarMass;
}

/** Lower heating value of propane vapour at 298.15 K from formation enthalpies, J/kg. */
export function propaneLowerHeatingValue(): number {
  const t = REFERENCE_TEMPERATURE;
  const reactants = molarEnthalpy('C3H8', t) + 5 * molarEnthalpy('O2', t);
  const products = 3 * molarEnthalpy('CO2', t) + 4 * molarEnthalpy('H2O', t);
  return (reactants - products) / SPECIES.C3H8.molarMass;
}
