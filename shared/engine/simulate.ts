/**
 * The gas-dynamic model's door: an engine in, its performance out. Pure: same input, same bits.
 *
 * Every start of the fixed set is tried until one leads to self-sustained running, or shows that no other would.
 */
import { releaseFlow } from '../duct/flow.ts';
import { type Attempt, firedAlone, goOn, startGiven, stoppedOnFineGrid, survived, tryStart } from './attempt.ts';
import { calibratedConstants, type ModelConstants } from './constants.ts';
import { edgeSentence, edgeVariants } from './edge.ts';
import type { Engine } from './engine.ts';
import { failedOutcome, failedPerformance } from './failed-start.ts';
import type { Machine } from './machine.ts';
import { measure } from './measure.ts';
import type { Performance, StartAttempt, StartOutcome } from './performance.ts';
import { approachCells, finerGrids, shippedCells } from './resolution.ts';
import type { RunSettings } from './run.ts';
import { startAttempts } from './start.ts';

export type ModelFidelity = 'screen' | 'full' | 'detailed';

export interface SimulateOptions {
  /**
   * screen: the coarse grid alone; full: shipped resolution, reached from the coarse grid's limit cycle; detailed: full, with the
   * x–t field. Default full.
   */
  fidelity?: ModelFidelity;
  constants?: ModelConstants;
  /** Cells along the duct; default by fidelity. For grid studies. */
  cells?: number;
  /** Repeat the verdict under small changes of mixture, air and start: six more runs on the coarse grid. */
  probeEdge?: boolean;
  /** Starts to try instead of the fixed set. */
  starts?: StartAttempt[];
}

// Groups are even, so that an engine which alternates between two cycles still has a limit cycle.
const APPROACH: RunSettings = { group: 4, tolerance: 0.02, minCycles: 5, maxCycles: 24 };
const SETTINGS: Record<ModelFidelity, RunSettings> = {
  screen: APPROACH,
  full: { group: 4, tolerance: 0.01, minCycles: 5, maxCycles: 50 },
  detailed: { group: 4, tolerance: 0.01, minCycles: 5, maxCycles: 50 },
};

/**
 * Simulates one engine. Never throws for a physical reason; an engine that cannot be gridded throws RangeError. With
 * `probeEdge` the verdict is repeated under small changes, so that a design at the edge is found to be there.
 */
export function simulate(engine: Engine, options: SimulateOptions = {}): Performance {
  const performance = tryStarts(engine, options);
  if (!options.probeEdge || performance.verdict.kind === 'model failure') return performance;
  const starts = options.starts ?? startAttempts(engine.sections, engine.intake.kind !== 'valveless');
  const runs = performance.running !== null;
  const edge = { tried: 0, running: 0 };
  let { cellUpdates } = performance;
  for (const variant of edgeVariants(engine, starts)) {
    const trial = tryStarts(variant.engine, {
      ...options,
      fidelity: 'screen',
      cells: undefined,
      starts: variant.starts,
    });
    edge.tried++;
    if (trial.running) edge.running++;
    cellUpdates += trial.cellUpdates;
  }
  const verdict = { ...performance.verdict, message: performance.verdict.message + edgeSentence(edge, runs) };
  return { ...performance, verdict, edge, cellUpdates };
}

function tryStarts(engine: Engine, options: SimulateOptions): Performance {
  const machines: Machine[] = [];
  try {
    return tryStartsOn(machines, engine, options);
  } finally {
    for (const machine of machines) releaseFlow(machine.flow);
  }
}

/** Notes each machine that it makes in `machines`. */
function tryStartsOn(machines: Machine[], engine: Engine, options: SimulateOptions): Performance {
  const fidelity = options.fidelity ?? 'full';
  const constants = options.constants ?? calibratedConstants();
  const settings = SETTINGS[fidelity];
  const cells = options.cells ?? (fidelity === 'screen' ? approachCells(engine) : shippedCells(engine));
  const coarse = Math.min(cells, approachCells(engine));
  const attempts: Attempt[] = [];
  const starts: StartOutcome[] = [];
  let cellUpdates = 0;
  const spend = (attempt: Attempt) => {
    machines.push(attempt.machine);
    cellUpdates += attempt.run.steps * attempt.machine.flow.grid.cells;
    return attempt;
  };
  for (const start of options.starts ?? startAttempts(engine.sections, engine.intake.kind !== 'valveless')) {
    const approach = tryStart(engine, constants, start, coarse, APPROACH);
    let attempt = approach;
    for (const level of finerGrids(coarse, cells)) {
      if (!survived(attempt)) break;
      spend(attempt);
      attempt = goOn(attempt, level, level === cells ? settings : APPROACH);
    }
    const running = survived(attempt) ? measure(attempt, settings, fidelity === 'detailed') : null;
    spend(attempt);
    if (running) {
      const given = startGiven(start, attempt.run);
      starts.push({ ...given, outcome: 'self-sustaining', cause: null });
      const { airPressure, duration } = given;
      const message = `It runs by itself after ${(duration * 1e3).toFixed(0)} ms of starting air at ${(airPressure / 1e3).toFixed(1)} kPa.`;
      return {
        verdict: { kind: 'self-sustaining', start: { airPressure, duration }, message },
        edge: null,
        starts,
        running,
        failedValve: null,
        cellUpdates,
      };
    }
    const failed =
      attempt === approach || attempt.end === 'not finite' ? attempt : stoppedOnFineGrid(approach, attempt);
    attempts.push(failed);
    starts.push(failedOutcome(failed));
    if (firedAlone(failed)) break;
  }
  return failedPerformance(attempts, starts, cellUpdates);
}
