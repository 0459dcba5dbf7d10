import { describe, expect, it } from 'vitest';
import { type AcousticDuct, ductFrequencies, modePressure } from '../../shared/acoustics/duct-modes.ts';
import { endCorrection, UNFLANGED_END_CORRECTION } from '../../shared/acoustics/end-correction.ts';

const area = (diameter: number) => (Math.PI * diameter ** 2) / 4;

describe('end correction', () => {
  it('is 0.6133 radius for an unflanged end', () => {
    // Levine and Schwinger, Phys. Rev. 73 (1948) 383.
    expect(UNFLANGED_END_CORRECTION).toBe(0.6133);
    expect(endCorrection(0.05)).toBeCloseTo(0.6133 * 0.025, 12);
  });
});

describe('standing waves of a stepped duct', () => {
  it('is a quarter wave in a uniform closed–open pipe', () => {
    const pipe = { length: 1 + endCorrection(0.05), area: area(0.05), soundSpeed: 343, density: 1.2 };
    const f = ductFrequencies({ sections: [pipe], head: 'closed', exit: 'open' }, 3);
    // c/4(L + 0.6133 a), computed.
    expect(f[0]).toBeCloseTo(84.455, 3);
    expect(f[1] / f[0]).toBeCloseTo(3, 10);
    expect(f[2] / f[0]).toBeCloseTo(5, 10);
  });

  it('is a half wave in a pipe that is open, or closed, at both ends', () => {
    const pipe = { length: 1, area: 1, soundSpeed: 343, density: 1.2 };
    for (const end of ['open', 'closed'] as const) {
      const f = ductFrequencies({ sections: [pipe], head: end, exit: end }, 2);
      expect(f[0]).toBeCloseTo(171.5, 9);
      expect(f[1]).toBeCloseTo(343, 9);
    }
  });

  const chamber = { length: 0.15, area: area(0.065), soundSpeed: 650, density: 1 };
  const tail = { length: 0.35 + endCorrection(0.032), area: area(0.032), soundSpeed: 650, density: 1 };

  it('finds the modes of a chamber with a tailpipe', () => {
    // Exact eigenvalues of tan(kL1) tan(kL2) = A2/A1, computed independently.
    const f = ductFrequencies({ sections: [chamber, tail], head: 'closed', exit: 'open' }, 3);
    expect(Math.abs(f[0] / 197.78 - 1)).toBeLessThan(5e-5);
    expect(Math.abs(f[1] / 920.0 - 1)).toBeLessThan(5e-5);
    expect(Math.abs(f[2] / 1717.9 - 1)).toBeLessThan(5e-5);
    for (const hz of f) {
      const k = (2 * Math.PI * hz) / 650;
      expect(Math.tan(k * chamber.length) * Math.tan(k * tail.length)).toBeCloseTo(tail.area / chamber.area, 8);
    }
  });

  it('finds the modes with a different temperature in each section', () => {
    // Equal pressure and γ: density goes as 1/c². Continuity at the junction gives tan(k1L1) tan(k2L2) = Z1/Z2, Z = ρc/A.
    const cool = { ...tail, soundSpeed: 400, density: 1 * (650 / 400) ** 2 };
    const duct: AcousticDuct = { sections: [chamber, cool], head: 'closed', exit: 'open' };
    const z = (s: typeof chamber) => (s.density * s.soundSpeed) / s.area;
    for (const hz of ductFrequencies(duct, 6)) {
      const omega = 2 * Math.PI * hz;
      const product = Math.tan((omega * chamber.length) / 650) * Math.tan((omega * cool.length) / 400);
      expect(product / (z(chamber) / z(cool))).toBeCloseTo(1, 7);
      expect(modePressure(duct, hz, 0)).toBe(1);
      expect(modePressure(duct, hz, chamber.length + cool.length)).toBeCloseTo(0, 8);
    }
  });

  it('does not change when a section is cut in two', () => {
    const half = { ...tail, length: tail.length / 2 };
    const whole = ductFrequencies({ sections: [chamber, tail], head: 'open', exit: 'closed' }, 5);
    const cut = ductFrequencies({ sections: [chamber, half, half], head: 'open', exit: 'closed' }, 5);
    cut.forEach((hz, i) => {
      expect(hz).toBeCloseTo(whole[i], 8);
    });
  });

  it('tends to the Helmholtz resonator for a large chamber and short neck', () => {
    const bulb = { length: 0.1, area: area(0.2), soundSpeed: 343, density: 1.2 };
    const neck = { length: 0.05, area: area(0.01), soundSpeed: 343, density: 1.2 };
    const helmholtz = (343 / (2 * Math.PI)) * Math.sqrt(neck.area / (neck.length * bulb.area * bulb.length));
    const exact = ductFrequencies({ sections: [bulb, neck], head: 'closed', exit: 'open' }, 1)[0];
    expect(Math.abs(exact / helmholtz - 1)).toBeLessThan(0.002);
  });

  it('refuses an impossible section', () => {
    expect(() => ductFrequencies({ sections: [], head: 'closed', exit: 'open' }, 1)).toThrow(RangeError);
    expect(() => ductFrequencies({ sections: [{ ...chamber, area: 0 }], head: 'closed', exit: 'open' }, 1)).toThrow(
      RangeError,
    );
  });
});
