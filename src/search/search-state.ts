/**
 * Where a search stands between two generations: enough to go on from there instead of asking for everything again. Plain
 * data for a structured clone; members are shared between its parts, so it must be copied whole or not at all.
 */
import type { AllocationState } from './allocation.ts';
import type { BranchState } from './branch.ts';
import type { Member } from './outcome.ts';
import type { ConvergencePoint } from './search-result.ts';
import type { Yardstick } from './yardstick.ts';

/** To be raised with every change of the search that changes what it asks for or what a state holds. */
export const SEARCH_STATE_FORMAT = 5;

export interface SearchState {
  /** The search would have come to this very state under any budget between these, in full evaluations. */
  budget: { least: number; greatest: number };
  /** By the search's clock, s: when it began, and when it stood here. */
  began: number;
  stood: number;
  branches: BranchState[];
  allocation: AllocationState;
  /** Of the generator that carries designs between kin. */
  seeding: number[];
  front: Member[];
  convergence: ConvergencePoint[];
  /** Designs that ran while there was no yardstick. */
  ran: Member[];
  yardstick: Yardstick | null;
  volume: number;
  spent: number;
  nextId: number;
}

/** True when a search with this budget and time limit passes through the state. */
export function passesThrough(
  { budget, began, stood }: Pick<SearchState, 'budget' | 'began' | 'stood'>,
  { evaluations, timeLimit }: { evaluations: number; timeLimit: number | null },
): boolean {
  return (
    evaluations >= budget.least && evaluations <= budget.greatest && (timeLimit === null || stood - began < timeLimit)
  );
}
