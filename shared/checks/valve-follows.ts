import type { ValveMotion } from '../engine/performance.ts';
import { atLeast, type CheckRule, notApplicable } from './rule.ts';
import { figure, mm } from './say.ts';

/** A valve of a running engine that stays below this opens so little that the model's verdict hangs on it (judgement, no source). */
const RUNS_ALL_THE_SAME = 0.3;

/** The force that suction offers against the force that moves the valve to full lift in half of the suction time. */
export const valveFollows: CheckRule = {
  id: 'valve-follows',
  title: 'Intake valve follows the suction',
  source: 'Newton’s second law on the moving mass; forces from the gas-dynamic model',
  binding: true,
  judge({ engine, running, performance, caution }) {
    if (engine.intake.kind === 'valveless') return notApplicable('There is no valve.');
    const valve = running?.valve ?? performance.failedValve;
    if (valve === null) return notApplicable('The model reports no valve motion, since no start got that far.');
    const forces = `suction offers ${figure(valve.forceOffered)} N of the ${figure(valve.forceNeeded)} N that it needs to open within half of ${figure(valve.suctionWindow * 1e3)} ms`;
    return atLeast(
      // An engine that runs has proved that its valve follows well enough; below 1 it opens late, which costs thrust.
      running
        ? { value: valve.followRatio, limit: RUNS_ALL_THE_SAME, unit: '', cautionMargin: 1 / RUNS_ALL_THE_SAME - 1 }
        : { value: valve.followRatio, limit: 1, unit: '', cautionMargin: caution },
      {
        pass: `The valve follows: ${forces}.`,
        caution: `The valve only just follows: ${forces}; ${cures(valve)}.`,
        fail: `The valve does not follow: ${forces}; ${cures(valve)}.`,
      },
    );
  },
};

function cures(valve: ValveMotion): string {
  const c = valve.cures;
  if (c === null) return 'a lighter valve, less lift or more valves would help';
  const ways: string[] = [];
  if (c.mass !== null)
    ways.push(`${figure(c.mass * 1e3)} g of moving mass instead of ${figure(valve.movingMass * 1e3)} g`);
  if (c.lift !== null) ways.push(`${mm(c.lift)} of lift instead of ${mm(valve.stopLift)}`);
  if (c.stiffness !== null) ways.push(`a spring rate of ${figure(c.stiffness)} N/m`);
  if (c.valves !== null) ways.push(`${Math.ceil(c.valves)} smaller valves`);
  return ways.length > 0
    ? `any one of these would cure it: ${ways.join(', or ')}`
    : 'no single change of mass, lift, spring or number would cure it';
}
