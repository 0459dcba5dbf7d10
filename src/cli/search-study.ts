/** The search of a study: architectures in, what was found out, every answer through the store. */
import { digestOf } from '../config/canonical.ts';
import type { Study } from '../config/study.ts';
import { ARCHITECTURE_SEARCH, searchArchitectures } from '../search/architecture-search.ts';
import type { EvaluationOrder } from '../search/evaluation-order.ts';
import type { SearchProblem } from '../search/outcome.ts';
import type { ArchitectureSearchResult } from '../search/search-result.ts';
import { passesThrough, SEARCH_STATE_FORMAT } from '../search/search-state.ts';
import { extentOf, type Growth, NOTHING_YET } from '../search/state-parts.ts';
import type { DesignSpace } from '../space/architectures.ts';
import { NoteDue } from '../store/note-due.ts';
import type { Job, StoredEvaluations } from '../store/stored-evaluations.ts';
import type { StudyClock } from '../store/study-clock.ts';
import type { StudyFolder } from '../store/study-folder.ts';
import { KeptDesigns, type KeptDesignsState } from './kept-designs.ts';
import { UsageError } from './output.ts';
import type { Progress } from './progress.ts';
import { type PackedState, packSearch, type StudySearchState, unpackSearch, Whereabouts } from './search-in-log.ts';
import { OBJECTIVES, outcomeOf } from './search-outcome.ts';
import { bestInWords } from './wording.ts';

/** A screening run's share of the cost of a full one. */
export const SCREEN_COST = ARCHITECTURE_SEARCH.screenCost ?? 0;

export interface SearchedStudy {
  result: ArchitectureSearchResult;
  /** Designs that ran at full fidelity, by architecture. */
  kept: Map<string, KeptDesigns>;
  /** Answers of each kind that the search asked for. */
  asked: { screen: number; full: number };
}

export interface SearchStudyInput {
  study: Study;
  folder: Pick<StudyFolder, 'evaluations' | 'searchNotes'>;
  spaces: readonly DesignSpace[];
  stored: StoredEvaluations;
  clock: StudyClock;
  progress: Progress;
  /** Answers between two notes of where the search stands, at the least. */
  noteEvery?: number;
}

/** @throws {UsageError} when the budget does not pay for one design of each architecture */
export function refuseSmallBudget({ slug, search }: Study, spaces: readonly DesignSpace[]): void {
  const least = Math.ceil(spaces.length * (1 + SCREEN_COST));
  if (search.evaluations >= least) return;
  throw new UsageError(
    `${slug}: a budget of ${search.evaluations} evaluations is too small: ${spaces.length} architectures are explored, which takes ${least} at the least.`,
  );
}

/** @throws {Interrupted} when the run was asked to stop */
export async function searchStudy({
  study,
  folder,
  spaces,
  stored,
  clock,
  progress,
  noteEvery,
}: SearchStudyInput): Promise<SearchedStudy> {
  const { search } = study;
  const byId = new Map(spaces.map((space) => [space.architecture.id, space]));
  const kept = new Map(spaces.map((space) => [space.architecture.id, new KeptDesigns()]));
  let asked = { screen: 0, full: 0 };
  const where = new Whereabouts();
  progress.stage('Searching', search.evaluations);

  // A design is built when geometry is asked about it, and again for each of its runs, all within a generation.
  const built = new Map<readonly number[], Built>();
  const engineOf = (space: DesignSpace, x: readonly number[]) => {
    const engine = built.get(x) ?? space.toEngine(x);
    if (!('refused' in engine)) built.set(x, engine);
    return engine;
  };

  const evaluate = async (orders: EvaluationOrder[]) => {
    const jobs = orders.map((order) => jobOf(order, engineOf(byId.get(order.problem) as DesignSpace, order.x), study));
    const summaries = await stored.summaries(jobs, ({ x, id, request: { fidelity } }, position) => {
      if (fidelity !== 'detailed') where.note(x, fidelity, id, position);
    });
    orders.forEach((order, i) => {
      asked[order.fidelity]++;
      if (order.fidelity === 'full') {
        const design = kept.get(order.problem)?.offer(order.problem, summaries[i]);
        if (design) where.keep(design, order.x);
      }
    });
    return summaries.map(outcomeOf);
  };

  const problems = spaces.map((space) => problemOf(space, (x) => engineOf(space, x)));
  const notes = folder.searchNotes({ format: SEARCH_STATE_FORMAT, spaces: digestOf(spaces.map(meaningOf)) });
  const from = notes.read((packed, growths) => {
    const state = packed as PackedState;
    if (!passesThrough(state.skeleton, search)) return null;
    return unpackSearch(state, growths() as Growth[], folder.evaluations, problems, where);
  });
  if (from) {
    for (const [id, designs] of kept) designs.state = from.kept.get(id) as KeptDesignsState;
    asked = from.asked;
    clock.recall(from.search.stood);
    progress.answered(false, from.search.spent);
  }
  let extent = from ? extentOf(from.search) : NOTHING_YET(spaces.length);
  const due = new NoteDue(asked.screen + asked.full, noteEvery);

  const result = await searchArchitectures({
    problems,
    seed: search.seed,
    settings: {
      ...ARCHITECTURE_SEARCH,
      evaluations: search.evaluations,
      population: search.population,
      stallGenerations: search.stallGenerations,
      timeLimit: search.timeLimit,
    },
    evaluate,
    clock: () => clock.latest,
    from: from?.search,
    onState: async (state) => {
      if (!due.at(asked.screen + asked.full)) return;
      const keptStates = new Map(spaces.map(({ architecture: { id } }) => [id, (kept.get(id) as KeptDesigns).state]));
      const held: StudySearchState = { search: state(), kept: keptStates, asked };
      const { state: packed, growth } = packSearch(held, extent, where);
      await notes.write(packed, growth);
      extent = extentOf(held.search);
    },
    onProgress: ({ front }) => {
      built.clear();
      progress.best(bestInWords(front));
    },
  });
  return { result, kept, asked };
}

type Built = ReturnType<DesignSpace['toEngine']>;

/** What coordinates mean: variables, and the engines at three places between their bounds. */
function meaningOf(space: DesignSpace) {
  const { architecture, variables } = space;
  const engines = [0.2, 0.5, 0.8].map((share) => {
    const x = variables.map((variable) => {
      const [low, high] = variable.kind === 'choice' ? [0, variable.options.length - 1] : [variable.low, variable.high];
      const value = low + share * (high - low);
      return variable.kind === 'real' ? value : Math.round(value);
    });
    return space.toEngine(x);
  });
  return { id: architecture.id, variables, engines: JSON.stringify(engines) };
}

function problemOf(space: DesignSpace, engineOf: (x: readonly number[]) => Built): SearchProblem {
  return {
    id: space.architecture.id,
    variables: space.variables,
    objectiveCount: OBJECTIVES,
    check: (x) => {
      const engine = engineOf(x);
      return 'refused' in engine ? { violations: [engine.violation], reason: engine.constraint } : null;
    },
  };
}

function jobOf(order: EvaluationOrder, engine: Built, study: Study): Job {
  if ('refused' in engine)
    throw new Error(`design ${order.id} was evaluated although geometry refuses it: ${engine.sentence}`);
  return {
    request: { engine, brief: study.brief, fidelity: order.fidelity, constantsDraw: null },
    id: `${order.problem}/${order.id}`,
    stage: 'search',
    architecture: order.problem,
    x: order.x,
  };
}
