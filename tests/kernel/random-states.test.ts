/** Single steps of the compiled loops on random states, valid and absurd, against the TypeScript loops, bit for bit. */
import seedrandom from 'seedrandom';
import { afterEach, expect, test } from 'vitest';
import { applyCellSources, type CellSources, makeCellSources } from '../../shared/combustion/cell-sources.ts';
import { type End, openEnd, wall } from '../../shared/duct/boundary.ts';
import { type Flow, makeFlow, makeGasClosure, releaseFlow, setCell } from '../../shared/duct/flow.ts';
import { makeGridFromArea } from '../../shared/duct/grid.ts';
import { recoverPrimitives, settleTemperatures } from '../../shared/duct/primitives.ts';
import { makeStepBook, stepFlow } from '../../shared/duct/step.ts';
import { calibratedConstants } from '../../shared/engine/constants.ts';
import { FUELS } from '../../shared/gas/fuels.ts';
import { makeGasTable } from '../../shared/gas/gas-table.ts';
import { allowKernel } from '../../shared/kernel/kernel.ts';
import { outside } from '../duct/support.ts';

afterEach(() => allowKernel(true));

const gas = makeGasClosure(makeGasTable('propane'));

/** Everything that a flow and its sources hold, as plain numbers, so that NaN equals NaN and −0 differs from 0. */
function contents(flow: Flow, sources: CellSources) {
  const all: Record<string, number | number[]> = { fastest: flow.fastest };
  const { slopes, half, ...rest } = flow;
  for (const [key, value] of Object.entries({ ...rest, ...sources, ...flow.grid })) {
    if (value instanceof Float64Array) all[key] = [...value];
    else if (typeof value === 'number') all[key] = value;
  }
  for (const [key, value] of Object.entries(slopes)) all[`slope of ${key}`] = [...value];
  for (const [key, value] of Object.entries(half)) all[`half-step ${key}`] = [...value];
  return all;
}

/** One random duct: areas with sudden steps, hot and cold gas, some of it faster than sound, all scalars. */
function randomDuct(seed: string, cells: number, absurd: boolean, steps: number) {
  const random = seedrandom(seed);
  const areas = Array.from({ length: 2 * cells + 1 }, () => 1e-3 * (1 + (random() < 0.2 ? 4 : 0.4) * random()));
  const grid = makeGridFromArea((x) => areas[Math.round(x * 2 * cells)], 1, cells);
  grid.lossForward.forEach((_, i) => {
    grid.lossForward[i] = random() < 0.5 ? random() : 0;
    grid.lossBackward[i] = random() < 0.5 ? random() : 0;
  });
  const flow = makeFlow(grid, gas, 1e5, 300);
  const sources = makeCellSources(flow, calibratedConstants(), FUELS.propane, 600);
  sources.chamberStart = 2;
  sources.chamberEnd = cells - 3;
  sources.sparkEnd = 7;
  for (let i = 0; i < cells; i++) {
    const product = random();
    const fuel = random() < 0.3 ? 0 : 0.1 * (1 - product) * random();
    const velocity = (random() < 0.2 ? 3000 : 200) * (random() - 0.5);
    setCell(flow, i, 1e5 * (0.5 + 2 * random()), 250 + 2200 * random(), velocity, fuel, product);
    flow.turbulence[i] = flow.mass[i] * (random() < 0.2 ? 0 : 500 * random());
    flow.progress[i] = flow.mass[i] * (1 - fuel - product) * random();
    flow.mixing[i] = random() < 0.3 ? 0 : 0.05 * random();
    if (absurd && random() < 0.2) flow.temperature[i] = (random() - 0.5) * 1e14;
    if (absurd && random() < 0.1) flow.energy[i] *= -random();
    if (absurd && random() < 0.02) flow.mass[i] = 0;
  }
  if (!absurd) settleTemperatures(flow);
  const ends: [End, End] = [
    random() < 0.5 ? wall() : openEnd(outside(1e5, 300), 0.5, 0.05),
    openEnd(outside(1e5, 300), 0.5, 0.05),
  ];
  const book = makeStepBook();
  for (let n = 0; n < steps; n++) {
    recoverPrimitives(flow);
    const dt = absurd ? 1e-6 : (0.4 * grid.dx) / flow.fastest;
    stepFlow(flow, ends[0], ends[1], dt, book);
    // Long source steps, so that exponentials and caps are met.
    applyCellSources(flow, sources, absurd ? dt : 20 * dt, 40 * random(), n % 2 === 0);
  }
  return { flow, sources, result: { ...contents(flow, sources), ...book } };
}

test.each([
  ['ordinary', false, 4],
  ['absurd', true, 1],
] as const)('%s states of even and odd numbers of cells', (_, absurd, steps) => {
  let burning = 0;
  for (let n = 0; n < 60; n++) {
    const cells = 12 + n;
    allowKernel(true);
    const kernel = randomDuct(`duct ${n}`, cells, absurd, steps);
    expect(kernel.flow.kernel).not.toBeNull();
    expect(kernel.flow.kernel?.sources).toBe(kernel.sources);
    allowKernel(false);
    const reference = randomDuct(`duct ${n}`, cells, absurd, steps);
    expect(reference.flow.kernel).toBeNull();
    expect(kernel.result).toStrictEqual(reference.result);
    if (reference.sources.heatReleased > 0) burning++;
    releaseFlow(kernel.flow);
  }
  expect(burning).toBeGreaterThan(absurd ? 0 : 20);
});
