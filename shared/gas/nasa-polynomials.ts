/**
 * NASA seven-coefficient polynomials of the ideal-gas species that the model burns and breathes.
 *
 *     cp/R     = a1 + a2 T + a3 T² + a4 T³ + a5 T⁴
 *     h/(R T)  = a1 + a2 T/2 + a3 T²/3 + a4 T³/4 + a5 T⁴/5 + a6/T      (h includes the heat of formation at 298.15 K)
 *     s/R      = a1 ln T + a2 T + a3 T²/2 + a4 T³/3 + a5 T⁴/4 + a7     (at 1 bar)
 *
 * One set holds below 1000 K and one above. Fitted from 200 to 6000 K; beyond, cp stays at its end value.
 *
 * Source of form and coefficients: McBride, Gordon and Reno, "Coefficients for Calculating Thermodynamic and
 * Transport Properties of Individual Species", NASA TM-4513 (1993).
 */

/** Molar gas constant, J/(mol K); exact since the 2019 SI. */
export const MOLAR_GAS_CONSTANT = 8.314462618;

/** Temperature at which heats of formation and of combustion are given, K. */
export const REFERENCE_TEMPERATURE = 298.15;

export type SpeciesName =
  | 'N2'
  | 'O2'
  | 'Ar'
  | 'CO2'
  | 'H2O'
  | 'C3H8'
  | 'iC8H18'
  | 'C7H8'
  | 'CO'
  | 'H2'
  | 'OH'
  | 'H'
  | 'O'
  | 'NO';

type Coefficients = readonly [number, number, number, number, number, number, number];

export interface Species {
  /** kg/mol. */
  molarMass: number;
  /** Atoms in one molecule. */
  atoms: { C?: number; H?: number; O?: number; N?: number; Ar?: number };
  /** a1 … a7 from 200 to 1000 K, and from 1000 to 6000 K. */
  low: Coefficients;
  high: Coefficients;
}

const BREAK = 1000;
const LOWEST = 200;
const HIGHEST = 6000;

/** kg/mol; IUPAC abridged standard atomic weights. */
export const ATOMIC_MASS = { C: 0.012011, H: 0.001008, O: 0.015999, N: 0.014007, Ar: 0.03995 };

function species(atoms: Species['atoms'], low: Coefficients, high: Coefficients): Species {
  let molarMass = 0;
  for (const [element, count] of Object.entries(atoms)) {
    molarMass += count * ATOMIC_MASS[element as keyof typeof ATOMIC_MASS];
  }
  return { molarMass, atoms, low, high };
}

const FIVE_HALVES_ARGON: Coefficients = [2.5, 0, 0, 0, 0, -745.375, 4.37967491];

