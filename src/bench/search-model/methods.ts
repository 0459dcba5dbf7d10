/** Three ways to search the same design spaces, each paying for every simulation alike. */
import { ARCHITECTURE_SEARCH, searchArchitectures } from '../../search/architecture-search.ts';
import { optimise } from '../../search/optimise.ts';
import type { Outcome, SearchProblem } from '../../search/outcome.ts';
import { createRandom, integerBelow } from '../../search/random.ts';
import type { ScreeningReport } from '../../search/search-result.ts';
import type { Variable } from '../../space/architecture.ts';
import type { DesignSpace } from '../../space/architectures.ts';
import { chanceDesign, valueAt } from '../chance-design.ts';

export interface Trial {
  space: DesignSpace;
  x: readonly number[];
  /** Instead of the method's own. */
  fidelity?: 'screen' | 'full';
}

export interface MethodInput {
  spaces: readonly DesignSpace[];
  seed: string;
  /** Budget, in evaluations; with screening in full ones. */
  evaluations: number;
  /** Members of one architecture's population; the mixed population has four times as many. */
  population: number;
  /** Outcomes in the order of the trials. */
  judge(trials: readonly Trial[]): Promise<Outcome[]>;
}

/** Designs that random search hands over at once. */
const BATCH = 64;

/** Our search; `screening` false: every design is run once, as the other methods do. */
export async function searchByArchitecture(input: MethodInput, screening: boolean): Promise<ScreeningReport> {
  const { spaces, seed, evaluations, population, judge } = input;
  const byId = new Map(spaces.map((space) => [space.architecture.id, space]));
  const { screenCost } = ARCHITECTURE_SEARCH;
  const result = await searchArchitectures({
    problems: spaces.map((space) => ({
      id: space.architecture.id,
      variables: space.variables,
      objectiveCount: 2,
      check: (x) => objection(space, x),
    })),
    seed,
    settings: { ...ARCHITECTURE_SEARCH, screenCost: screening ? screenCost : null, evaluations, population },
    evaluate: (orders) =>
      judge(
        orders.map(({ problem, x, fidelity }) => ({
          space: byId.get(problem) as DesignSpace,
          x,
          ...(screening ? { fidelity } : {}),
        })),
      ),
  });
  return result.screening;
}

/** One population over all architectures: the first variable chooses, the others are shares of the chosen one's ranges. */
export async function searchMixed({ spaces, seed, evaluations, population, judge }: MethodInput): Promise<undefined> {
  const longest = Math.max(...spaces.map(({ variables }) => variables.length));
  const decode = (x: readonly number[]): Trial => {
    const space = spaces[Math.round(x[0])];
    return { space, x: space.variables.map((variable, i) => valueAt(variable, x[i + 1])) };
  };
  const shares = Array.from(
    { length: longest },
    (_, i): Variable => ({ kind: 'real', name: `share-${i}`, label: `share ${i}`, unit: '', low: 0, high: 1 }),
  );
  const problem: SearchProblem = {
    id: 'mixed',
    variables: [
      { kind: 'choice', name: 'architecture', label: 'architecture', options: spaces.map((s) => s.architecture.id) },
      ...shares,
    ],
    objectiveCount: 2,
    check: (x) => {
      const trial = decode(x);
      return objection(trial.space, trial.x);
    },
  };
  await optimise(problem, (designs) => judge(designs.map(decode)), createRandom(seed), {
    population: 4 * population,
    evaluations,
  });
}

/** Architectures and coordinates by chance; what geometry forbids is drawn again and costs nothing, as for the others. */
export async function searchByChance({ spaces, seed, evaluations, judge }: MethodInput): Promise<undefined> {
  const random = createRandom(seed);
  for (let done = 0; done < evaluations; done += BATCH) {
    const trials: Trial[] = [];
    while (trials.length < Math.min(BATCH, evaluations - done)) {
      const space = spaces[integerBelow(random, spaces.length)];
      const x = chanceDesign(space, random);
      if (objection(space, x) === null) trials.push({ space, x });
    }
    await judge(trials);
  }
}

function objection(space: DesignSpace, x: readonly number[]): { violations: number[]; reason: string } | null {
  const engine = space.toEngine(x);
  return 'refused' in engine ? { violations: [engine.violation], reason: engine.constraint } : null;
}
