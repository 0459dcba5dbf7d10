/** Titanium sheet, by standard designation. Typical values of annealed sheet. */
import { CELSIUS, tableFromCelsius } from './property-table.ts';
import type { SheetMaterial } from './sheet-material.ts';

const MPA = 1e6;
const GPA = 1e9;
/** Uptake tables are in g/m². */
const GRAMS = 1e-3;

export const TITANIUM_SHEETS: Record<'titanium-grade-2' | 'titanium-grade-5', SheetMaterial> = {
  'titanium-grade-2': {
    id: 'titanium-grade-2',
    name: 'titanium grade 2 sheet',
    density: 4510,
    poisson: 0.34,
    yield: tableFromCelsius(
      [
        [20, 276],
        [205, 145],
        [315, 107],
        [425, 90],
        [540, 69],
        [700, 30],
        [900, 8],
        [1600, 1],
      ],
      MPA,
    ),
    modulus: tableFromCelsius(
      [
        [20, 105],
        [315, 85],
        [540, 65],
        [800, 40],
      ],
      GPA,
    ),
    expansion: 9.7e-6,
    emissivity: 0.5,
    ruptureStress1000h: tableFromCelsius(
      [
        [200, 235],
        [250, 117],
        [425, 70],
        [540, 25],
      ],
      MPA,
    ),
    oxidation100h: tableFromCelsius(
      [
        [540, 1],
        [650, 10],
        [760, 60],
        [870, 400],
      ],
      GRAMS,
    ),
    metalPerOxygen: 1.5,
    scalingIntermittent: 450 + CELSIUS,
    scalingContinuous: 430 + CELSIUS,
    weldability: {
      good: false,
      note: 'needs argon on both faces until below 430 °C, or the weld turns brittle; chips and dust burn',
    },
    sources: 'yield to 540 °C and 1000 h at 250 °C: ASTM grade 2 data sheets; the rest from memory, confidence low',
  },
  'titanium-grade-5': {
    id: 'titanium-grade-5',
    name: 'titanium grade 5 (Ti-6Al-4V) sheet',
    density: 4430,
    poisson: 0.33,
    yield: tableFromCelsius(
      [
        [20, 827],
        [150, 724],
        [260, 641],
        [370, 565],
        [540, 430],
        [700, 150],
        [900, 30],
        [1600, 1],
      ],
      MPA,
    ),
    modulus: tableFromCelsius(
      [
        [20, 114],
        [315, 95],
        [540, 80],
        [800, 50],
      ],
      GPA,
    ),
    expansion: 9.7e-6,
    emissivity: 0.5,
    ruptureStress1000h: tableFromCelsius(
      [
        [315, 724],
        [400, 620],
        [540, 170],
      ],
      MPA,
    ),
    oxidation100h: tableFromCelsius(
      [
        [540, 1],
        [650, 10],
        [760, 60],
        [870, 400],
      ],
      GRAMS,
    ),
    metalPerOxygen: 1.5,
    scalingIntermittent: 450 + CELSIUS,
    scalingContinuous: 400 + CELSIUS,
    weldability: {
      good: false,
      note: 'needs argon on both faces until below 430 °C; springs back on cold rolls, so form it warm',
    },
    sources:
      'yield to 370 °C and rupture at 315 and 400 °C: ASTM grade 5 data sheets; the rest from memory, confidence low',
  },
};
