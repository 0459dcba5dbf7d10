import { describe, expect, it } from 'vitest';
import { droneEngine, engine22Inch, valvelessUTube } from '../../shared/calibration/reference-engines.ts';
import { cellAt, makeGrid } from '../../shared/duct/grid.ts';
import { goOn, survived, tryStart } from '../../shared/engine/attempt.ts';
import { calibratedConstants } from '../../shared/engine/constants.ts';
import { approachCells, finerGrids, shippedCells, spacing } from '../../shared/engine/resolution.ts';
import { simulate } from '../../shared/engine/simulate.ts';
import { startAttempts } from '../../shared/engine/start.ts';

describe('the grid of an engine that breathes through a pipe', () => {
  const engine = valvelessUTube();
  const chamberFrom = 0.154 + 0.04;

  it.each([approachCells(engine), shippedCells(engine), 360])(
    'of %i cells has a face where the chamber begins',
    (cells) => {
      const grid = makeGrid(engine.sections, cells, true, true, spacing(engine));
      expect(grid.face).toContain(chamberFrom);
      const inPipe = grid.width.slice(0, cellAt(grid, chamberFrom));
      expect(Math.max(...inPipe) / Math.min(...inPipe)).toBeCloseTo(1, 9);
      expect(grid.width[cells - 1] / inPipe[0]).toBeGreaterThan(4);
    },
  );

  it('gives the figures of four times as many cells, within 3 %', () => {
    const { running } = simulate(engine);
    const fine = simulate(engine, { cells: 4 * shippedCells(engine) });
    if (!running || !fine.running) throw new Error('the valveless engine does not run');
    for (const figure of ['thrust', 'fuelFlow', 'airFlow', 'frequency'] as const) {
      expect(Math.abs(running[figure] / fine.running[figure] - 1)).toBeLessThan(0.03);
    }
  });

  it('of an engine with valves is even', () => {
    expect(spacing(droneEngine())).toBeNull();
  });
});

it('refines by less than four times a step, and ends on the grid asked for', () => {
  for (const engine of [droneEngine(), valvelessUTube()]) {
    for (const cells of [shippedCells(engine), 2 * shippedCells(engine), 500]) {
      const levels = [approachCells(engine), ...finerGrids(approachCells(engine), cells)];
      expect(levels.at(-1)).toBe(cells);
      for (let n = 1; n < levels.length; n++) {
        expect(levels[n]).toBeGreaterThan(levels[n - 1]);
        expect(levels[n] / levels[n - 1]).toBeLessThan(4);
      }
    }
    expect(finerGrids(32, 32)).toEqual([]);
  }
});

it.each([
  ['drone engine, which alternates between two kinds of cycle', droneEngine],
  ['22-inch engine', engine22Inch],
])('%s: the figures are those of a much longer run, to 1.5 %%', (_, make) => {
  const engine = make();
  const { running, verdict } = simulate(engine);
  if (!running) throw new Error(verdict.message);
  const settings = { group: 4, tolerance: 0, minCycles: 9 };
  const constants = calibratedConstants();
  const coarse = startAttempts(engine.sections, true)
    .map((start) =>
      tryStart(engine, constants, start, approachCells(engine), { ...settings, tolerance: 0.02, maxCycles: 24 }),
    )
    .find(survived);
  if (!coarse) throw new Error('no start leads to running');
  const { ledger } = goOn(coarse, shippedCells(engine), { ...settings, maxCycles: 48 }).run;
  const last = ledger.count - 1;
  const span = ledger.between(last - 24, last, 'time');
  expect(Math.abs(running.frequency / (24 / span) - 1)).toBeLessThan(0.015);
  expect(Math.abs(running.bareThrust / (ledger.between(last - 24, last, 'exhaustImpulse') / span) - 1)).toBeLessThan(
    0.015,
  );
  expect(Math.abs(running.fuelFlow / (ledger.between(last - 24, last, 'fuelIn') / span) - 1)).toBeLessThan(0.015);
});

it('keeps the valve’s hardest blows of the last two cycles or three: a reed meets its stop and its seat', () => {
  const { running } = simulate(droneEngine());
  expect(running?.valve?.seatImpactSpeed).toBeGreaterThan(1);
  expect(running?.valve?.peakLift).toBeGreaterThan(0.5 * (running?.valve?.stopLift ?? 0));
});
