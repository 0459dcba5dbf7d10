/** The search of a study: architectures in, what was found out, every answer through the store. */
import { digestOf } from '../config/canonical.ts';
import type { Study } from '../config/study.ts';
import { ARCHITECTURE_SEARCH, searchArchitectures } from '../search/architecture-search.ts';
import type { EvaluationOrder } from '../search/evaluation-order.ts';
import type { SearchProblem } from '../search/outcome.ts';
import type { ArchitectureSearchResult } from '../search/search-result.ts';
import { passesThrough, SEARCH_STATE_FORMAT, type SearchState } from '../search/search-state.ts';
import type { DesignSpace } from '../space/architectures.ts';
import { CheckpointDue } from '../store/checkpoint-due.ts';
import type { Job, StoredEvaluations } from '../store/stored-evaluations.ts';
import type { StudyClock } from '../store/study-clock.ts';
import type { StudyFolder } from '../store/study-folder.ts';
import { KeptDesigns, type KeptDesignsState } from './kept-designs.ts';
import { UsageError } from './output.ts';
import type { Progress } from './progress.ts';
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

/** What a checkpoint holds. */
interface StudySearchState {
  search: SearchState;
  kept: Map<string, KeptDesignsState>;
  asked: SearchedStudy['asked'];
}

export interface SearchStudyInput {
  study: Study;
  folder: Pick<StudyFolder, 'evaluations' | 'checkpoint'>;
  spaces: readonly DesignSpace[];
  stored: StoredEvaluations;
  clock: StudyClock;
  progress: Progress;
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
}: SearchStudyInput): Promise<SearchedStudy> {
  const { search } = study;
  const byId = new Map(spaces.map((space) => [space.architecture.id, space]));
  const kept = new Map(spaces.map((space) => [space.architecture.id, new KeptDesigns()]));
  let asked = { screen: 0, full: 0 };
  progress.stage('Searching', search.evaluations);

  const evaluate = async (orders: EvaluationOrder[]) => {
    const jobs = orders.map((order) => jobOf(order, byId.get(order.problem) as DesignSpace, study));
    const summaries = await stored.summaries(jobs);
    orders.forEach((order, i) => {
      asked[order.fidelity]++;
      if (order.fidelity === 'full') {
        kept.get(order.problem)?.offer({ architecture: order.problem, x: order.x, summary: summaries[i] });
      }
    });
    return summaries.map(outcomeOf);
  };

  const checkpoint = folder.checkpoint({ format: SEARCH_STATE_FORMAT, spaces: digestOf(spaces.map(meaningOf)) });
  // A log that lost lines is asked for all of them again, so that it is whole in the end; a checkpoint would pass over them.
  const whole = folder.evaluations.repairs.length === 0;
  const found = whole ? ((await checkpoint.read(folder.evaluations.size)) as StudySearchState | null) : null;
  const from = found && passesThrough(found.search, search) ? found : null;
  if (from) {
    for (const [id, designs] of kept) designs.state = from.kept.get(id) as KeptDesignsState;
    asked = from.asked;
    clock.recall(from.search.stood);
    progress.answered(false, from.search.spent);
  }
  let noted = false;
  const noteOnce = (reason: string) => {
    if (!noted) progress.note(`The search goes on without a checkpoint: ${reason}`);
    noted = true;
  };
  const due = new CheckpointDue(clock, asked.screen + asked.full);

  const result = await searchArchitectures({
    problems: spaces.map(problemOf),
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
      await due.during(() =>
        // A night does not end for want of something that only saves time.
        checkpoint.write(held, folder.evaluations.size).catch((error: Error) => noteOnce(error.message)),
      );
    },
    onProgress: ({ front }) => progress.best(bestInWords(front)),
  });
  return { result, kept, asked };
}

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

function problemOf(space: DesignSpace): SearchProblem {
  return {
    id: space.architecture.id,
    variables: space.variables,
    objectiveCount: OBJECTIVES,
    check: (x) => {
      const engine = space.toEngine(x);
      return 'refused' in engine ? { violations: [engine.violation], reason: engine.constraint } : null;
    },
  };
}

function jobOf(order: EvaluationOrder, space: DesignSpace, study: Study): Job {
  const engine = space.toEngine(order.x);
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
