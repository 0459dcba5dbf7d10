/** What a start that failed tells: its outcome, the likeliest cause, and the verdict on an engine whose starts have all failed. */
import { type Attempt, startGiven } from './attempt.ts';
import type { Machine } from './machine.ts';
import type { Performance, StartOutcome, ValveMotion } from './performance.ts';
import type { Run } from './run.ts';
import { valveMotion } from './valve-motion.ts';
import { deathCause, deathMessage } from './verdict.ts';

/** A failed start that fired this strongly ran on starting air: peak gauge pressure, share of ambient. */
const FIRED = 0.08;

export function failedOutcome({ start, run, machine, end }: Attempt): StartOutcome {
  const given = startGiven(start, run);
  if (end === 'not finite') return { ...given, outcome: 'model failure', cause: null };
  const kind = strongest(run, machine) > FIRED ? 'runs only with starting air' : 'dies';
  return { ...given, outcome: kind, cause: causeOf(run, machine) };
}

/** The verdict when no start has led to self-sustained running; the strongest start speaks. */
export function failedPerformance(attempts: Attempt[], starts: StartOutcome[], cellUpdates: number): Performance {
  const usable = attempts.filter((a) => a.end !== 'not finite');
  if (usable.length === 0) {
    const message =
      'The gas-dynamic model lost the solution in every start; the geometry is outside what it can compute.';
    return {
      verdict: { kind: 'model failure', message },
      edge: null,
      starts,
      running: null,
      failedValve: null,
      cellUpdates,
    };
  }
  const best = usable.reduce((a, b) => (strongest(b.run, b.machine) > strongest(a.run, a.machine) ? b : a));
  const valve = failedValve(best.run, best.machine);
  const cause = causeOf(best.run, best.machine);
  const diedAtCycle =
    best.run.cyclesWhenLeftAlone < 0
      ? 0
      : Math.max(0, best.run.ledger.count - best.run.cyclesWhenLeftAlone) + (best.cyclesMore ?? 0);
  const kind = strongest(best.run, best.machine) > FIRED ? 'runs only with starting air' : 'dies';
  return {
    verdict: { kind, cause, diedAtCycle, message: deathMessage(cause, valve, diedAtCycle) },
    edge: null,
    starts,
    running: null,
    failedValve: valve,
    cellUpdates,
  };
}

/** Peak gauge pressure of the strongest cycle, share of ambient. */
function strongest(run: Run, machine: Machine): number {
  const ambient = machine.engine.site.pressure;
  let peak = 0;
  for (let n = 0; n < run.ledger.count; n++) peak = Math.max(peak, run.ledger.at(n, 'peakPressure') / ambient - 1);
  return peak;
}

/** The valve over the cycles with starting air, when the engine fired best. */
function failedValve(run: Run, machine: Machine): ValveMotion | null {
  const to = Math.max(
    0,
    Math.min(run.ledger.count - 1, run.cyclesWhenLeftAlone < 0 ? run.ledger.count - 1 : run.cyclesWhenLeftAlone),
  );
  return valveMotion(run, machine, 0, to, null);
}

function causeOf(run: Run, machine: Machine) {
  const l = run.ledger;
  const last = l.count - 1;
  const from = Math.max(0, Math.min(last, run.cyclesWhenLeftAlone));
  const fuel = last > from ? l.between(from, last, 'fuelIn') : 0;
  const air = last > from ? l.between(from, last, 'airIn') : 0;
  const heat = last > from ? l.between(from, last, 'heatReleased') : 0;
  return deathCause({
    hottest: run.hottest,
    strongest: strongest(run, machine),
    burning: fuel > 0 ? heat / (fuel * machine.fuel.lowerHeatingValue) : 0,
    equivalenceRatio:
      air > 0 ? (fuel * machine.fuel.stoichiometricAirFuelRatio) / air : machine.engine.feed.equivalenceRatio,
    valve: failedValve(run, machine),
  });
}
