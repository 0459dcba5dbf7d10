/** What the intake valve was asked to do and did, over a span of cycles. */
import { followCures, followForces } from '../intake/follow.ts';
import type { Machine } from './machine.ts';
import type { ValveMotion } from './performance.ts';
import type { Run } from './run.ts';

/** Suction that a firing engine has, share of ambient, and its share of the period, when a failed start shows none
 * (mean of the reference engines in this model). */
const TYPICAL_SUCTION = 0.12;
const TYPICAL_WINDOW = 0.35;

/** Motion over the cycles between two copies of the ledger; null without a valve. `delay` comes from the traces. */
export function valveMotion(
  run: Run,
  machine: Machine,
  from: number,
  to: number,
  delay: number | null,
): ValveMotion | null {
  const { valve, engine } = machine;
  if (!valve) return null;
  const l = run.ledger;
  const cycles = to - from;
  const seen = cycles > 0 ? l.between(from, to, 'suctionTime') : 0;
  const measured = seen > 0;
  const window = measured ? seen / cycles : TYPICAL_WINDOW * machine.period;
  const suction = measured ? l.between(from, to, 'offeredIntegral') / seen : TYPICAL_SUCTION * engine.site.pressure;
  const input = {
    mass: valve.movingMass,
    lift: valve.stopLift,
    preload: valve.preload,
    stiffness: valve.stiffness,
    pressureArea: valve.pressureArea,
    count: valve.count,
    suction,
    window,
  };
  const forces = followForces(input);
  let seatPressure = 0;
  for (let n = from + 1; n <= to; n++)
    seatPressure = Math.max(seatPressure, l.at(n, 'peakPressure') - engine.site.pressure);
  return {
    peakLift: valve.peakLift,
    stopLift: valve.stopLift,
    openFraction: measured ? l.between(from, to, 'openIntegral') / (valve.fullArea * seen) : 0,
    openingDelay: delay,
    suctionWindow: window,
    seatImpactSpeed: valve.seatImpact,
    stopImpactSpeed: valve.stopImpact,
    forceOffered: forces.offered,
    forceNeeded: forces.needed,
    followRatio: forces.ratio,
    peakSeatPressure: seatPressure,
    naturalFrequency: valve.naturalFrequency,
    movingMass: valve.movingMass,
    cures: forces.ratio < 1 ? followCures(input) : null,
  };
}
