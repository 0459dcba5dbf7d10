/** Whether the books of a run balance over whole cycles: mass, energy, and thrust by momentum against thrust by pressure. */
import type { Audits } from './performance.ts';
import type { Run, RunEnd, RunSettings } from './run.ts';

/** Audits copies `from` to `to` of the ledger. `thrust` is that by momentum through the open ends, N. */
export function audit(
  run: Run,
  from: number,
  to: number,
  thrust: number,
  disagreement: number,
  settings: RunSettings,
  end: RunEnd,
): Audits {
  const l = run.ledger;
  const d = (c: Parameters<typeof l.between>[2]) => l.between(from, to, c);
  const mass = Math.abs(d('massIn') - d('massOut') - d('heldMass')) / d('massIn');
  const energy =
    Math.abs(d('energyIn') - d('energyOut') + d('heatReleased') - d('wallHeat') - d('heldEnergy')) /
    Math.abs(d('heatReleased'));
  // Like mass and energy, the axial momentum that the gas in the duct has gained or lost belongs to the balance.
  const walls = d('wallImpulse') + d('lipImpulse') - d('heldMomentum');
  const thrustError = Math.abs(walls / d('time') - thrust) / Math.abs(thrust);
  return {
    massError: mass,
    energyError: energy,
    thrustError,
    periodicityError: disagreement,
    limitCycleReached: end === 'limit cycle' && disagreement < 2 * settings.tolerance,
    closed: mass < 1e-3 && energy < 1e-3 && thrustError < 1e-2,
  };
}
