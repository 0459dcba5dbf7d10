/** The binary is what the sources give; memories are reused, and a flow that was given back cannot be used by mistake. */
import { readFileSync } from 'node:fs';
import { afterEach, expect, test } from 'vitest';
import { makeFlow, releaseFlow } from '../../shared/duct/flow.ts';
import { recoverPrimitives } from '../../shared/duct/primitives.ts';
import { compiledKernel } from '../../shared/kernel/build-kernel.mjs';
import { allowKernel } from '../../shared/kernel/kernel.ts';
import { MAX_CELLS } from '../../shared/kernel/layout.ts';
import { perfectGas, tube } from '../duct/support.ts';

afterEach(() => allowKernel(true));

test('the committed binary is what the sources compile to', async () => {
  const committed = readFileSync(new URL('../../shared/kernel/kernel-binary.ts', import.meta.url), 'utf8');
  expect(await compiledKernel()).toBe(committed);
});

test('flows in use together keep apart', () => {
  const one = makeFlow(tube(20), perfectGas(), 1e5, 300);
  const two = makeFlow(tube(20), perfectGas(), 2e5, 400);
  recoverPrimitives(one);
  recoverPrimitives(two);
  expect(one.kernel?.memory).not.toBe(two.kernel?.memory);
  expect(one.pressure[7]).toBeCloseTo(1e5, 5);
  expect(two.pressure[7]).toBeCloseTo(2e5, 5);
});

test('a flow that is given back is empty, and its memory comes to the next flow cleared', () => {
  const one = makeFlow(tube(50), perfectGas(), 1e5, 300);
  const memory = one.kernel?.memory;
  one.mixing.fill(3);
  releaseFlow(one);
  expect(one.pressure).toHaveLength(0);
  expect(one.grid.volume).toHaveLength(0);
  const two = makeFlow(tube(30), perfectGas(), 1e5, 300);
  expect(two.kernel?.memory).toBe(memory);
  expect([...two.mixing]).toEqual(Array(30).fill(0));
  releaseFlow(two);
  // Twice does no harm.
  releaseFlow(two);
  expect(makeFlow(tube(30), perfectGas(), 1e5, 300).kernel?.memory).toBe(memory);
});

test('a thousand flows in a row share one memory', () => {
  const memories = new Set<object>();
  for (let n = 0; n < 1000; n++) {
    const flow = makeFlow(tube(10 + (n % 90)), perfectGas(), 1e5, 300);
    memories.add(flow.kernel?.memory as object);
    releaseFlow(flow);
  }
  expect(memories.size).toBe(1);
});

test('more cells than fit take the TypeScript loops', () => {
  const flow = makeFlow(tube(MAX_CELLS + 1), perfectGas(), 1e5, 300);
  expect(flow.kernel).toBeNull();
  recoverPrimitives(flow);
  expect(flow.pressure[MAX_CELLS]).toBeCloseTo(1e5, 5);
  expect(makeFlow(tube(MAX_CELLS), perfectGas(), 1e5, 300).kernel).not.toBeNull();
});
