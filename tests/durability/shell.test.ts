import { describe, expect, it } from 'vitest';
import { collapsePressure, longTubeCollapse, shortTubeCollapse } from '../../shared/durability/buckling.ts';
import { larsonMiller, ruptureHours } from '../../shared/durability/creep.ts';
import { coneHoopStress, hoopStress } from '../../shared/durability/hoop-stress.ts';
import { SHEET_MATERIAL_IDS } from '../../shared/durability/material-ids.ts';
import { oxidationLife, recessionRate } from '../../shared/durability/oxidation.ts';
import { CELSIUS, tableFromCelsius, valueAt } from '../../shared/durability/property-table.ts';
import { gaugeTable, nearestGauge, nextThicker } from '../../shared/durability/sheet-gauge.ts';
import { SHEET_MATERIALS } from '../../shared/durability/sheet-materials.ts';
import { restrainedStress, thermalGrowth } from '../../shared/durability/thermal-growth.ts';
import { VALVE_MATERIALS } from '../../shared/durability/valve-materials.ts';

const at = (celsius: number) => celsius + CELSIUS;

describe('hot strength', () => {
  it.each([
    [400, 1],
    [500, 0.78],
    [600, 0.47],
    [700, 0.23],
    [800, 0.11],
  ])('low-carbon steel keeps at %s °C the factor %s (EN 1993-1-2 table 3.1)', (c, factor) => {
    const y = SHEET_MATERIALS['low-carbon-steel'].yield;
    expect(valueAt(y, at(c)) / valueAt(y, at(20))).toBeCloseTo(factor, 9);
  });
  it.each([
    [24, 269],
    [540, 124],
    [650, 110],
  ])('304 yields at %s °C at %s MPa (stainless design data)', (c, mpa) => {
    expect(valueAt(SHEET_MATERIALS['304'].yield, at(c)) / 1e6).toBeCloseTo(mpa, 6);
  });
  it.each([
    [25, 202],
    [200, 192],
    [400, 171],
    [500, 151],
  ])('carbon steel at %s °C is %s GPa stiff (ASME II-D table TM-1, memory high)', (c, gpa) => {
    expect(valueAt(SHEET_MATERIALS['low-carbon-steel'].modulus, at(c)) / 1e9).toBeCloseTo(gpa, 6);
    // Strip is tabled at 205 GPa cold; it goes the same way when hot.
    expect(Math.abs(valueAt(VALVE_MATERIALS['AISI-1095'].modulus, at(c)) / 1e9 / gpa - 1)).toBeLessThan(0.02);
  });
  it('301 full hard: UTS 1276 MPa (AMS 5519); Ti-6Al-4V: 114 GPa, 4430 kg/m³ (data sheets)', () => {
    expect(valueAt(VALVE_MATERIALS['AISI-301-full-hard'].ultimate, at(20)) / 1e6).toBeCloseTo(1276, 6);
    expect(valueAt(VALVE_MATERIALS['Ti-6Al-4V'].modulus, at(20)) / 1e9).toBeCloseTo(114, 6);
    expect(VALVE_MATERIALS['Ti-6Al-4V'].density).toBe(4430);
  });
  it('scaling limits: 304 and 321 870/925 °C, 310 1035/1150 °C (ASM)', () => {
    expect(SHEET_MATERIALS['304'].scalingIntermittent - CELSIUS).toBeCloseTo(870, 9);
    expect(SHEET_MATERIALS['321'].scalingContinuous - CELSIUS).toBeCloseTo(925, 9);
    expect(SHEET_MATERIALS['310'].scalingIntermittent - CELSIUS).toBeCloseTo(1035, 9);
    expect(SHEET_MATERIALS['310'].scalingContinuous - CELSIUS).toBeCloseTo(1150, 9);
  });
  it('every strength table falls with temperature', () => {
    for (const id of SHEET_MATERIAL_IDS) {
      for (const table of [
        SHEET_MATERIALS[id].yield,
        SHEET_MATERIALS[id].modulus,
        SHEET_MATERIALS[id].ruptureStress1000h,
      ]) {
        for (let i = 1; i < table.value.length; i++) expect(table.value[i]).toBeLessThanOrEqual(table.value[i - 1]);
      }
    }
  });
  it('a table is held constant beyond its ends and passes NaN on', () => {
    const t = tableFromCelsius([
      [0, 1],
      [100, 3],
    ]);
    expect(valueAt(t, at(50))).toBeCloseTo(2, 9);
    expect(valueAt(t, at(-50))).toBe(1);
    expect(valueAt(t, at(500))).toBe(3);
    expect(valueAt(t, Number.NaN)).toBeNaN();
  });
});

