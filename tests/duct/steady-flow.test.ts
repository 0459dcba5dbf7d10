import { describe, expect, it } from 'vitest';
import { applyCellSources, makeCellSources } from '../../shared/combustion/cell-sources.ts';
import { openEnd } from '../../shared/duct/boundary.ts';
import type { Flow } from '../../shared/duct/flow.ts';
import { makeGridFromArea } from '../../shared/duct/grid.ts';
import { calibratedConstants } from '../../shared/engine/constants.ts';
import { FUELS } from '../../shared/gas/fuels.ts';
import { bisect } from '../../shared/reference/bisect.ts';
import { chokedFlowFactor } from '../../shared/reference/choked-flow.ts';
import { fannoLength, fannoPressure, fannoTemperature } from '../../shared/reference/fanno-flow.ts';
import { areaRatio, machAtAreaRatio, pressureRatio } from '../../shared/reference/isentropic-flow.ts';
import { normalShock } from '../../shared/reference/normal-shock.ts';
import { rayleighMach, rayleighPressure, rayleighStagnationTemperature } from '../../shared/reference/rayleigh-flow.ts';
import { GAS_CONSTANT, march, outside, perfectGas, startFlow, tube } from './support.ts';

const gamma = 1.4;
const CP = (gamma * GAS_CONSTANT) / (gamma - 1);
const mach = (flow: Flow, i: number) => flow.velocity[i] / flow.soundSpeed[i];
const stagnationTemperature = (flow: Flow, i: number) => flow.temperature[i] + flow.velocity[i] ** 2 / (2 * CP);

/** Gas from a reservoir at p0, 300 K through the duct to a lower pressure, until steady. */
function blow(flow: Flow, reservoir: number, back: number, time: number, sources?: (dt: number) => void): void {
  march(flow, time, {
    left: openEnd(outside(reservoir, 300), 0),
    right: openEnd(outside(back, 300), 0),
    sources,
  });
}

describe('steady nozzle flow', () => {
  const length = 1;
  const throat = 0.5;
  const area = (x: number) => 1e-3 * (1 + 1.2 * ((x - throat) / 0.5) ** 2);
  const start = (p: number) => () => ({ pressure: p, temperature: 300 });
  const choked = (p0: number) => (chokedFlowFactor(gamma, GAS_CONSTANT) * p0 * 1e-3) / Math.sqrt(300);

  it('follows the isentropic relations when subsonic, within 0.3 %', () => {
    const p0 = 1.1e5;
    const back = 1.07e5;
    const exit = bisect((m) => pressureRatio(m, gamma) - p0 / back, 0, 1);
    const star = area(length) / areaRatio(exit, gamma);
    // Started at rest so that the scheme must find the flow by itself.
    const flow = startFlow(makeGridFromArea(area, length, 100), perfectGas(), start(1.08e5));
    blow(flow, p0, back, 0.3);
    for (const i of [5, 25, 40, 50, 60, 75, 95]) {
      const expected = machAtAreaRatio(area(flow.grid.position[i]) / star, gamma, 'subsonic');
      expect(Math.abs(mach(flow, i) / expected - 1)).toBeLessThan(0.003);
      expect(Math.abs((flow.pressure[i] * pressureRatio(expected, gamma)) / p0 - 1)).toBeLessThan(0.001);
      expect(Math.abs(stagnationTemperature(flow, i) / 300 - 1)).toBeLessThan(0.001);
    }
  });

  it('chokes: passes the greatest flow and goes supersonic on the exact branch', () => {
    const p0 = 4e5;
    const flow = startFlow(makeGridFromArea(area, length, 100), perfectGas(), (x) => start(x < throat ? 3e5 : 0.5e5)());
    blow(flow, p0, 0.2e5, 0.05);
    for (const i of [10, 30, 65, 80, 95]) {
      const expected = machAtAreaRatio(area(flow.grid.position[i]) / 1e-3, gamma, i < 50 ? 'subsonic' : 'supersonic');
      expect(Math.abs(mach(flow, i) / expected - 1)).toBeLessThan(0.005);
    }
    expect(Math.abs(flow.massFlux[75] / choked(p0) - 1)).toBeLessThan(0.003);
  });

  it('stands a normal shock where the back pressure asks for it', () => {
    // Shock chosen at x = 0.8; the exit pressure then follows from NACA Report 1135.
    const p0 = 2e5;
    const before = machAtAreaRatio(area(0.8) / 1e-3, gamma, 'supersonic');
    const shock = normalShock(before, gamma);
    const p0Behind = (p0 / pressureRatio(before, gamma)) * shock.pressureRatio * pressureRatio(shock.mach, gamma);
    const starBehind = area(0.8) / areaRatio(shock.mach, gamma);
    const exit = machAtAreaRatio(area(length) / starBehind, gamma, 'subsonic');
    const back = p0Behind / pressureRatio(exit, gamma);
    const cells = 200;
    const flow = startFlow(makeGridFromArea(area, length, cells), perfectGas(), (x) =>
      start(x < throat ? 1.8e5 : back)(),
    );
    blow(flow, p0, back, 0.1);
    let front = 105;
    while (front < cells - 1 && mach(flow, front) > 1) front++;
    expect(Math.abs(flow.grid.position[front] - 0.8)).toBeLessThan(0.02);
    const last = machAtAreaRatio(area(flow.grid.position[195]) / starBehind, gamma, 'subsonic');
    expect(Math.abs(mach(flow, 195) / last - 1)).toBeLessThan(0.03);
    expect(Math.abs(flow.massFlux[60] / choked(p0) - 1)).toBeLessThan(0.005);
  });
});

