import { describe, expect, it } from 'vitest';
import { type AcousticDuct, ductFrequencies, modePressure } from '../../shared/acoustics/duct-modes.ts';
import { endCorrection } from '../../shared/acoustics/end-correction.ts';
import { openEnd, wall } from '../../shared/duct/boundary.ts';
import { makeGrid } from '../../shared/duct/grid.ts';
import type { Section } from '../../shared/engine/engine.ts';
import { GAS_CONSTANT, march, outside, perfectGas, startFlow } from './support.ts';

const chamber: Section = { role: 'chamber', length: 0.15, startDiameter: 0.065, endDiameter: 0.065 };
const tailpipe: Section = { role: 'tailpipe', length: 0.35, startDiameter: 0.032, endDiameter: 0.032 };

const temperatureOf = (soundSpeed: number) => soundSpeed ** 2 / (1.4 * GAS_CONSTANT);
const area = (diameter: number) => (Math.PI * diameter ** 2) / 4;

/** Closed–open duct with sound speeds in chamber and tailpipe; equal pressure, so density goes as 1/c². */
function acoustics(chamberSpeed: number, tailSpeed: number): AcousticDuct {
  return {
    head: 'closed',
    exit: 'open',
    sections: [
      { length: chamber.length, area: area(0.065), soundSpeed: chamberSpeed, density: 1 / chamberSpeed ** 2 },
      {
        length: tailpipe.length + endCorrection(0.032),
        area: area(0.032),
        soundSpeed: tailSpeed,
        density: 1 / tailSpeed ** 2,
      },
    ],
  };
}

/** Starts in the first mode at low amplitude and takes the frequency from zero crossings of head pressure. */
function ringDown(chamberSpeed: number, tailSpeed: number, cells: number): { frequency: number; kept: number } {
  const duct = acoustics(chamberSpeed, tailSpeed);
  const [expected] = ductFrequencies(duct, 1);
  const amplitude = 20;
  const flow = startFlow(makeGrid([chamber, tailpipe], cells, false, true), perfectGas(), (x) => ({
    pressure: 101_325 + amplitude * modePressure(duct, expected, x),
    temperature: temperatureOf(x < chamber.length ? chamberSpeed : tailSpeed),
  }));
  const crossings: number[] = [];
  let last = amplitude;
  let lastTime = 0;
  let peak = 0;
  march(flow, 8 / expected, {
    left: wall(),
    right: openEnd(outside(101_325, temperatureOf(tailSpeed)), 0),
    each: (_dt, _book, time) => {
      const now = flow.pressure[0] - 101_325;
      if (last > 0 !== now > 0) crossings.push(lastTime + ((time - lastTime) * last) / (last - now));
      if (time > 6.75 / expected && time < 7.25 / expected) peak = Math.max(peak, Math.abs(now));
      [last, lastTime] = [now, time];
    },
  });
  const halfPeriods = crossings.length - 1;
  return { frequency: halfPeriods / (2 * (crossings[halfPeriods] - crossings[0])), kept: peak / amplitude };
}

describe('ring-down of a chamber with a tailpipe', () => {
  it('rings at 197.78 Hz at 650 m/s throughout, within 1 %', () => {
    // Exact eigenvalue of the stepped closed–open duct with its end correction.
    for (const cells of [80, 160])
      expect(Math.abs(ringDown(650, 650, cells).frequency / 197.78 - 1)).toBeLessThan(0.01);
  });

  it.each([
    [800, 550],
    [850, 400],
    [400, 700],
  ])('rings at the exact frequency with %d m/s in the chamber and %d m/s in the tailpipe, within 1 %', (hot, cool) => {
    const [expected] = ductFrequencies(acoustics(hot, cool), 1);
    expect(Math.abs(ringDown(hot, cool, 120).frequency / expected - 1)).toBeLessThan(0.01);
  });

  it('loses little of a small wave to the scheme in seven cycles', () => {
    const { kept } = ringDown(650, 650, 160);
    expect(kept).toBeGreaterThan(0.97);
    expect(kept).toBeLessThan(1.01);
  });
});
