/**
 * Sheet for shells: strength, stiffness and oxidation against temperature.
 *
 * Strengths are typical values of annealed sheet, not guaranteed minima: the checks leave room for that.
 */
import type { SheetMaterialId } from './material-ids.ts';
import { CELSIUS, tableFromCelsius } from './property-table.ts';
import type { SheetMaterial } from './sheet-material.ts';
import { TITANIUM_SHEETS } from './titanium-sheets.ts';

export type { SheetMaterial } from './sheet-material.ts';

const MPA = 1e6;
const GPA = 1e9;
/** Uptake tables below are in g/m². */
const GRAMS = 1e-3;

/**
 * Iron in air, parabolic: kp = 6.1 exp(−169 452 / R T) g²/(cm⁴ s) (Païdassi's constant as reviewed in
 * Oxid. Met. 59 (2003) 433; from memory, confidence medium), scale shed every 2 h.
 */
function ironUptake(celsius: number): number {
  const kp = 6.1 * Math.exp(-169452 / (8.314 * (celsius + CELSIUS)));
  return 50 * Math.sqrt(kp * 7200) * 1e4;
}

const AUSTENITIC_MODULUS = tableFromCelsius(
  [
    [20, 193],
    [300, 176],
    [500, 158],
    [650, 146],
    [815, 132],
    [1000, 115],
  ],
  GPA,
);
const AUSTENITIC_WELD =
  'welds readily by TIG; purge or use backing flux inside, expect 1.5 times the distortion of plain steel';
const STAINLESS_SOURCE =
  'yield at 24, 540, 650 °C, 1000 h rupture and 100 h cyclic oxidation: austenitic high-temperature property tables after ASM Metals Handbook vol. 3 and AISI/NiDI Designers’ Handbook 9004; scaling limits ASM; higher temperatures from memory, confidence medium';