describe('steady flow with friction (Fanno)', () => {
  it('follows the Fanno line of the model’s own friction within 0.5 %', () => {
    const friction = 0.005;
    const cells = 100;
    const [diameter, length] = [0.02, 1];
    const flow = startFlow(tube(cells, length, (Math.PI / 4) * diameter ** 2), perfectGas(), () => ({
      pressure: 1.5e5,
      temperature: 300,
    }));
    // Friction alone: no heat through the wall, no turbulence in the drag, no mixing.
    const constants = { ...calibratedConstants(), friction, wallTurbulence: 0, axialMixing: 0 };
    const sources = makeCellSources(flow, constants, FUELS.propane, 300);
    blow(flow, 2e5, 1.2e5, 0.12, (dt) => {
      sources.wallTemperature.set(flow.temperature);
      applyCellSources(flow, sources, dt, 0, false);
    });
    const m = (i: number) => mach(flow, i);
    expect(m(95)).toBeGreaterThan(0.3);
    for (const [a, b] of [
      [5, 30],
      [30, 60],
      [60, 90],
      [5, 95],
    ]) {
      const travelled = (4 * friction * (flow.grid.position[b] - flow.grid.position[a])) / diameter;
      const expected = fannoLength(m(a), gamma) - fannoLength(m(b), gamma);
      expect(Math.abs(expected / travelled - 1)).toBeLessThan(0.005);
      const pressure = fannoPressure(m(b), gamma) / fannoPressure(m(a), gamma);
      expect(Math.abs(flow.pressure[b] / flow.pressure[a] / pressure - 1)).toBeLessThan(0.005);
      const temperature = fannoTemperature(m(b), gamma) / fannoTemperature(m(a), gamma);
      expect(Math.abs(flow.temperature[b] / flow.temperature[a] / temperature - 1)).toBeLessThan(0.005);
    }
  });
});

describe('steady flow with heat (Rayleigh)', () => {
  it('follows the Rayleigh line within 0.5 %', () => {
    const cells = 100;
    const areaOfTube = 1e-3;
    const flow = startFlow(tube(cells, 1, areaOfTube), perfectGas(), () => ({ pressure: 1.2e5, temperature: 300 }));
    const power = 60e3; // W, between x = 0.3 and 0.7
    blow(flow, 1.5e5, 1.3e5, 0.2, (dt) => {
      for (let i = 30; i < 70; i++) flow.energy[i] += (power / (40 * flow.grid.volume[i])) * dt;
    });
    const [a, b] = [25, 75];
    const before = stagnationTemperature(flow, a);
    const after = stagnationTemperature(flow, b);
    expect(Math.abs((after - before) / (power / (flow.massFlux[a] * CP)) - 1)).toBeLessThan(0.005);
    const reached = rayleighMach((rayleighStagnationTemperature(mach(flow, a), gamma) * after) / before, gamma);
    expect(reached).toBeGreaterThan(1.3 * mach(flow, a));
    expect(Math.abs(mach(flow, b) / reached - 1)).toBeLessThan(0.005);
    const pressure = rayleighPressure(reached, gamma) / rayleighPressure(mach(flow, a), gamma);
    expect(Math.abs(flow.pressure[b] / flow.pressure[a] / pressure - 1)).toBeLessThan(0.005);
  });
});
