/**
 * Where a study's search stands, in few bytes: designs that it holds are told by the byte at which the log has their answers,
 * and read from there when it goes on.
 */
import type { EvaluationSummary } from '../evaluation/evaluation.ts';
import type { EvaluationOrder } from '../search/evaluation-order.ts';
import { judge, type Member, type SearchProblem } from '../search/outcome.ts';
import type { SearchState } from '../search/search-state.ts';
import { type Growth, putTogether, type Skeleton, takeApart } from '../search/state-parts.ts';
import type { RecordLog } from '../store/record-log.ts';
import { summaryOf } from '../store/stored-evaluations.ts';
import { type KeptDesign, type KeptDesignsState, keptDesign } from './kept-designs.ts';
import { outcomeOf } from './search-outcome.ts';

/** All that a search of a study goes on from. */
export interface StudySearchState {
  search: SearchState;
  kept: Map<string, KeptDesignsState>;
  asked: { screen: number; full: number };
}

type Entry = KeptDesignsState['kept'][number];

type Fidelity = EvaluationOrder['fidelity'];

/** Where answers lie in the log, for as long as somebody holds the design. */
export class Whereabouts {
  readonly #places = new WeakMap<readonly number[], { [fidelity in Fidelity]?: { id: string; position: number } }>();
  readonly #kept = new WeakMap<KeptDesign, number>();

  /** The record with this identifier, which begins at this byte, is the answer about x. */
  note(x: readonly number[], fidelity: Fidelity, id: string, position: number): void {
    const places = this.#places.get(x);
    if (places) places[fidelity] = { id, position };
    else this.#places.set(x, { [fidelity]: { id, position } });
  }

  of({ x, problem, id }: Member): number | undefined {
    const { full, screen } = this.#places.get(x) ?? {};
    const wanted = `${problem}/${id}`;
    return [full, screen].find((place) => place?.id === wanted)?.position;
  }

  /** This design is kept of the full run of x. */
  keep(design: KeptDesign, x: readonly number[]): void {
    const position = this.#places.get(x)?.full?.position;
    if (position !== undefined) this.#kept.set(design, position);
  }

  ofKept(design: KeptDesign): number | undefined {
    return this.#kept.get(design);
  }
}

/** Plain data. Answers are told by their places in `positions`; −1: not in the log as such, the next one of `apart`. Lists of
 * numbers that mostly rise hold each as its distance from the one before, which deflates better. */
export interface PackedState {
  /** Bytes at which answers begin; distances. */
  positions: Float64Array;
  skeleton: Skeleton;
  members: PackedMembers;
  kept: [id: string, PackedDesigns][];
  asked: StudySearchState['asked'];
}

/** Members, and after them the screening runs of those that have one. */
interface PackedMembers {
  answers: Int32Array;
  apart: Member[];
  /** 1 where one has a screening run, 0 where not. */
  screened: Uint8Array;
  violation: Float64Array;
  rank: Float64Array;
  worth: Float64Array;
}

interface PackedDesigns extends Omit<KeptDesignsState, 'kept' | 'extremes'> {
  /** The kept ones, and after them the extremes; distances. */
  answers: Float64Array;
  apart: Entry[];
  /** Distances. */
  places: Float64Array;
  extremes: string[];
}

function distances(numbers: ArrayLike<number>): Float64Array {
  return Float64Array.from(numbers, (number, n) => number - (n > 0 ? numbers[n - 1] : 0));
}

function summed(distances: Float64Array): Float64Array {
  let sum = 0;
  return distances.map((distance) => {
    sum += distance;
    return sum;
  });
}

