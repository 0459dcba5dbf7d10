/** The reference engines run, or do not run, as published. One set of constants; nothing here is tuned per engine. */
import { describe, expect, it } from 'vitest';
import {
  chamber20,
  droneEngine,
  engine22Inch,
  engine50Cm,
  oneLargePoppet,
  scaled,
  twelveSmallPoppets,
  valvelessUTube,
} from '../../shared/calibration/reference-engines.ts';
import type { Engine } from '../../shared/engine/engine.ts';
import type { Performance, RunningPerformance } from '../../shared/engine/performance.ts';
import { simulate } from '../../shared/engine/simulate.ts';

const performances = new Map<string, Performance>();
function performanceOf(engine: Engine): Performance {
  const key = JSON.stringify(engine);
  let p = performances.get(key);
  if (!p) {
    p = simulate(engine);
    performances.set(key, p);
  }
  return p;
}
function running(engine: Engine): RunningPerformance {
  const { verdict, running: r } = performanceOf(engine);
  expect(verdict.kind, verdict.message).toBe('self-sustaining');
  if (!r) throw new Error(verdict.message);
  return r;
}
const ENGINES: [string, () => Engine][] = [
  ['drone', droneEngine],
  ['22-inch', engine22Inch],
  ['50-cm', engine50Cm],
  ['valveless U-tube', valvelessUTube],
];
const drone = (phi: number) => droneEngine({ portRatio: 0.6, stopRatio: 0.18, equivalenceRatio: phi });

describe('reference engines', () => {
  it.each(ENGINES)('%s runs by itself, and its books balance', (_, make) => {
    const r = running(make());
    // Mass and energy to 0.1 %, thrust by momentum against thrust by walls to 1 %.
    expect(r.audits.massError).toBeLessThan(1e-3);
    expect(r.audits.energyError).toBeLessThan(1e-3);
    expect(r.audits.thrustError).toBeLessThan(1e-2);
    expect(r.audits.limitCycleReached).toBe(true);
    expect(r.audits.closed).toBe(true);
  });

  it.each(ENGINES)('%s releases its heat within 90° of the pressure peak (Rayleigh’s criterion)', (_, make) => {
    expect(Math.abs(running(make()).heatReleasePhase)).toBeLessThan(90);
  });

  it('gives the drone engine its thrust, peak pressure and fuel specific impulse (AIAA 2005-0228 abstract)', () => {
    const r = running(droneEngine());
    expect(Math.abs(r.thrust / 453.7 - 1)).toBeLessThan(0.15);
    expect(Math.abs((r.peakPressure - 101_325) / 137_900 - 1)).toBeLessThan(0.2);
    expect(Math.abs(r.thrust / (r.fuelFlow * 9.80665) / 1450 - 1)).toBeLessThan(0.15);
  });

  it('finds the lean limit of the drone engine between φ 0.5 and 0.75 (AIAA 2005-0228: near 0.6)', () => {
    expect(performanceOf(drone(0.75)).verdict.kind).toBe('self-sustaining');
    const lean = performanceOf(drone(0.5)).verdict;
    expect(lean.kind).not.toBe('self-sustaining');
    expect('cause' in lean && lean.cause).toBe('over-lean');
  });

  it('finds the frequencies of the 22-inch engine, 45 Hz (NACA MR E5J02) and the 50-cm engine, 220 Hz (NC State 2006)', () => {
    expect(Math.abs(running(engine22Inch()).frequency / 45 - 1)).toBeLessThan(0.08);
    expect(Math.abs(running(engine50Cm()).frequency / 220 - 1)).toBeLessThan(0.08);
  });

  it('gives the 50-cm engine 18 to 20 N at a TSFC of 2 to 3.5 lb/(lbf h) (NC State 2006; memory medium)', () => {
    const r = running(engine50Cm());
    expect(r.thrust).toBeGreaterThan(18);
    expect(r.thrust).toBeLessThan(20);
    expect(r.tsfc * 35303.94).toBeGreaterThan(2);
    expect(r.tsfc * 35303.94).toBeLessThan(3.5);
  });

  it('keeps the peak pressure of one geometry whatever its size (Univ. Limerick 2010: within 0.07 bar)', () => {
    const base = running(droneEngine()).peakPressure;
    for (const factor of [0.4, 2]) {
      expect(Math.abs(running(scaled(droneEngine(), factor)).peakPressure - base)).toBeLessThan(0.15e5);
    }
  });

  it('splits the thrust of the valveless U-tube near 40 : 60 and burns 1.7 to 5 lb/(lbf h) (contract reports, 1960s)', () => {
    const r = running(valvelessUTube());
    const share = r.thrustSplit.intake / r.bareThrust;
    expect(share).toBeGreaterThan(0.3);
    expect(share).toBeLessThan(0.5);
    expect(r.tsfc * 35303.94).toBeGreaterThan(1.7);
    expect(r.tsfc * 35303.94).toBeLessThan(5);
  });
});

