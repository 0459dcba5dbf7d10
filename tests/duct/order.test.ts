import { describe, expect, it } from 'vitest';
import type { FinerCells } from '../../shared/duct/cell-spacing.ts';
import { bisect } from '../../shared/reference/bisect.ts';
import { GAS_CONSTANT, march, perfectGas, startFlow, tube } from './support.ts';

/**
 * Simple wave: a smooth pulse that runs right into still gas, before it steepens into a shock. Along dx/dt = u + c the
 * state is constant; c = c0 + (γ−1)/2 u and the rest is isentropic (Courant and Friedrichs, "Supersonic Flow and Shock
 * Waves", ch. III).
 */
const gamma = 1.4;
const c0 = Math.sqrt(gamma * GAS_CONSTANT * 300);
const pulse = (x: number) => 40 * Math.exp(-(((x - 0.35) / 0.08) ** 2));

function stateOf(u: number) {
  const c = c0 + ((gamma - 1) / 2) * u;
  return { velocity: u, temperature: 300 * (c / c0) ** 2, pressure: 1e5 * (c / c0) ** ((2 * gamma) / (gamma - 1)) };
}

function exactVelocity(x: number, time: number): number {
  const from = bisect((x0) => x0 + (c0 + ((gamma + 1) / 2) * pulse(x0)) * time - x, x - 3 * c0 * time - 1, x);
  return pulse(from);
}

function error(cells: number, time: number, finer: FinerCells | null = null): number {
  const flow = startFlow(tube(cells, 1, 1, finer), perfectGas(gamma), (x) => stateOf(pulse(x)));
  march(flow, time, { courant: 0.5 });
  let sum = 0;
  for (let i = 0; i < cells; i++)
    sum += Math.abs(flow.velocity[i] - exactVelocity(flow.grid.position[i], time)) * flow.grid.width[i];
  return sum;
}

describe('order of accuracy', () => {
  it('is at least 1.8 on a smooth simple wave', () => {
    const time = 0.0008;
    const [coarse, middle, fine] = [100, 200, 400].map((cells) => error(cells, time));
    expect(Math.log2(coarse / middle)).toBeGreaterThan(1.8);
    expect(Math.log2(middle / fine)).toBeGreaterThan(1.8);
    expect(fine).toBeLessThan(0.002 * 40);
  });

  it('is at least 1.8 where cells widen, and the pulse comes out of them as it should', () => {
    // The pulse runs from x = 0.35 to 0.65 through cells that become three times as wide between 0.3 and 0.7.
    const [coarse, middle, fine] = [100, 200, 400].map((cells) =>
      error(cells, 0.0008, { to: 0.3, ratio: 3, over: 0.4 }),
    );
    expect(Math.log2(coarse / middle)).toBeGreaterThan(1.8);
    expect(Math.log2(middle / fine)).toBeGreaterThan(1.8);
    expect(fine).toBeLessThan(0.004 * 40);
  });

  it('is at least 1.8 for a smooth layer of fuel and heat that drifts with the gas', () => {
    // Uniform pressure and velocity: temperature and composition are only carried along.
    const layer = (x: number) => Math.exp(-(((x - 1.3) / 0.08) ** 2));
    const measure = (cells: number) => {
      const time = 0.0012;
      const flow = startFlow(tube(cells, 3), perfectGas(gamma), (x) => ({
        pressure: 1e5,
        temperature: 300 / (1 + 0.5 * layer(x)),
        velocity: 200,
        fuel: 0.06 * layer(x),
      }));
      march(flow, time, { courant: 0.5 });
      let density = 0;
      let fuel = 0;
      for (let i = 0; i < cells; i++) {
        const x = flow.grid.position[i];
        if (x < 1 || x > 2) continue; // waves from the closed ends have not come here
        const there = layer(x - 200 * time);
        density += Math.abs(flow.density[i] - (1e5 / (GAS_CONSTANT * 300)) * (1 + 0.5 * there)) / cells;
        fuel += Math.abs(flow.fuel[i] - 0.06 * there) / cells;
      }
      return { density, fuel };
    };
    const coarse = measure(300);
    const fine = measure(1200);
    expect(Math.log(coarse.density / fine.density) / Math.log(4)).toBeGreaterThan(1.8);
    expect(Math.log(coarse.fuel / fine.fuel) / Math.log(4)).toBeGreaterThan(1.8);
  });
});
