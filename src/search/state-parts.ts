/**
 * A search's state taken apart for whoever keeps it: the members, which are answers that are kept elsewhere; what only ever
 * grows, of which the new part is enough; and the rest, which is small. Put together again it is the same state.
 */
import type { BranchState } from './branch.ts';
import type { EvolutionState } from './evolution.ts';
import type { Member } from './outcome.ts';
import type { ConvergencePoint } from './search-result.ts';
import type { SearchState } from './search-state.ts';

/** How much there is of what only grows. */
export interface Extent {
  /** Fingerprints of each branch's designs. */
  known: number[];
  convergence: number;
}

/** What has been added since `from`. Plain data. */
export interface Growth {
  from: Extent;
  known: Uint32Array[];
  convergence: ConvergencePoint[];
}

/** Places in the list of members; −1 stands for none. */
type Places = Int32Array;

/** The state with members replaced by their places, without what grows. Plain data. */
export interface Skeleton extends Omit<SearchState, 'branches' | 'front' | 'ran' | 'convergence'> {
  branches: (Omit<BranchState, 'evolution' | 'leader'> & {
    evolution: Omit<EvolutionState, 'population' | 'archive' | 'known'> & { population: Places; archive: Places };
    leader: number;
  })[];
  front: Places;
  ran: Places;
}

export const NOTHING_YET = (branches: number): Extent => ({ known: new Array(branches).fill(0), convergence: 0 });

export function extentOf({ branches, convergence }: SearchState): Extent {
  return { known: branches.map(({ evolution }) => evolution.known.length), convergence: convergence.length };
}

/** Shares its parts with the state. `members` holds each once; their screening runs are not among them. */
export function takeApart(state: SearchState, from: Extent): { members: Member[]; skeleton: Skeleton; growth: Growth } {
  const places = new Map<Member, number>();
  const place = (member: Member) => {
    const known = places.get(member);
    if (known !== undefined) return known;
    places.set(member, places.size);
    return places.size - 1;
  };
  const all = (members: readonly Member[]) => Int32Array.from(members, place);
  const { branches, front, ran, convergence, ...rest } = state;
  const skeleton: Skeleton = {
    ...rest,
    branches: branches.map(({ evolution: { population, archive, known: _, ...evolution }, leader, ...branch }) => ({
      ...branch,
      evolution: { ...evolution, population: all(population), archive: all(archive) },
      leader: leader === null ? -1 : place(leader),
    })),
    front: all(front),
    ran: all(ran),
  };
  const growth: Growth = {
    from,
    known: branches.map(({ evolution: { known } }, b) => known.slice(from.known[b])),
    convergence: convergence.slice(from.convergence),
  };
  return { members: [...places.keys()], skeleton, growth };
}

/**
 * @param growths all of them since the beginning, in order
 * @throws {RangeError} when one is missing
 */
export function putTogether(skeleton: Skeleton, members: readonly Member[], growths: readonly Growth[]): SearchState {
  const all = (places: Places) => Array.from(places, (place) => members[place]);
  const extent = NOTHING_YET(skeleton.branches.length);
  for (const { from, known, convergence } of growths) {
    if (from.convergence !== extent.convergence || from.known.some((length, b) => length !== extent.known[b])) {
      throw new RangeError('A part of the search’s state is missing.');
    }
    extent.convergence += convergence.length;
    known.forEach((marks, b) => {
      extent.known[b] += marks.length;
    });
  }
  return {
    ...skeleton,
    branches: skeleton.branches.map(({ evolution, leader, ...branch }, b) => ({
      ...branch,
      evolution: {
        ...evolution,
        population: all(evolution.population),
        archive: all(evolution.archive),
        known: joined(
          growths.map(({ known }) => known[b]),
          extent.known[b],
        ),
      },
      leader: leader < 0 ? null : members[leader],
    })),
    front: all(skeleton.front),
    ran: all(skeleton.ran),
    convergence: growths.flatMap(({ convergence }) => convergence),
  };
}

function joined(parts: readonly Uint32Array[], length: number): Uint32Array {
  const whole = new Uint32Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
