/** How a scenario is made: a sound input of each kind of engine, changed in one respect. */
import type { CheckInput } from '../../shared/checks/check.ts';
import type { FuelSupply } from '../../shared/engine/brief.ts';
import type { RunningPerformance } from '../../shared/engine/performance.ts';
import { bentEngine, inputOf, poppetEngine, reedEngine } from './fixtures.ts';

export interface Scenario {
  pass: () => CheckInput;
  trip: () => CheckInput;
  tripped: 'fail' | 'caution';
}

export type Change = (input: CheckInput, running: RunningPerformance) => void;
export const reed = (change?: Change) => () => inputOf(reedEngine(), change);
export const poppet = (change?: Change) => () => inputOf(poppetEngine(), change);
export const bent = (change?: Change) => () => inputOf(bentEngine(), change);

export const cylinder = (
  over: Partial<Extract<FuelSupply, { kind: 'cylinder-liquid' | 'cylinder-vapour' }>>,
): FuelSupply => ({
  kind: 'cylinder-vapour',
  fuel: 'propane',
  capacity: 45,
  fill: 0.8,
  cylinders: 1,
  regulatorPressure: 1e5,
  vaporiserDuty: null,
  ...over,
});
export const carburettor = (ratedFlow: number): FuelSupply => ({
  kind: 'carburettor',
  fuel: 'petrol',
  ratedFlow,
  ratingDepression: 10159,
  capacity: 20,
});
export const onPetrol =
  (ratedFlow: number): Change =>
  (input) => {
    input.engine.feed = { fuel: 'petrol', mode: 'premixed', equivalenceRatio: 1 };
    input.brief.supply = carburettor(ratedFlow);
  };
export const walls =
  (kelvin: number): Change =>
  (_, running) => {
    running.profile.wallTemperature = running.profile.wallTemperature.map(() => kelvin);
  };
