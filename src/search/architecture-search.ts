/**
 * The search over all architectures: one population each, one front. Everything that it asks for follows from the seed and
 * the outcomes alone, so a run that was cut goes on by being fed its stored outcomes, for any number of workers. A noted
 * state saves it most of these.
 */
import { Allocation } from './allocation.ts';
import { Archive } from './archive.ts';
import { Branch, type BranchCounts } from './branch.ts';
import { kinship } from './cross-seeding.ts';
import { type Answering, answer, type EvaluationOrder } from './evaluation-order.ts';
import { judge, type Member, type SearchProblem } from './outcome.ts';
import { childRandom } from './random.ts';
import {
  type ArchitectureSearchResult,
  type ConvergencePoint,
  problemResult,
  screeningReport,
} from './search-result.ts';
import type { SearchState } from './search-state.ts';
import { evaluationBudget, firstReason, hypervolumeStall, type StoppingRule, timeLimit } from './termination.ts';
import { createYardstick, measure, type Yardstick } from './yardstick.ts';

export interface ArchitectureSearchSettings {
  /** Budget, in full evaluations; a screening run counts as `screenCost` of one. */
  evaluations: number;
  /** Members of each architecture's population. */
  population: number;
  /** Designs of one generation, all architectures together; null: the population, but at least two for each architecture. */
  generation: number | null;
  /** Cost of a screening run in full evaluations; null: no screening, every design is run in full. */
  screenCost: number | null;
  /** Least share of an even deal that every architecture keeps, 0 to 1. */
  floor: number;
  /** Stops when this many generations bring no more hypervolume; null: never. */
  stallGenerations: number | null;
  /** s by `clock`; null: none. The only rule that depends on the machine. */
  timeLimit: number | null;
}

/** What stands where a caller has no opinion. */
export const ARCHITECTURE_SEARCH: Omit<ArchitectureSearchSettings, 'evaluations' | 'population'> = {
  generation: null,
  screenCost: 0.25,
  floor: 0.15,
  stallGenerations: null,
  timeLimit: null,
};

export interface SearchProgress {
  /** Spent and allowed, in full evaluations. */
  evaluations: number;
  budget: number;
  generation: number;
  hypervolume: number;
  /** Common front so far. */
  front: readonly Member[];
  problems: ({ id: string } & BranchCounts)[];
}

export interface ArchitectureSearch extends Answering {
  problems: readonly SearchProblem[];
  seed: string;
  settings: ArchitectureSearchSettings;
  onProgress?(progress: SearchProgress): void;
  /** s; needed with a time limit. */
  clock?(): number;
  /** Ends the search after the generation in hand. */
  signal?: AbortSignal;
  /** Where to go on: a state of a search with the same problems, seed and settings that passes through it (`passesThrough`). */
  from?: SearchState | null;
  /** Called between generations. The state is not a copy: it holds for the call only. */
  onState?(state: () => SearchState): void | Promise<void>;
}