describe('pressure', () => {
  it('hoop stress is p D/2t, more by 1/cos in a cone', () => {
    expect(hoopStress(1e5, 0.2, 1e-3)).toBeCloseTo(10e6, 3);
    expect(coneHoopStress(1e5, 0.2, 1e-3, Math.PI / 3)).toBeCloseTo(20e6, 3);
  });
  it('long tube: r 6.75 in, t 0.375 in, E 29e6 psi, ν 0.29 collapses at 1357 psi (Roark worked example)', () => {
    expect(longTubeCollapse(29e6, 0.29, 0.375, 13.5)).toBeCloseTo(1357, 0);
  });
  it('short tube, ν 0.3: 2.60 E (t/D)^2.5/(L/D − 0.45 √(t/D)) (Windenburg & Trilling, rounded form)', () => {
    const p = shortTubeCollapse(30e6, 0.3, 0.01, 1, 1);
    expect(p / ((2.6 * 30e6 * 0.01 ** 2.5) / (1 - 0.45 * 0.1))).toBeCloseTo(1, 2);
  });
  it('stiff ends never weaken a tube', () => {
    expect(collapsePressure(200e9, 0.3, 1e-3, 0.2, 0.2)).toBeGreaterThan(collapsePressure(200e9, 0.3, 1e-3, 0.2, 20));
  });
});

describe('creep', () => {
  it('Larson–Miller: 650 °C and 1000 h give 21 232', () => {
    expect(larsonMiller(at(650), 1000)).toBeCloseTo(21232.45, 1);
  });
  it.each([
    ['304', 650, 117e6],
    ['304', 815, 28e6],
    ['310', 538, 221e6],
  ] as const)('%s at %s °C breaks at its tabled stress after 1000 h', (id, c, stress) => {
    expect(ruptureHours(SHEET_MATERIALS[id].ruptureStress1000h, stress, at(c))).toBeCloseTo(1000, 3);
  });
  it('310 at 700 °C and 70 MPa breaks near 10 000 h (published rupture table), within a factor of 3', () => {
    const hours = ruptureHours(SHEET_MATERIALS['310'].ruptureStress1000h, 70e6, at(700));
    expect(hours).toBeGreaterThan(3300);
    expect(hours).toBeLessThan(30000);
  });
});

describe('oxidation', () => {
  it('304 takes up 1.7 g/m² a face in 100 h at 815 °C (cyclic test table)', () => {
    const m = SHEET_MATERIALS['304'];
    const perFace = (recessionRate(m, at(815)) * 360_000 * m.density) / m.metalPerOxygen / 2;
    expect(perFace * 1e3).toBeCloseTo(1.7, 6);
  });
  it('plain steel at 800 °C loses a quarter of 1 mm in hours; 310 at the same heat lasts over 100 times longer', () => {
    const plain = oxidationLife(SHEET_MATERIALS['low-carbon-steel'], at(800), 1e-3, 0.25) / 3600;
    expect(plain).toBeGreaterThan(1);
    expect(plain).toBeLessThan(50);
    expect(oxidationLife(SHEET_MATERIALS['310'], at(800), 1e-3, 0.25) / 3600).toBeGreaterThan(100 * plain);
  });
});

it('1 m of 304 warmed by 700 K grows 13.1 mm; held, it would see E α ΔT', () => {
  const growth = thermalGrowth(SHEET_MATERIALS['304'].expansion, [0.5, 0.5], [993.15, 993.15], 293.15);
  expect(growth * 1e3).toBeCloseTo(13.09, 2);
  expect(restrainedStress(150e9, growth, 1)).toBeCloseTo(150e9 * 18.7e-6 * 700, -3);
});

describe('sheet gauge (manufacturers’ standard gauge)', () => {
  it.each([
    [16, 0.0598],
    [18, 0.0478],
    [20, 0.0359],
    [22, 0.0299],
  ])('%s gauge is %s in', (gauge, inches) => {
    expect(gaugeTable.find((g) => g.gauge === gauge)!.thickness / 0.0254).toBeCloseTo(inches, 9);
  });
  it('finds the nearest and the next thicker', () => {
    expect(nearestGauge(0.9e-3).gauge).toBe(20);
    expect(nextThicker(0.0359 * 0.0254)!.gauge).toBe(19);
    expect(nextThicker(0.02)).toBeNull();
  });
});
