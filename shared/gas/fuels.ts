/** Fuels that the model knows, with the properties that burning and metering need. */

export type FuelName = 'propane' | 'petrol';

export interface Fuel {
  name: FuelName;
  /** Lower heating value at 25 °C, J/kg. */
  lowerHeatingValue: number;
  /** kg of air that burns 1 kg of fuel completely. */
  stoichiometricAirFuelRatio: number;
  /** kg/kmol. */
  molarMass: number;
}

/** Source: fuel tables; propane computed from formation enthalpies (46.33 MJ/kg, 15.68). Petrol vapour taken as C8H15. */
export const FUELS: Record<FuelName, Fuel> = {
  propane: { name: 'propane', lowerHeatingValue: 46.33e6, stoichiometricAirFuelRatio: 15.68, molarMass: 44.097 },
  petrol: { name: 'petrol', lowerHeatingValue: 43.4e6, stoichiometricAirFuelRatio: 14.7, molarMass: 111.2 },
};
