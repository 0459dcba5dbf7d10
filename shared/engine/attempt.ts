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

/** Whether the engine still fired when its run ended, air and spark long gone. */
export function survived({ run, end }: Attempt): boolean {
  return (end === 'limit cycle' || end === 'cycles spent') && run.cyclesWhenLeftAlone >= 0;
}
