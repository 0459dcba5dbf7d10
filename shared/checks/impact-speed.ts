/** Shared by the checks of arrival speeds. */
import type { Facts } from './facts.ts';
import { atMost, type Judgement, notApplicable } from './rule.ts';
import { percent, speed } from './say.ts';

export function judgeImpact(facts: Facts, which: 'seat' | 'stop', cure: string): Judgement {
  const { engine, running, brief, caution } = facts;
  if (engine.intake.kind === 'valveless') return notApplicable('There is no valve.');
  if (running === null || running.valve === null) return notApplicable('The engine does not run.');
  const value = which === 'seat' ? running.valve.seatImpactSpeed : running.valve.stopImpactSpeed;
  const limit = brief.limits.maxImpactSpeed;
  return atMost(
    { value, limit, unit: 'm/s', cautionMargin: caution },
    {
      pass: `The valve meets its ${which} at ${speed(value)}; ${speed(limit)} is the limit.`,
      caution: `The valve meets its ${which} at ${speed(value)}, close to the limit of ${speed(limit)}; ${cure}.`,
      fail: `The valve meets its ${which} at ${speed(value)}, above the limit of ${speed(limit)}; take ${percent(1 - limit / value)} off it: ${cure}.`,
    },
  );
}
