/** Strip for reeds and bar for poppets: stiffness, strength and S–N line. */
import type { ValveMaterialId } from './material-ids.ts';
import { CELSIUS, type PropertyTable, tableFromCelsius } from './property-table.ts';

export interface ValveMaterial {
  id: ValveMaterialId;
  name: string;
  form: 'strip' | 'bar';
  /** kg/m³. */
  density: number;
  poisson: number;
  /** Pa. */
  modulus: PropertyTable;
  /** Ultimate tensile strength, Pa. */
  ultimate: PropertyTable;
  /** Basquin line of smooth specimens at room temperature, fully reversed: σa = coefficient · (2N)^exponent. Pa. */
  fatigue: { coefficient: number; exponent: number };
  /** Above this the temper or the oxide gives way in hours, K. */
  temperatureLimit: number;
  /** W/(m K). */
  conductivity: number;
  /** Indentation hardness, Pa, for wear. */
  hardness: number;
  sources: string;
}

const MPA = 1e6;
const GPA = 1e9;

/** Basquin coefficient that gives the amplitude `strength` at 10⁷ cycles. */
function through(strength: number, exponent: number): { coefficient: number; exponent: number } {
  return { coefficient: strength / 2e7 ** exponent, exponent };
}

const CARBON_STEEL_MODULUS = tableFromCelsius(
  [
    [25, 205],
    [200, 192],
    [400, 171],
    [500, 151],
    [700, 100],
  ],
  GPA,
);

export const VALVE_MATERIALS: Record<ValveMaterialId, ValveMaterial> = {
  'AISI-1095': {
    id: 'AISI-1095',
    name: 'AISI 1095 hardened and tempered strip',
    form: 'strip',
    density: 7850,
    poisson: 0.29,
    modulus: CARBON_STEEL_MODULUS,
    ultimate: tableFromCelsius(
      [
        [20, 1800],
        [200, 1750],
        [300, 1580],
        [400, 1200],
        [500, 750],
        [600, 400],
      ],
      MPA,
    ),
    fatigue: through(610 * MPA, -0.081),
    temperatureLimit: 300 + CELSIUS,
    conductivity: 45,
    hardness: 5000 * MPA,
    sources:
      'UTS 1600–2000 MPa and reversed-bending limit 580–640 MPa: strip-steel data (memory, medium-low); exponent −0.081 of hardened 1045 at 595 HB, SAE J1099; E(T) ASME II-D TM-1; hot strength from memory, confidence low',
  },
  'AISI-301-full-hard': {
    id: 'AISI-301-full-hard',
    name: 'stainless 301 full-hard strip',
    form: 'strip',
    density: 7930,
    poisson: 0.29,
    modulus: tableFromCelsius(
      [
        [20, 193],
        [200, 179],
        [400, 163],
        [500, 155],
        [700, 140],
      ],
      GPA,
    ),
    ultimate: tableFromCelsius(
      [
        [20, 1276],
        [200, 1100],
        [300, 1060],
        [400, 1000],
        [500, 850],
        [600, 600],
      ],
      MPA,
    ),
    fatigue: through(552 * MPA, -0.09),
    temperatureLimit: 400 + CELSIUS,
    conductivity: 16,
    hardness: 4000 * MPA,
    sources:
      'UTS 1276 MPa minimum: AMS 5519; endurance 552 MPa: handbook; exponent and hot strength from memory, confidence low',
  },
  'AISI-420': {
    id: 'AISI-420',
    name: 'stainless 420-type hardened valve strip',
    form: 'strip',
    density: 7700,
    poisson: 0.29,
    modulus: tableFromCelsius(
      [
        [20, 210],
        [200, 199],
        [400, 182],
        [500, 170],
        [700, 140],
      ],
      GPA,
    ),
    ultimate: tableFromCelsius(
      [
        [20, 1750],
        [200, 1650],
        [300, 1580],
        [400, 1450],
        [500, 1050],
        [600, 600],
      ],
      MPA,
    ),
    fatigue: through(680 * MPA, -0.085),
    temperatureLimit: 370 + CELSIUS,
    conductivity: 25,
    hardness: 5000 * MPA,
    sources:
      'valve-strip data of the 420 type: UTS 1700–1800 MPa, reversed bending 650–700 MPa (from memory, confidence medium-low)',
  },
  'Ti-6Al-4V': {
    id: 'Ti-6Al-4V',
    name: 'titanium Ti-6Al-4V',
    form: 'bar',
    density: 4430,
    poisson: 0.33,
    modulus: tableFromCelsius(
      [
        [20, 114],
        [315, 95],
        [540, 80],
      ],
      GPA,
    ),
    ultimate: tableFromCelsius(
      [
        [20, 1000],
        [150, 845],
        [260, 758],
        [370, 690],
        [540, 480],
        [700, 180],
      ],
      MPA,
    ),
    fatigue: through(590 * MPA, -0.07),
    temperatureLimit: 400 + CELSIUS,
    conductivity: 7,
    hardness: 3300 * MPA,
    sources:
      'E, density, endurance 570–620 MPa and UTS to 370 °C: published data sheets; exponent from memory, confidence low',
  },
  'valve-steel-21-4N': {
    id: 'valve-steel-21-4N',
    name: 'austenitic valve steel 21-4N',
    form: 'bar',
    density: 7750,
    poisson: 0.29,
    modulus: tableFromCelsius(
      [
        [20, 210],
        [400, 185],
        [600, 168],
        [760, 150],
      ],
      GPA,
    ),
    ultimate: tableFromCelsius(
      [
        [20, 1158],
        [400, 900],
        [600, 680],
        [760, 441],
        [870, 260],
      ],
      MPA,
    ),
    fatigue: through(460 * MPA, -0.09),
    temperatureLimit: 800 + CELSIUS,
    conductivity: 18,
    hardness: 3600 * MPA,
    sources:
      'UTS 1158 MPa at 20 °C and 441 MPa at 760 °C: published data sheet; fatigue as 0.40 UTS at 10⁷ (common practice, no source)',
  },
  'valve-steel-X45CrSi9-3': {
    id: 'valve-steel-X45CrSi9-3',
    name: 'martensitic valve steel X45CrSi9-3',
    form: 'bar',
    density: 7620,
    poisson: 0.29,
    modulus: tableFromCelsius(
      [
        [20, 210],
        [400, 185],
        [600, 160],
        [760, 130],
      ],
      GPA,
    ),
    ultimate: tableFromCelsius(
      [
        [20, 1000],
        [400, 780],
        [500, 600],
        [600, 350],
        [700, 180],
        [800, 90],
      ],
      MPA,
    ),
    fatigue: through(440 * MPA, -0.09),
    temperatureLimit: 600 + CELSIUS,
    conductivity: 17,
    hardness: 3200 * MPA,
    sources:
      'density and creep limit 600 °C: published data sheet (1.4718); hot UTS from memory (EN 10090), confidence medium-low; fatigue as 0.44 UTS at 10⁷ (common practice, no source)',
  },
};
