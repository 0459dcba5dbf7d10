/** Flows that carry no fuel, products, turbulence or progress: the compiled loops leave those out, and must take them up in time. */
import { afterEach, expect, test } from 'vitest';
import { type End, openEnd, wall } from '../../shared/duct/boundary.ts';
import { type Flow, releaseFlow } from '../../shared/duct/flow.ts';
import { recoverPrimitives } from '../../shared/duct/primitives.ts';
import { makeStepBook, stableStep, stepFlow } from '../../shared/duct/step.ts';
import { allowKernel } from '../../shared/kernel/kernel.ts';
import * as at from '../../shared/kernel/layout.ts';
import { outside, perfectGas, startFlow, tube } from '../duct/support.ts';

afterEach(() => allowKernel(true));

/** What the cells hold, bit for bit. */
function held(flow: Flow): number[][] {
  const { mass, momentum, energy, fuelMass, productMass, turbulence, progress } = flow;
  return [mass, momentum, energy, fuelMass, productMass, turbulence, progress].map((values) => [...values]);
}

/** A tube whose left half pushes gas to the right and lets outside air in behind it. */
function pushed(kernel: boolean, left: () => End, change?: (flow: Flow, n: number) => void): Flow {
  allowKernel(kernel);
  const flow = startFlow(tube(41), perfectGas(), (x) => ({
    pressure: x < 0.4 ? 8e4 : 1e5,
    temperature: 300 + 200 * x,
    velocity: 20,
  }));
  const ends = [left(), wall()];
  const book = makeStepBook();
  for (let n = 0; n < 60; n++) {
    change?.(flow, n);
    recoverPrimitives(flow);
    stepFlow(flow, ends[0], ends[1], stableStep(flow), book);
  }
  return flow;
}

const carries = (flow: Flow) => flow.kernel?.head[at.CARRIES >> 3];

test('a tube without them has the bits of the TypeScript loops', () => {
  const flow = pushed(true, wall);
  expect(carries(flow)).toBe(0);
  expect(held(flow)).toStrictEqual(held(pushed(false, wall)));
  expect(held(flow)[3]).toStrictEqual(new Array(41).fill(0));
  releaseFlow(flow);
});

test('turbulence that comes in through an open end is carried from the first step on', () => {
  const left = () => openEnd(outside(1e5, 300), 0.5, 0.05);
  const flow = pushed(true, left);
  expect(carries(flow)).toBe(1);
  expect(flow.turbulence[0]).toBeGreaterThan(0);
  expect(held(flow)).toStrictEqual(held(pushed(false, left)));
  releaseFlow(flow);
});

test('fuel that is put into a cell later is carried from then on', () => {
  const inject = (flow: Flow, n: number) => {
    if (n === 30) flow.fuelMass[20] = 0.05 * flow.mass[20];
  };
  const flow = pushed(true, wall, inject);
  expect(carries(flow)).toBe(1);
  expect(flow.fuelMass[22]).toBeGreaterThan(0);
  expect(held(flow)).toStrictEqual(held(pushed(false, wall, inject)));
  releaseFlow(flow);
});