describe('poppets on a 0.2 m chamber', () => {
  it.each([0.1, 0.15, 0.3])('one of %d kg does not follow (common practice, no source)', (mass) => {
    const { verdict, failedValve } = performanceOf(oneLargePoppet(mass));
    expect(verdict.kind).not.toBe('self-sustaining');
    expect('cause' in verdict && verdict.cause).toBe('intake does not follow');
    expect(failedValve?.followRatio).toBeLessThan(0.6);
    // The message carries both forces, and a cure is named that would reach balance.
    expect(verdict.message).toMatch(/offers each valve [\d.]+ N .* needs [\d.]+ N/);
    expect(failedValve?.cures?.mass).toBeLessThan(mass);
    expect(failedValve?.cures?.valves).toBeGreaterThan(1);
  });

  it('twelve small ones of the same port area are another engine: it runs, on less thrust than with reeds', () => {
    const twelve = running(twelveSmallPoppets());
    const reeds = running(chamber20());
    expect(twelve.thrust).toBeLessThan(reeds.thrust);
    expect(twelve.valve?.followRatio).toBeGreaterThan(
      2 * (performanceOf(oneLargePoppet()).failedValve?.followRatio ?? 0),
    );
  });
});

describe('feeds', () => {
  const fed = (mode: Engine['feed']['mode'], equivalenceRatio: number): Engine => ({
    ...chamber20(),
    feed: { fuel: 'propane', mode, equivalenceRatio },
  });

  it.each(['premixed', 'steady-injection', 'timed-injection'] as const)('%s keeps the φ that was asked', (mode) => {
    expect(Math.abs(running(fed(mode, 1.1)).equivalenceRatio / 1.1 - 1)).toBeLessThan(0.06);
  });

  it('timing the injection gains on steady injection at the same φ', () => {
    expect(running(fed('timed-injection', 1.1)).tsfc).toBeLessThan(running(fed('steady-injection', 1.1)).tsfc);
  });

  it('counts fuel that no air can burn: efficiency falls nearly as 1/φ beyond stoichiometric', () => {
    const rich = running(fed('premixed', 1.3));
    // Outside air that the exhaust draws back in burns a little of the excess.
    expect(rich.combustionEfficiency).toBeLessThan(1 / 1.3 + 0.06);
    expect(rich.tsfc).toBeGreaterThan(running(fed('premixed', 1)).tsfc);
  });
});

describe('the model as a function', () => {
  it('gives the same bits for the same engine', () => {
    expect(JSON.stringify(simulate(engine50Cm(), { fidelity: 'screen' }))).toBe(
      JSON.stringify(simulate(engine50Cm(), { fidelity: 'screen' })),
    );
  });

  it('averages its traces to the thrust that it reports', () => {
    const r = running(engine50Cm());
    const mean = r.traces.thrust.reduce((a, b) => a + b, 0) / r.traces.thrust.length;
    expect(Math.abs(mean / r.bareThrust - 1)).toBeLessThan(0.03);
  });

  it('multiplies the exhaust’s thrust by the augmenter’s measured gain (NASA/TM-2006-214224: 1.71 straight)', () => {
    const d = 6.5 * 0.0254;
    const r = running({ ...droneEngine(), augmenter: { diameter: 2.46 * d, length: 10 * d, gap: d, taper: 1 } });
    expect(Math.abs(r.augmentation - 1.71)).toBeLessThan(0.15);
    expect(r.bareThrust).toBeCloseTo(running(droneEngine()).bareThrust, 6);
  });
});

describe('the edge of running', () => {
  it('is found where the drone engine leans out, and not at its rated mixture (AIAA 2005-0228: lean-out near φ 0.6)', () => {
    const rated = simulate(drone(1.1), { fidelity: 'screen', probeEdge: true });
    expect(rated.edge).toEqual({ tried: 6, running: 6 });
    expect(rated.verdict.message).not.toContain('edge');
    let dead = 0.5;
    let sound = 1.1;
    while (sound - dead > 0.01) {
      const middle = (dead + sound) / 2;
      if (simulate(drone(middle), { fidelity: 'screen' }).running) sound = middle;
      else dead = middle;
    }
    const edge = simulate(drone(sound), { fidelity: 'screen', probeEdge: true });
    expect(edge.edge?.running).toBeLessThan(6);
    expect(edge.verdict.message).toMatch(/at the edge: .* runs in \d of 6 trials/);
  });
});
