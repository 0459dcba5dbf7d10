/** What the benchmark measures, each in a process of its own. Times are processor time of the user, s, unless said. */
import { median, sum } from 'd3-array';
import {
  droneEngine,
  engine22Inch,
  engine50Cm,
  oneLargePoppet,
  twelveSmallPoppets,
  valvelessUTube,
} from '../../shared/calibration/reference-engines.ts';
import { wall } from '../../shared/duct/boundary.ts';
import { makeFlow, makeGasClosure, setCell } from '../../shared/duct/flow.ts';
import { makeGridFromArea } from '../../shared/duct/grid.ts';
import { recoverPrimitives, settleTemperatures } from '../../shared/duct/primitives.ts';
import { makeStepBook, stableStep, stepFlow } from '../../shared/duct/step.ts';
import { calibratedConstants } from '../../shared/engine/constants.ts';
import type { Engine } from '../../shared/engine/engine.ts';
import { makeMachine } from '../../shared/engine/machine.ts';
import { SHIPPED_CELLS } from '../../shared/engine/resolution.ts';
import { Run } from '../../shared/engine/run.ts';
import { simulate } from '../../shared/engine/simulate.ts';
import { startAttempts } from '../../shared/engine/start.ts';
import { makePerfectGasTable } from '../../shared/gas/gas-table.ts';
import type { KernelFunctions } from '../../shared/kernel/kernel.ts';
import { riemannState, starState } from '../../shared/reference/riemann-exact.ts';

/** Named figures of one process. */
export type Figures = Record<string, number>;

/** Engines whose verdict is timed: all kinds of intake, running and dead. */
const ENGINES = [droneEngine(), engine22Inch(), engine50Cm(), valvelessUTube(), twelveSmallPoppets(), oneLargePoppet()];

function userSeconds(): number {
  return process.cpuUsage().user / 1e6;
}

/** Rounds over all engines until the compilers are quiet, as in a worker that has been at it for some seconds; then those that count. */
const WARM_ROUNDS = 4;
const ROUNDS = 3;

/** Each reference engine's verdict, s of processor time: the first of the process, and the middle of later ones. */
function verdicts(): Figures {
  const verdictOf = (engine: Engine) => {
    const before = userSeconds();
    const { cellUpdates, verdict } = simulate(engine);
    return { cellUpdates, kind: verdict.kind, seconds: userSeconds() - before };
  };
  const first = verdictOf(ENGINES[0]);
  for (let n = 0; n < WARM_ROUNDS; n++) ENGINES.forEach(verdictOf);
  const rounds = Array.from({ length: ROUNDS }, () => ENGINES.map(verdictOf));
  const sum = (key: 'cellUpdates' | 'seconds') => rounds.flat().reduce((total, run) => total + run[key], 0);
  return {
    'full model with verdict, Mcell/s': sum('cellUpdates') / sum('seconds') / 1e6,
    'first verdict of a process, ms': first.seconds * 1e3,
    ...Object.fromEntries(
      ENGINES.map(({ name }, n) => [
        `verdict, ${name} (${rounds[0][n].kind}), ms`,
        1e3 * (median(rounds, (round) => round[n].seconds) ?? Number.NaN),
      ]),
    ),
  };
}

/** Sod's tube of 400 cells at p = 1 bar, to the time when the shock has gone 0.35 of the length, again and again. */
function sod(): Figures {
  const gamma = 1.4;
  const gasConstant = 287.05;
  const left = { density: 1, velocity: 0, pressure: 1e5 };
  const right = { density: 0.125, velocity: 0, pressure: 1e4 };
  const gas = makeGasClosure(makePerfectGasTable(gamma, gasConstant));
  const grid = makeGridFromArea(() => 1, 1, 400);
  const until = 0.2 / Math.sqrt(1e5);
  const book = makeStepBook();
  const end = wall();
  let updates = 0;
  const flow = makeFlow(grid, gas, 1e5, 300);
  const once = () => {
    for (let i = 0; i < grid.cells; i++) {
      const { density, pressure } = grid.position[i] < 0.5 ? left : right;
      setCell(flow, i, pressure, pressure / (density * gasConstant), 0, 0, 0);
    }
    settleTemperatures(flow);
    let time = 0;
    while (time < until) {
      const dt = Math.min(stableStep(flow), until - time);
      stepFlow(flow, end, end, dt, book);
      recoverPrimitives(flow);
      time += dt;
      updates += grid.cells;
    }
  };
  for (let n = 0; n < 20; n++) once();
  updates = 0;
  const before = userSeconds();
  for (let n = 0; n < 40; n++) once();
  const seconds = userSeconds() - before;
  const star = starState(left, right, gamma);
  let error = 0;
  for (let i = 0; i < grid.cells; i++) {
    const exact = riemannState(left, right, gamma, (grid.position[i] - 0.5) / until, star).density;
    error += Math.abs(flow.density[i] - exact) * grid.dx;
  }
  return { 'plain Euler on Sod, Mcell/s': updates / seconds / 1e6, 'Sod, mean density error, %': error * 100 };
}

