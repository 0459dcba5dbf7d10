/** Starts end as a builder ends them, and no time goes into an engine that has shown that it does not run. */
import { describe, expect, it } from 'vitest';
import {
  droneEngine,
  engine22Inch,
  engine50Cm,
  oneLargePoppet,
  valvelessUTube,
} from '../../shared/calibration/reference-engines.ts';
import { firedAlone, survived, tryStart } from '../../shared/engine/attempt.ts';
import { calibratedConstants } from '../../shared/engine/constants.ts';
import type { Engine } from '../../shared/engine/engine.ts';
import { hottestGas } from '../../shared/engine/held.ts';
import { makeMachine } from '../../shared/engine/machine.ts';
import { approachCells } from '../../shared/engine/resolution.ts';
import { Run } from '../../shared/engine/run.ts';
import { simulate } from '../../shared/engine/simulate.ts';
import { startAttempts } from '../../shared/engine/start.ts';

const SETTINGS = { group: 4, tolerance: 0.02, minCycles: 5, maxCycles: 24 };
const attemptsOf = (engine: Engine) => startAttempts(engine.sections, engine.intake.kind !== 'valveless');
const withMixture = (engine: Engine, equivalenceRatio: number): Engine => ({
  ...engine,
  feed: { ...engine.feed, equivalenceRatio },
});
/** With a twentieth of the fuel that leans this engine out (AIAA 2005-0228: near φ 0.6), whatever the spark burns warms nothing. */
const unlit = () => withMixture(droneEngine(), 0.03);

describe('a start', () => {
  it.each([
    ['drone engine', droneEngine],
    ['22-inch engine', engine22Inch],
    ['50-cm engine', engine50Cm],
    ['valveless U-tube', valvelessUTube],
  ])('of the %s goes on for five acoustic periods after gas is first alight, and then ends', (_, make) => {
    const engine = make();
    const machine = makeMachine(engine, calibratedConstants(), approachCells(engine));
    const [start] = attemptsOf(engine);
    const run = new Run(machine, start, SETTINGS);
    let lit = 0;
    while (run.starting) {
      expect(run.step()).toBeNull();
      if (lit === 0 && run.report.heatRelease > 0 && hottestGas(machine.flow) > 1100) lit = run.time;
    }
    expect(lit).toBeGreaterThan(0);
    expect(run.startLength).toBeLessThan(start.duration);
    expect((run.startLength - lit) / machine.period).toBeCloseTo(5, 1);
  });

  it('lasts as long as the attempt allows when nothing lights, and each is tried; the engine is given up without a cycle more', () => {
    const { verdict, starts } = simulate(unlit());
    expect(verdict).toMatchObject({ kind: 'dies', diedAtCycle: 0 });
    expect(starts.map((s) => s.duration)).toEqual(attemptsOf(unlit()).map((s) => s.duration));
    const engine = unlit();
    const { run, end, machine } = tryStart(engine, calibratedConstants(), attemptsOf(engine)[0], 28, SETTINGS);
    expect(end).toBe('died');
    expect(run.time - run.startLength).toBeLessThan(0.05 * machine.period);
  });

  it('is reported as it was given: its length, and the air that flowed in on average', () => {
    const { verdict, starts } = simulate(droneEngine());
    if (verdict.kind !== 'self-sustaining') throw new Error(verdict.message);
    const [given] = attemptsOf(droneEngine());
    expect(verdict.start.duration).toBeLessThan(given.duration);
    expect(verdict.start).toEqual({ airPressure: given.airPressure, duration: starts[0].duration });
    expect(verdict.message).toContain(`${(verdict.start.duration * 1e3).toFixed(0)} ms`);
    const engine = droneEngine();
    const { run } = tryStart(engine, calibratedConstants(), given, approachCells(engine), SETTINGS);
    expect(starts[0].airFlow * starts[0].duration).toBeCloseTo(run.startAir, 9);
  });
});

describe('a further start', () => {
  it('is not tried once the engine has fired by itself and died all the same', () => {
    const engine = oneLargePoppet();
    const attempts = attemptsOf(engine).map((start) =>
      tryStart(engine, calibratedConstants(), start, approachCells(engine), SETTINGS),
    );
    expect(attempts.map(survived)).toEqual([false, false, false]);
    const fired = attempts.findIndex(firedAlone);
    expect(fired).toBeGreaterThanOrEqual(0);
    expect(fired).toBeLessThan(2);
    expect(simulate(engine).starts).toHaveLength(fired + 1);
  });

  it('with gentle air is kept for engines with valves', () => {
    expect(attemptsOf(droneEngine())).toHaveLength(3);
    expect(attemptsOf(valvelessUTube())).toHaveLength(2);
  });
});
