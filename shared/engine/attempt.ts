/** One start of an engine: from still air on the coarse grid, or onwards from there on the fine one. */
import type { ModelConstants } from './constants.ts';
import type { Engine } from './engine.ts';
import { type Machine, makeMachine } from './machine.ts';
import type { StartAttempt } from './performance.ts';
import { refineMachine } from './refine.ts';
import { Run, type RunEnd, type RunSettings } from './run.ts';

export interface Attempt {
  start: StartAttempt;
  machine: Machine;
  run: Run;
  end: RunEnd;
  /** Cycles that it went on for on the fine grid before it stopped there. */
  cyclesMore?: number;
}

/** Starts an engine from still air and runs it to an end. */
export function tryStart(
  engine: Engine,
  constants: ModelConstants,
  start: StartAttempt,
  cells: number,
  settings: RunSettings,
): Attempt {
  const machine = makeMachine(engine, constants, cells);
  const run = new Run(machine, start, settings);
  return { start, machine, run, end: run.toEnd() };
}

/** The running engine of a coarse attempt on a finer grid, until it repeats itself or dies there. */
export function goOn(coarse: Attempt, cells: number, settings: RunSettings): Attempt {
  const machine = refineMachine(coarse.machine, cells);
  const run = Run.goOn(coarse.run, machine, settings);
  return { start: coarse.start, machine, run, end: run.toEnd() };
}

/**
 * An engine that stops on the fine grid, out of a coarse cycle that repeated itself, would not have got there from a start. The
 * coarse run tells why, since it holds the cycles with starting air.
 */
export function stoppedOnFineGrid(approach: Attempt, fine: Attempt): Attempt {
  return { ...approach, end: 'died', cyclesMore: fine.run.ledger.count - 1 };
}

/** Peak gauge pressure after the start, share of ambient, above which a fading engine has fired by itself. */
const FIRED_ALONE = 0.15;

/**
 * Whether the engine, though it died, fired by itself after air and spark had gone: it has been lit as well as a start can light it,
 * and the next would not keep it alive. Of 108 random engines with valves that died so another start saved three, of 268 without
 * six, all at the edge of running.
 */
export function firedAlone({ run, machine }: Attempt): boolean {
  const ambient = machine.engine.site.pressure;
  // The cycle in which air was taken away still holds what it did.
  for (let n = run.cyclesWhenLeftAlone + 1; run.cyclesWhenLeftAlone >= 0 && n < run.ledger.count; n++)
    if (run.ledger.at(n, 'peakPressure') > (1 + FIRED_ALONE) * ambient) return true;
  return false;
}

/** The start as it was given, and the air that it blew in on average, kg/s. */
export function startGiven(start: StartAttempt, run: Run): StartAttempt & { airFlow: number } {
  const duration = run.startLength;
  return { ...start, duration, airFlow: run.startAir / duration };
}

/** Whether the engine still fired when its run ended, air and spark long gone. */
export function survived({ run, end }: Attempt): boolean {
  return (end === 'limit cycle' || end === 'cycles spent') && run.cyclesWhenLeftAlone >= 0;
}