/** Throws RangeError when problems disagree on their objectives, share an id, or settings or evaluator break their contract. */
export async function searchArchitectures(search: ArchitectureSearch): Promise<ArchitectureSearchResult> {
  refuseBadSearch(search);
  const { problems, settings, seed } = search;
  const { screenCost } = settings;
  const began = search.from?.began ?? search.clock?.() ?? 0;
  const rules = stoppingRules(search, began);
  const branches = problems.map((problem) => new Branch(problem, settings.population, seed));
  const kin = problems.map((to, b) =>
    problems.flatMap((from, donor) => {
      const places = donor === b ? null : kinship(from, to);
      return places === null ? [] : [{ evolution: branches[donor].evolution, places }];
    }),
  );
  const seeding = childRandom(seed, 'between architectures');
  const allocation = new Allocation(problems.length, settings.floor);
  const front = new Archive(1000);
  const convergence: ConvergencePoint[] = [];
  const dearest = 1 + (screenCost ?? 0);
  // The opening has two rounds of equal deals; in the second, kin already lend their best.
  const openingSize = Math.max(4, Math.ceil(settings.population / 2));
  const generationSize = settings.generation ?? Math.max(settings.population, 2 * problems.length);
  const ran: Member[] = [];
  let yardstick: Yardstick | null = null;
  let volume = 0;
  let spent = 0;
  let nextId = 0;
  let stoppedBecause: string | null = null;
  let budget = { least: 0, greatest: Infinity };

  const state = (): SearchState => ({
    budget: { ...budget, least: Math.max(budget.least, spent + dearest) },
    began,
    stood: search.clock?.() ?? 0,
    branches: branches.map((branch) => branch.state),
    allocation: allocation.state,
    seeding: seeding.state,
    front: front.members,
    convergence,
    ran,
    yardstick,
    volume,
    spent,
    nextId,
  });

  if (search.from) {
    const { from } = search;
    branches.forEach((branch, b) => {
      branch.state = from.branches[b];
    });
    allocation.state = from.allocation;
    seeding.state = from.seeding;
    front.members = from.front;
    ran.push(...from.ran);
    ({ budget, yardstick, volume, spent, nextId } = from);
    for (const point of from.convergence) {
      convergence.push(point);
      // Rules that keep a history get it back.
      const { hypervolume } = point;
      firstReason(rules, { evaluations: point.evaluations + dearest, generation: convergence.length, hypervolume });
    }
  }

  async function run(branch: Branch[], designs: number[][], fidelity: 'screen' | 'full'): Promise<Member[]> {
    const orders = designs.map(
      (x, n): EvaluationOrder => ({ id: nextId++, problem: branch[n].problem.id, x, fidelity }),
    );
    const outcomes = await answer(search, orders);
    spent += orders.length * (fidelity === 'screen' ? (screenCost ?? 0) : 1);
    return orders.map((order, n) => judge(order.id, branch[n].problem, order.x, outcomes[n]));
  }

  while (stoppedBecause === null) {
    const affordable = Math.floor((settings.evaluations - spent) / dearest + 1e-9);
    const opening = convergence.length < 2;
    const counts = opening
      ? problems.map(() => Math.max(1, Math.min(openingSize, Math.floor(affordable / 2 / problems.length))))
      : allocation.deal(Math.min(generationSize, affordable));
    const wanted = opening ? 2 * problems.length * openingSize : generationSize;
    budget =
      affordable >= wanted
        ? { ...budget, least: Math.max(budget.least, spent + wanted * dearest) }
        : { least: settings.evaluations, greatest: settings.evaluations };
    const asked = branches.map((branch, b) => branch.ask(counts[b], kin[b], convergence.length === 0 ? null : seeding));
    const owners = asked.flatMap((designs, b) => designs.map(() => branches[b]));
    const designs = asked.flat();
    if (designs.length === 0) {
      stoppedBecause = 'no new design is left to try';
      break;
    }

    const screened = screenCost === null ? [] : await run(owners, designs, 'screen');
    const shares = slices(asked.map((own) => own.length));
    const promoted =
      screenCost === null
        ? designs.map(() => true)
        : branches.flatMap((branch, b) => branch.promote(screened.slice(...shares[b])));
    const chosen = designs.map((_, n) => n).filter((n) => promoted[n]);
    const decided = await run(
      chosen.map((n) => owners[n]),
      chosen.map((n) => designs[n]),
      'full',
    );
    const full: (Member | null)[] = designs.map(() => null);
    chosen.forEach((n, k) => {
      full[n] = decided[k];
    });

    branches.forEach((branch, b) => {
      branch.tell(full.slice(...shares[b]), screened.slice(...shares[b]));
    });
    if (yardstick === null) {
      ran.push(...decided.filter((member) => member.f.length > 0));
      yardstick = createYardstick(ran);
      if (yardstick !== null) ran.length = 0;
    }
    const others = front.members.slice();
    const othersVolume = volume;
    branches.forEach((branch, b) => {
      allocation.learn(b, branch.gain(yardstick, others, othersVolume), asked[b].length);
    });
    for (const branch of branches) for (const member of branch.fresh) front.add(member);
    volume = yardstick === null ? 0 : measure(yardstick, front.members);
    const { members } = front;
    const held = yardstick;
    if (held !== null) {
      allocation.rank(
        problems.map(({ id }) => {
          const rest = members.filter(({ problem }) => problem !== id);
          return rest.length === members.length ? 0 : volume - measure(held, rest);
        }),
      );
    }

    const tried = branches.reduce((sum, branch) => sum + branch.counts.designs, 0);
    convergence.push({ evaluations: spent, designs: tried, hypervolume: volume });
    const generation = convergence.length;
    search.onProgress?.({
      evaluations: spent,
      budget: settings.evaluations,
      generation,
      hypervolume: volume,
      front: front.members,
      problems: branches.map((branch) => ({ id: branch.problem.id, ...branch.counts })),
    });
    // The budget is spent when it does not pay for one more design whose screening succeeds.
    const progress = { evaluations: spent + dearest, generation, hypervolume: volume };
    stoppedBecause = search.signal?.aborted ? 'interrupted' : firstReason(rules, progress);
    if (stoppedBecause === null) await search.onState?.(state);
  }

  return {
    problems: branches.map((branch) => problemResult(branch, settings.population)),
    front: front.members,
    yardstick,
    convergence,
    screening: screeningReport(branches, spent),
    stoppedBecause,
  };
}

/** [start, end) of consecutive parts of the given lengths. */
function slices(lengths: readonly number[]): [number, number][] {
  let end = 0;
  return lengths.map((length) => {
    end += length;
    return [end - length, end];
  });
}

function stoppingRules({ settings, clock }: ArchitectureSearch, began: number): StoppingRule[] {
  const rules = [evaluationBudget(settings.evaluations)];
  if (settings.timeLimit !== null) rules.push(timeLimit(settings.timeLimit, clock!, began));
  if (settings.stallGenerations !== null) rules.push(hypervolumeStall(settings.stallGenerations));
  return rules;
}

function refuseBadSearch({ problems, settings, clock }: ArchitectureSearch): void {
  if (problems.length === 0) throw new RangeError('There is no architecture to search.');
  if (new Set(problems.map((problem) => problem.id)).size < problems.length) {
    throw new RangeError('Two architectures share one identifier.');
  }
  const objectives = problems[0].objectiveCount;
  if (problems.some((problem) => problem.objectiveCount !== objectives) || objectives < 1 || objectives > 3) {
    throw new RangeError('All architectures need the same 1, 2 or 3 objectives.');
  }
  const least = problems.length * (1 + (settings.screenCost ?? 0));
  if (!(settings.evaluations >= least && settings.population >= 4)) {
    throw new RangeError('The budget must pay for one design of each architecture, and a population needs 4 members.');
  }
  if (!(settings.floor >= 0 && settings.floor <= 1)) throw new RangeError('The floor share lies between 0 and 1.');
  if (settings.timeLimit !== null && !clock) throw new RangeError('A time limit needs a clock.');
}
