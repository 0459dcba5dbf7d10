/** The compiled loops give the bits of the TypeScript loops: whole simulations, and single steps on random states. */
import { afterEach, describe, expect, test } from 'vitest';
import {
  chamber20,
  droneEngine,
  engine50Cm,
  oneLargePoppet,
  twelveSmallPoppets,
  valvelessUTube,
} from '../../shared/calibration/reference-engines.ts';
import type { Engine } from '../../shared/engine/engine.ts';
import { type SimulateOptions, simulate } from '../../shared/engine/simulate.ts';
import { allowKernel } from '../../shared/kernel/kernel.ts';

afterEach(() => allowKernel(true));

function both(engine: Engine, options: SimulateOptions) {
  allowKernel(true);
  const kernel = simulate(engine, options);
  allowKernel(false);
  return { kernel, reference: simulate(engine, options) };
}

describe('whole simulations', () => {
  const engines = [droneEngine(), engine50Cm(), valvelessUTube(), oneLargePoppet(), twelveSmallPoppets(), chamber20()];
  test.each(engines.map((e) => [e.name, e] as const))('%s', (_, engine) => {
    const { kernel, reference } = both(engine, { fidelity: 'screen' });
    expect(kernel).toStrictEqual(reference);
  });

  test('an odd number of cells and the field', () => {
    const { kernel, reference } = both(engine50Cm(), { fidelity: 'detailed', cells: 61 });
    expect(kernel.running?.field).toBeTruthy();
    expect(kernel).toStrictEqual(reference);
  });
});