/** Steps of a stretch that is looked at for allocation, a third of a cycle, and how many of these. */
const STRETCH = 150;
const STRETCHES = 101;

/** A running engine, stepped on and on: speed, allocation, and the share of time outside the compiled loops. */
function steps(): Figures {
  const engine = droneEngine();
  const machine = makeMachine(engine, calibratedConstants(), SHIPPED_CELLS);
  const [start] = startAttempts(engine.sections, true);
  const run = new Run(machine, start, { group: 6, tolerance: 0, minCycles: 1e6, maxCycles: 4000 });
  const go = (n: number) => {
    for (let i = 0; i < n; i++) {
      const end = run.step();
      if (end) throw new Error(`the engine to be measured ended with "${end}" after ${run.steps} steps`);
    }
  };
  // Compilers that still work beside the first stretches allocate too.
  go(60_000);
  const allocated = (n: number) => {
    const heap = process.memoryUsage().heapUsed;
    go(n);
    return process.memoryUsage().heapUsed - heap;
  };
  // Looking at the heap allocates as well. Most stretches hold no end of a cycle, whose own allocation is told apart.
  const stretches = (n: number) => Array.from({ length: STRETCHES }, () => allocated(n));
  const looking = median(stretches(0)) ?? Number.NaN;
  const cycles = run.ledger.count;
  const bytes = stretches(STRETCH).map((all) => all - looking);
  const ends = run.ledger.count - cycles;
  const before = userSeconds();
  go(20_000);
  const speed = (20_000 * SHIPPED_CELLS) / (userSeconds() - before) / 1e6;
  const figures: Figures = {
    'full model, Mcell/s': speed,
    'allocated a step, bytes': (median(bytes) ?? Number.NaN) / STRETCH,
    'allocated at the end of a cycle, bytes': (sum(bytes) - STRETCHES * (median(bytes) ?? Number.NaN)) / ends,
  };
  const kernel = machine.flow.kernel;
  if (kernel) {
    const clock = { inside: 0 };
    kernel.run = timed(kernel.run, clock);
    go(5000);
    clock.inside = 0;
    const from = performance.now();
    go(20_000);
    figures['time outside the kernel, %'] = 100 * (1 - clock.inside / (performance.now() - from));
  }
  return figures;
}

/** The same functions, adding the time that they take to `clock.inside`, ms. */
function timed(run: KernelFunctions, clock: { inside: number }): KernelFunctions {
  const wrap =
    (f: (n: number, a: number, b: number, c: number) => void) =>
    (n: number, a = 0, b = 0, c = 0): void => {
      const from = performance.now();
      f(n, a, b, c);
      clock.inside += performance.now() - from;
    };
  return {
    prepare: wrap(run.prepare),
    prepareSources: wrap(run.prepareSources),
    recoverPrimitives: wrap(run.recoverPrimitives),
    predictHalfStep: wrap(run.predictHalfStep),
    innerFluxes: wrap(run.innerFluxes),
    applyFluxes: wrap(run.applyFluxes),
    applyCellSources: wrap(run.applyCellSources),
  };
}

/** Many designs, for the memory that stays. */
function memory(): Figures {
  for (let n = 0; n < 4; n++) for (const engine of ENGINES) simulate(engine, { fidelity: 'screen' });
  return { 'peak memory, MB': process.resourceUsage().maxRSS / 1024 };
}

/** From nothing to the first machine ready to run, ms of wall time since the process began. */
function startUp(): Figures {
  makeMachine(droneEngine(), calibratedConstants(), SHIPPED_CELLS);
  return { 'start-up to the first machine, ms': performance.now() };
}

/** Loaded on demand as the report is. */
async function chance(): Promise<Figures> {
  return (await import('./bench-chance.ts')).chance();
}

/** Loaded on demand, so that the report's code does not weigh on the start-up and the memory of the model. */
async function report(): Promise<Figures> {
  return (await import('./bench-report-part.ts')).report();
}

export const PARTS = { verdicts, sod, steps, memory, startUp, chance, report } as const;
export type PartName = keyof typeof PARTS;
