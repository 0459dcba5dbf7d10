/** The wall of a thin shell: heat in equals heat out (Stefan–Boltzmann and Newton's law of cooling; heat-transfer textbooks). */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import {
  EMISSIVITY,
  OUTSIDE_FILM,
  STEFAN_BOLTZMANN,
  steadyWallTemperature,
} from '../../shared/engine/wall-temperature.ts';

it('gives outside what the gas gives inside, and lies between gas and ambient', () => {
  const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(real(0, 5000), real(250, 3500), real(230, 330), (film, gas, ambient) => {
      const t = steadyWallTemperature(film, gas, ambient);
      const out = EMISSIVITY * STEFAN_BOLTZMANN * (t ** 4 - ambient ** 4) + OUTSIDE_FILM * (t - ambient);
      expect(Math.abs(film * (gas - t) - out)).toBeLessThan(1e-6 * (OUTSIDE_FILM + film) * gas);
      expect(t).toBeGreaterThanOrEqual(Math.min(gas, ambient) - 1e-6);
      expect(t).toBeLessThanOrEqual(Math.max(gas, ambient) + 1e-6);
    }),
    { seed: 1, numRuns: 500 },
  );
});

it('is the ambient temperature where the gas gives nothing', () => {
  expect(steadyWallTemperature(0, 2000, 288)).toBeCloseTo(288, 6);
});
