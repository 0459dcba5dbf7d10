/** The closer look at the best designs: full results, robustness and sensitivities, all through the store. */
import type { Study } from '../config/study.ts';
import type { Fidelity } from '../evaluation/evaluation.ts';
import { summarise } from '../evaluation/summary.ts';
import { type FinalistEvidence, finalistKey, type JudgedInFull } from '../ranking/evidence.ts';
import { chooseFinalists, type JudgedDesign } from '../ranking/finalists.ts';
import { robustnessFrom, robustnessPlan } from '../ranking/robustness.ts';
import { sensitivitiesFrom, sensitivityPlan } from '../ranking/sensitivity.ts';
import type { Member } from '../search/outcome.ts';
import type { ArchitectureSearchResult } from '../search/search-result.ts';
import type { DesignSpace } from '../space/architectures.ts';
import type { Job, StoredEvaluations } from '../store/stored-evaluations.ts';
import type { Progress } from './progress.ts';

export interface JudgedFinalists {
  finalists: FinalistEvidence[];
  /** By architecture id, for those without a feasible design: the one that came nearest, evaluated in full. */
  nearest: Map<string, JudgedInFull>;
  /** Evaluations that robustness and sensitivities asked for. */
  asked: number;
}

export interface JudgeFinalistsInput {
  study: Study;
  spaces: readonly DesignSpace[];
  search: ArchitectureSearchResult;
  stored: StoredEvaluations;
  progress: Progress;
}

/**
 * @throws {Interrupted} when the run was asked to stop
 * @throws {StoreError} when an answer cannot be stored
 */
export async function judgeFinalists({
  study,
  spaces,
  search,
  stored,
  progress,
}: JudgeFinalistsInput): Promise<JudgedFinalists> {
  const byId = new Map(spaces.map((space) => [space.architecture.id, space]));
  const spaceOf = (id: string) => byId.get(id) as DesignSpace;
  const ran = search.problems.flatMap(({ id, population }) =>
    population.filter(({ f }) => f.length > 0).map((member) => ({ space: spaceOf(id), member })),
  );
  const summaries = await stored.summaries(ran.map(({ space, member }) => fullJob(study, space, member)));
  const designs = ran.map(
    ({ space, member }, i): JudgedDesign => ({
      architecture: space.architecture.id,
      x: member.x,
      summary: summaries[i],
    }),
  );

  const chosen = chooseFinalists(study, spaces, designs).map(({ architecture, x }) => ({
    space: spaceOf(architecture),
    x,
  }));
  const stuck = search.problems
    .filter(({ feasible }) => feasible === 0)
    .flatMap(({ id, leastViolating }) => (leastViolating ? [{ space: spaceOf(id), x: leastViolating.x }] : []))
    .filter(({ space, x }) => !('refused' in space.toEngine(x)));
  const looked = [...chosen, ...stuck];
  progress.stage('Evaluating the finalists in full', looked.length);
  const results = await stored.results(
    looked.map(({ space, x }, i) => closeLook(study, space, x, i, i < chosen.length ? 'detailed' : 'full')),
  );
  const nearest: JudgedFinalists['nearest'] = new Map();
  stuck.forEach(({ space, x }, i) => {
    const result = results[chosen.length + i];
    nearest.set(space.architecture.id, { space, x, result, summary: summarise(result) });
  });

  const plans = chosen.map(({ space, x }) => planOf(study, space, x));
  const jobs = plans.flatMap((plan) => plan.jobs);
  progress.stage('Trying how sure the finalists are', jobs.length);
  const answers = await stored.summaries(jobs);
  let next = 0;
  const finalists = plans.map(({ space, x, question, draws, jobs, plan }, i): FinalistEvidence => {
    const own = answers.slice(next, next + jobs.length);
    next += jobs.length;
    const result = results[i];
    const summary = summarise(result);
    return {
      space,
      x,
      result,
      summary,
      robustness: robustnessFrom(question, own.slice(0, draws), result.assessment.valveLife),
      sensitivities: sensitivitiesFrom(space, x, summary, plan, own.slice(draws)),
    };
  });
  return { finalists, nearest, asked: jobs.length };
}

function engineOf(space: DesignSpace, x: readonly number[]) {
  const engine = space.toEngine(x);
  if ('refused' in engine)
    throw new Error(`a design of ${space.architecture.id} that ran is refused by geometry: ${engine.sentence}`);
  return engine;
}

function fullJob(study: Study, space: DesignSpace, { id, x }: Member): Job {
  const architecture = space.architecture.id;
  return {
    request: { engine: engineOf(space, x), brief: study.brief, fidelity: 'full', constantsDraw: null },
    id: `${architecture}/${id}`,
    stage: 'search',
    architecture,
    x,
  };
}

function closeLook(study: Study, space: DesignSpace, x: number[], index: number, fidelity: Fidelity): Job {
  const architecture = space.architecture.id;
  return {
    request: { engine: engineOf(space, x), brief: study.brief, fidelity, constantsDraw: null },
    id: `${architecture}/close-look-${index}`,
    stage: 'close look',
    architecture,
    x,
  };
}

function planOf(study: Study, space: DesignSpace, x: number[]) {
  const architecture = space.architecture.id;
  const { brief, search } = study;
  const key = finalistKey(architecture, x);
  const question = { seed: search.seed, key, engine: engineOf(space, x), brief, draws: search.draws };
  const draws = robustnessPlan(question);
  const plan = sensitivityPlan(space, x, brief);
  const job =
    (stage: string) =>
    (request: Job['request'], i: number): Job => ({
      request,
      id: `${architecture}/${stage}-${i}`,
      stage,
      architecture,
      x,
    });
  const jobs = [...draws.map(job('robustness')), ...plan.requests.map(job('sensitivity'))];
  return { space, x, question, draws: draws.length, jobs, plan };
}