// biome-ignore format: one species a row keeps the coefficients comparable with the printed tables
export const SPECIES: Readonly<Record<SpeciesName, Species>> = {
  N2: species({ N: 2 },
    [3.53100528, -1.23660987e-4, -5.02999437e-7, 2.43530612e-9, -1.40881235e-12, -1046.97628, 2.96747468],
    [2.95257626, 1.39690057e-3, -4.92631691e-7, 7.86010367e-11, -4.60755321e-15, -923.948645, 5.87189252]),
  O2: species({ O: 2 },
    [3.78245636, -2.99673415e-3, 9.847302e-6, -9.68129508e-9, 3.24372836e-12, -1063.94356, 3.65767573],
    [3.66096083, 6.56365523e-4, -1.41149485e-7, 2.05797658e-11, -1.29913248e-15, -1215.97725, 3.41536184]),
  Ar: species({ Ar: 1 }, FIVE_HALVES_ARGON, FIVE_HALVES_ARGON),
  CO2: species({ C: 1, O: 2 },
    [2.35677352, 8.98459677e-3, -7.12356269e-6, 2.45919022e-9, -1.43699548e-13, -48371.9697, 9.90105222],
    [4.63659493, 2.74131991e-3, -9.95828531e-7, 1.60373011e-10, -9.16103468e-15, -49024.9341, -1.93534855]),
  H2O: species({ H: 2, O: 1 },
    [4.19864056, -2.0364341e-3, 6.52040211e-6, -5.48797062e-9, 1.77197817e-12, -30293.7267, -0.849032208],
    [2.67703787, 2.97318329e-3, -7.7376969e-7, 9.44336689e-11, -4.26900959e-15, -29885.8938, 6.88255571]),
  C3H8: species({ C: 3, H: 8 },
    [4.2110262, 1.71599803e-3, 7.06183472e-5, -9.19594116e-8, 3.64421372e-11, -14381.2106, 5.60930491],
    [6.66789363, 2.06120214e-2, -7.36553027e-6, 1.18440761e-9, -7.0695321e-14, -16274.8521, -13.1859503]),
  /** iso-octane (2,2,4-trimethylpentane). */
  iC8H18: species({ C: 8, H: 18 },
    [0.815737338, 7.32643959e-2, 1.78300688e-5, -6.9358962e-8, 3.21629382e-11, -30477.2862, 24.1509994],
    [15.9899273, 5.5318479e-2, -1.95267072e-5, 3.11779172e-9, -1.85312577e-13, -35875.7973, -60.1161414]),
  /** Toluene. */
  C7H8: species({ C: 7, H: 8 },
    [1.611914, 2.11188902e-2, 8.53221453e-5, -1.32566876e-7, 5.59406109e-11, 4096.51976, 20.2973614],
    [12.939475, 2.66921558e-2, -9.68420108e-6, 1.5739214e-9, -9.46670482e-14, -677.035769, -46.7255302]),
  CO: species({ C: 1, O: 1 },
    [3.57953347, -6.1035368e-4, 1.01681433e-6, 9.07005884e-10, -9.04424499e-13, -14344.086, 3.50840928],
    [3.04848583, 1.35172818e-3, -4.85794075e-7, 7.88536486e-11, -4.69807489e-15, -14266.1171, 6.0170979]),
  H2: species({ H: 2 },
    [2.34433112, 7.98052075e-3, -1.9478151e-5, 2.01572094e-8, -7.37611761e-12, -917.935173, 0.683010238],
    [2.93286579, 8.26607967e-4, -1.46402335e-7, 1.54100359e-11, -6.88804432e-16, -813.065597, -1.02432887]),
  OH: species({ O: 1, H: 1 },
    [3.99201543, -2.40131752e-3, 4.61793841e-6, -3.88113333e-9, 1.3641147e-12, 3615.08056, -0.103925458],
    [2.83864607, 1.10725586e-3, -2.93914978e-7, 4.20524247e-11, -2.42169092e-15, 3943.95852, 5.84452662]),
  H: species({ H: 1 },
    [2.5, 0, 0, 0, 0, 25473.6599, -0.446682853],
    [2.50000286, -5.65334214e-9, 3.63251723e-12, -9.1994972e-16, 7.95260746e-20, 25473.6589, -0.446698494]),
  O: species({ O: 1 },
    [3.1682671, -3.27931884e-3, 6.64306396e-6, -6.12806624e-9, 2.11265971e-12, 29122.2592, 2.05193346],
    [2.54363697, -2.73162486e-5, -4.1902952e-9, 4.95481845e-12, -4.79553694e-16, 29226.012, 4.92229457]),
  NO: species({ N: 1, O: 1 },
    [4.21859896, -4.63988124e-3, 1.10443049e-5, -9.34055507e-9, 2.80554874e-12, 9845.09964, 2.28061001],
    [3.26071234, 1.19101135e-3, -4.29122646e-7, 6.94481463e-11, -4.03295681e-15, 9921.43132, 6.36900518]),
};

/** Molar heat capacity at constant pressure, J/(mol K). temperature in K. */
export function molarHeatCapacity(name: SpeciesName, temperature: number): number {
  const t = clampToFit(temperature);
  const a = coefficients(name, t);
  return MOLAR_GAS_CONSTANT * (a[0] + t * (a[1] + t * (a[2] + t * (a[3] + t * a[4]))));
}

/** Molar enthalpy with heat of formation, J/mol. temperature in K. */
export function molarEnthalpy(name: SpeciesName, temperature: number): number {
  const t = clampToFit(temperature);
  const a = coefficients(name, t);
  const atFit = a[5] + t * (a[0] + t * (a[1] / 2 + t * (a[2] / 3 + t * (a[3] / 4 + (t * a[4]) / 5))));
  return MOLAR_GAS_CONSTANT * atFit + molarHeatCapacity(name, t) * (temperature - t);
}

/** Molar entropy at 1 bar, J/(mol K). temperature in K, above zero. */
export function molarEntropy(name: SpeciesName, temperature: number): number {
  const t = clampToFit(temperature);
  const a = coefficients(name, t);
  const atFit = a[0] * Math.log(t) + a[6] + t * (a[1] + t * (a[2] / 2 + t * (a[3] / 3 + (t * a[4]) / 4)));
  return MOLAR_GAS_CONSTANT * atFit + molarHeatCapacity(name, t) * Math.log(temperature / t);
}

function clampToFit(temperature: number): number {
  return Math.min(Math.max(temperature, LOWEST), HIGHEST);
}

function coefficients(name: SpeciesName, temperature: number): Coefficients {
  const entry = SPECIES[name];
  return temperature < BREAK ? entry.low : entry.high;
}
