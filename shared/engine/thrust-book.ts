/**
 * Thrust of one step, counted twice: by the momentum that leaves through the open ends, and by pressure and friction on every
 * inside wall. The audit compares the two.
 */
import type { StepBook } from '../duct/step.ts';
import { L } from './ledger.ts';
import type { Machine } from './machine.ts';

/** Adds the step's impulses to the running totals `now` of the ledger and returns the thrust impulse, N s. */
export function bookThrust(m: Machine, b: StepBook, now: Float64Array, dt: number, jetMomentum: number): number {
  const area = m.flow.grid.faceArea;
  const n = m.flow.grid.cells;
  const ambient = m.engine.site.pressure;
  const right = b.rightMomentum - ambient * area[n] * dt;
  const left = b.leftMomentum - ambient * area[0] * dt;
  const outRight = b.rightMass >= 0;
  const s = m.sources;
  // Push of sloping walls on the gas, gauge; walls feel the opposite, and forwards is −x.
  const walls = b.wallPush - ambient * (area[n] - area[0]) * dt;
  let wallForce = walls - s.frictionImpulse - s.wideningImpulse + jetMomentum;
  let thrust = 0;
  if (outRight) {
    thrust += right;
    now[L.exhaustImpulse] += right;
  } else {
    now[L.lipImpulse] -= right;
  }
  if (m.valve) {
    wallForce += left;
  } else {
    const aft = m.engine.intake.kind === 'valveless' && m.engine.intake.mouth === 'aft';
    const gauge = b.leftMass < 0 ? left : 0;
    const counted = aft ? gauge : -gauge;
    thrust += counted;
    now[L.intakeImpulse] += counted;
    // A bent engine turns the intake's flow round: the bend's walls carry twice its flux.
    if (aft) wallForce += 2 * left;
    now[L.lipImpulse] -= aft ? left - gauge : -(left - gauge);
  }
  now[L.wallImpulse] += wallForce;
  return thrust;
}