/** Shares its parts with the state: to be written at once. @param from what of the growth is noted already */
export function packSearch(
  { search, kept, asked }: StudySearchState,
  from: Growth['from'],
  where: Whereabouts,
): { state: PackedState; growth: Growth } {
  const { members, skeleton, growth } = takeApart(search, from);
  const all = [...members];
  for (const { screened } of members) if (screened) all.push(screened);
  const bytesOfMembers = all.map((member) => where.of(member));
  const entries = [...kept].map(([id, state]) => ({ id, state, list: [...state.kept, ...state.extremes.values()] }));
  const bytesOfEntries = entries.map(({ list }) => list.map(({ design }) => where.ofKept(design)));
  const bytes = [...bytesOfMembers, ...bytesOfEntries.flat()].filter((byte) => byte !== undefined);
  const positions = Float64Array.from(new Set(bytes)).sort();
  const answers = new Map(Array.from(positions, (position, n) => [position, n]));
  const told = (list: readonly (number | undefined)[]) =>
    Int32Array.from(list, (byte) => (byte === undefined ? -1 : (answers.get(byte) as number)));
  return {
    state: {
      positions: distances(positions),
      skeleton,
      members: {
        answers: told(bytesOfMembers),
        apart: all.filter((_, n) => bytesOfMembers[n] === undefined).map((member) => ({ ...member, screened: null })),
        screened: Uint8Array.from(members, ({ screened }) => (screened ? 1 : 0)),
        violation: Float64Array.from(all, ({ violation }) => violation),
        rank: Float64Array.from(all, ({ rank }) => rank),
        worth: Float64Array.from(all, ({ worth }) => worth),
      },
      kept: entries.map(({ id, state: { extremes, stride, running, feasible }, list }, e) => [
        id,
        {
          answers: distances(told(bytesOfEntries[e])),
          apart: list.filter((_, n) => bytesOfEntries[e][n] === undefined),
          places: distances(list.map(({ place }) => place)),
          extremes: [...extremes.keys()],
          stride,
          running,
          feasible,
        },
      ]),
      asked,
    },
    growth,
  };
}

/**
 * The inverse of `packSearch`, which `where` also learns of.
 * @throws {RangeError} when the log or what has grown is not what it was
 */
export function unpackSearch(
  { positions, skeleton, members, kept, asked }: PackedState,
  growths: readonly Growth[],
  log: Pick<RecordLog, 'at'>,
  problems: readonly SearchProblem[],
  where: Whereabouts,
): StudySearchState {
  const answers = Array.from(summed(positions), (position) => readAnswer(log, position, where));
  const byId = new Map(problems.map((problem) => [problem.id, problem]));
  const apart = members.apart.values();
  const all = Array.from(members.answers, (answer, n): Member => {
    const judged = answer < 0 ? (apart.next().value as Member) : judgeAgain(answers[answer], byId);
    return Object.assign(judged, {
      violation: members.violation[n],
      rank: members.rank[n],
      worth: members.worth[n],
    });
  });
  let screen = members.screened.length;
  members.screened.forEach((has, n) => {
    if (has === 1) all[n].screened = all[screen++];
  });
  return {
    search: putTogether(skeleton, all, growths),
    kept: new Map(kept.map(([id, designs]) => [id, unpackDesigns(designs, answers, where)])),
    asked,
  };
}

/** A record of the log that answers an order of the search. */
interface Answer {
  id: string;
  architecture: string;
  x: number[];
  summary: EvaluationSummary;
}

function readAnswer(log: Pick<RecordLog, 'at'>, position: number, where: Whereabouts): Answer {
  const record = log.at(position) as (Answer & { fidelity: Fidelity }) | null;
  if (!Array.isArray(record?.x)) throw new RangeError(`No answer begins at byte ${position}.`);
  const { id, architecture, x, fidelity } = record;
  where.note(x, fidelity, id, position);
  return { id, architecture, x, summary: summaryOf(record) };
}

function judgeAgain({ id, architecture, x, summary }: Answer, problems: ReadonlyMap<string, SearchProblem>): Member {
  const problem = problems.get(architecture);
  if (!problem) throw new RangeError(`There is no architecture ${architecture}.`);
  return judge(Number(id.slice(architecture.length + 1)), problem, x, outcomeOf(summary));
}

function unpackDesigns(packed: PackedDesigns, answers: readonly Answer[], where: Whereabouts): KeptDesignsState {
  const { extremes, stride, running, feasible } = packed;
  const apart = packed.apart.values();
  const places = summed(packed.places);
  const list = Array.from(summed(packed.answers), (answer, n): Entry => {
    if (answer < 0) return apart.next().value as Entry;
    const { architecture, x, summary } = answers[answer];
    const design = keptDesign(architecture, summary);
    where.keep(design, x);
    return { place: places[n], design };
  });
  const kept = list.slice(0, list.length - extremes.length);
  const ends = list.slice(kept.length);
  return { kept, extremes: new Map(extremes.map((figure, n) => [figure, ends[n]])), stride, running, feasible };
}