export const SHEET_MATERIALS: Record<SheetMaterialId, SheetMaterial> = {
  'low-carbon-steel': {
    id: 'low-carbon-steel',
    name: 'low-carbon steel sheet',
    density: 7850,
    poisson: 0.3,
    yield: tableFromCelsius(
      [
        [20, 1],
        [400, 1],
        [500, 0.78],
        [600, 0.47],
        [700, 0.23],
        [800, 0.11],
        [900, 0.06],
        [1000, 0.04],
        [1100, 0.02],
        [1200, 0.001],
      ],
      210 * MPA,
    ),
    modulus: tableFromCelsius(
      [
        [25, 202],
        [200, 192],
        [400, 171],
        [500, 151],
        [600, 138],
        [700, 125],
        [800, 115],
        [900, 105],
        [1100, 85],
      ],
      GPA,
    ),
    expansion: 14.0e-6,
    emissivity: 0.8,
    ruptureStress1000h: tableFromCelsius(
      [
        [427, 290],
        [482, 172],
        [538, 90],
        [593, 48],
      ],
      MPA,
    ),
    oxidation100h: tableFromCelsius(
      [500, 600, 700, 800, 900, 1000].map((c) => [c, ironUptake(c)] as const),
      GRAMS,
    ),
    metalPerOxygen: 2.62,
    scalingIntermittent: 480 + CELSIUS,
    scalingContinuous: 540 + CELSIUS,
    weldability: {
      good: true,
      note: 'welds by gas, MIG or TIG; keep zinc-coated sheet away from the torch, its fume is poisonous',
    },
    sources:
      'yield factors EN 1993-1-2 table 3.1 on 210 MPa (typical cold-rolled sheet, common practice); elastic modulus for pulses of milliseconds ASME II-D TM-1 to 500 °C, above from memory, confidence low; rupture ASTM DS 11 (from memory, confidence low); scaling limit ASM (memory, high)',
  },
  '304': {
    id: '304',
    name: 'stainless 304 sheet',
    density: 7930,
    poisson: 0.29,
    yield: tableFromCelsius(
      [
        [24, 269],
        [205, 180],
        [540, 124],
        [650, 110],
        [760, 95],
        [870, 66],
        [980, 33],
        [1100, 14],
        [1400, 1],
      ],
      MPA,
    ),
    modulus: AUSTENITIC_MODULUS,
    expansion: 18.7e-6,
    emissivity: 0.75,
    ruptureStress1000h: tableFromCelsius(
      [
        [538, 255],
        [650, 117],
        [815, 28],
      ],
      MPA,
    ),
    oxidation100h: tableFromCelsius(
      [
        [705, 0.2],
        [815, 1.7],
        [980, 3400],
      ],
      GRAMS,
    ),
    metalPerOxygen: 2.33,
    scalingIntermittent: 870 + CELSIUS,
    scalingContinuous: 925 + CELSIUS,
    weldability: { good: true, note: AUSTENITIC_WELD },
    sources: STAINLESS_SOURCE,
  },
  '321': {
    id: '321',
    name: 'stainless 321 sheet (titanium-stabilised)',
    density: 7920,
    poisson: 0.29,
    yield: tableFromCelsius(
      [
        [24, 214],
        [540, 179],
        [650, 145],
        [760, 115],
        [870, 70],
        [980, 35],
        [1100, 14],
        [1400, 1],
      ],
      MPA,
    ),
    modulus: AUSTENITIC_MODULUS,
    expansion: 18.8e-6,
    emissivity: 0.75,
    ruptureStress1000h: tableFromCelsius(
      [
        [538, 290],
        [650, 125],
        [815, 28],
      ],
      MPA,
    ),
    oxidation100h: tableFromCelsius(
      [
        [705, 0.2],
        [815, 1.7],
        [980, 3400],
      ],
      GRAMS,
    ),
    metalPerOxygen: 2.33,
    scalingIntermittent: 870 + CELSIUS,
    scalingContinuous: 925 + CELSIUS,
    weldability: { good: true, note: `${AUSTENITIC_WELD}; stabilised against weld decay` },
    sources: `${STAINLESS_SOURCE}; 321 oxidation taken as 304's, rupture from memory (confidence medium)`,
  },
  '310': {
    id: '310',
    name: 'stainless 310 sheet (heat-resisting)',
    density: 7980,
    poisson: 0.3,
    yield: tableFromCelsius(
      [
        [24, 241],
        [538, 143],
        [649, 143],
        [760, 133],
        [871, 84],
        [980, 42],
        [1100, 20],
        [1400, 1],
      ],
      MPA,
    ),
    modulus: AUSTENITIC_MODULUS,
    expansion: 17.5e-6,
    emissivity: 0.8,
    ruptureStress1000h: tableFromCelsius(
      [
        [538, 221],
        [650, 124],
        [815, 41],
        [900, 30],
        [1000, 12],
      ],
      MPA,
    ),
    oxidation100h: tableFromCelsius(
      [
        [705, 0.2],
        [815, 2.7],
        [980, 120],
        [1090, 910],
      ],
      GRAMS,
    ),
    metalPerOxygen: 2.33,
    scalingIntermittent: 1035 + CELSIUS,
    scalingContinuous: 1150 + CELSIUS,
    weldability: { good: true, note: `${AUSTENITIC_WELD}; fully austenitic, so keep heat low against hot cracking` },
    sources: `${STAINLESS_SOURCE}; 310 oxidation taken as the table's 309 (pessimistic)`,
  },
  N06625: {
    id: 'N06625',
    name: 'nickel alloy N06625 sheet',
    density: 8440,
    poisson: 0.28,
    yield: tableFromCelsius(
      [
        [20, 414],
        [540, 330],
        [650, 320],
        [760, 310],
        [870, 225],
        [980, 90],
        [1100, 40],
        [1350, 1],
      ],
      MPA,
    ),
    modulus: tableFromCelsius(
      [
        [21, 207.5],
        [540, 179],
        [650, 170],
        [871, 147.5],
        [1000, 135],
      ],
      GPA,
    ),
    expansion: 15.8e-6,
    emissivity: 0.85,
    ruptureStress1000h: tableFromCelsius(
      [
        [650, 370],
        [760, 155],
        [871, 52],
        [982, 17],
      ],
      MPA,
    ),
    oxidation100h: tableFromCelsius(
      [
        [870, 1],
        [980, 12],
        [1090, 200],
      ],
      GRAMS,
    ),
    metalPerOxygen: 2.2,
    scalingIntermittent: 980 + CELSIUS,
    scalingContinuous: 980 + CELSIUS,
    weldability: { good: true, note: 'welds by TIG with matching rod; clean to bright metal first' },
    sources:
      'ASTM B443 minimum yield at 20 °C; modulus and 982 °C service limit from published data sheets of the alloy; hot strength, rupture and oxidation from memory, confidence medium-low',
  },
  ...TITANIUM_SHEETS,
};
