/**
 * The search on the real model against plain random search and against one mixed population: hypervolume of the feasible
 * front at growing numbers of evaluations. `node src/cli/launch.mjs --entry search-model [--study FILE] [--evaluations N] [--seeds N]`
 *
 * All three see the same designs space and pay for every simulation alike; every design is simulated on the coarse grid, so that
 * a comparison takes minutes. Objectives are scaled by the best and worst feasible values that any of the runs found.
 */
import { cpus } from 'node:os';
import { join } from 'node:path';
import { outcomeOf } from '../cli/search-outcome.ts';
import { loadStudy } from '../config/files.ts';
import { evaluateRequest } from '../evaluation/evaluate-request.ts';
import { summarise } from '../evaluation/summary.ts';
import { packageFolder } from '../report/package-folder.ts';
import { ARCHITECTURE_SEARCH, searchArchitectures } from '../search/architecture-search.ts';
import { hypervolume } from '../search/hypervolume.ts';
import { optimise } from '../search/optimise.ts';
import type { Outcome, SearchProblem } from '../search/outcome.ts';
import { createRandom, type Generator, integerBelow } from '../search/random.ts';
import type { Variable } from '../space/architecture.ts';
import { architecturesOf, type DesignSpace } from '../space/architectures.ts';

function option(args: string[], name: string, otherwise: string): string {
  const at = args.indexOf(name);
  return at < 0 ? otherwise : args[at + 1];
}

/** Objectives of each feasible design in the order of evaluation; null where a design was not feasible. */
type History = (number[] | null)[];

function point(variable: Variable, share: number): number {
  if (variable.kind === 'real') return variable.low + share * (variable.high - variable.low);
  const low = variable.kind === 'integer' ? variable.low : 0;
  const count = variable.kind === 'integer' ? variable.high - variable.low + 1 : variable.options.length;
  return low + Math.min(count - 1, Math.floor(share * count));
}

/** One problem over all architectures: which one, then shares of its variables' ranges. */
function mixedProblem(spaces: readonly DesignSpace[]): {
  problem: SearchProblem;
  decode: (x: readonly number[]) => { space: DesignSpace; x: number[] };
} {
  const longest = Math.max(...spaces.map((s) => s.variables.length));
  const decode = (x: readonly number[]) => {
    const space = spaces[Math.round(x[0])];
    return { space, x: space.variables.map((v, i) => point(v, x[i + 1])) };
  };
  return {
    decode,
    problem: {
      id: 'mixed',
      variables: [
        { kind: 'choice', name: 'architecture', label: 'architecture', options: spaces.map((s) => s.architecture.id) },
        ...Array.from(
          { length: longest },
          (_, i): Variable => ({ kind: 'real', name: `share-${i}`, label: `share ${i}`, unit: '', low: 0, high: 1 }),
        ),
      ],
      objectiveCount: 2,
      check: (x) => {
        const { space, x: own } = decode(x);
        const engine = space.toEngine(own);
        return 'refused' in engine ? { violations: [engine.violation], reason: engine.constraint } : null;
      },
    },
  };
}

async function main(args: string[]): Promise<number> {
  const file = option(args, '--study', join(packageFolder(), 'configs', 'demo-quick.yaml'));
  const evaluations = Number(option(args, '--evaluations', '500'));
  const seeds = Number(option(args, '--seeds', '3'));
  const reading = await loadStudy(file);
  if (!reading.ok) throw new Error(`${file} cannot be read: run pulsejet-study run on it to see why.`);
  const { study } = reading;
  const spaces = architecturesOf(study);
  const byId = new Map(spaces.map((s) => [s.architecture.id, s]));
  const marks = [0.125, 0.25, 0.5, 1].map((f) => Math.round(f * evaluations));

  const judge = (space: DesignSpace, x: readonly number[], record: History): Outcome => {
    const engine = space.toEngine(x);
    if ('refused' in engine) throw new Error(`a refused design was evaluated: ${engine.sentence}`);
    const outcome = outcomeOf(
      summarise(evaluateRequest({ engine, brief: study.brief, fidelity: 'screen', constantsDraw: null })),
    );
    record.push(outcome.status === 'ok' && outcome.violations.every((v) => v <= 0) ? outcome.objectives : null);
    return outcome;
  };

  const methods: Record<string, (random: Generator, seed: string, record: History) => Promise<void>> = {
    'one population an architecture': async (_, seed, record) => {
      await searchArchitectures({
        problems: spaces.map((s) => ({
          id: s.architecture.id,
          variables: s.variables,
          objectiveCount: 2,
          check: (x) => {
            const engine = s.toEngine(x);
            return 'refused' in engine ? { violations: [engine.violation], reason: engine.constraint } : null;
          },
        })),
        seed,
        settings: { ...ARCHITECTURE_SEARCH, screenCost: null, evaluations, population: study.search.population },
        evaluate: async (orders) => orders.map((o) => judge(byId.get(o.problem) as DesignSpace, o.x, record)),
      });
    },
    'one mixed population': async (random, _, record) => {
      const { problem, decode } = mixedProblem(spaces);
      await optimise(
        problem,
        (batch) =>
          batch.map((x) => {
            const d = decode(x);
            return judge(d.space, d.x, record);
          }),
        random,
        { population: study.search.population * 4, evaluations },
      );
    },
    'random search': async (random, _, record) => {
      while (record.length < evaluations) {
        const space = spaces[integerBelow(random, spaces.length)];
        const x = space.variables.map((v) => point(v, random.uniform()));
        if (!('refused' in space.toEngine(x))) judge(space, x, record);
      }
    },
  };

  const records: { method: string; record: History }[] = [];
  for (const [method, search] of Object.entries(methods)) {
    for (let n = 1; n <= seeds; n++) {
      const record: History = [];
      await search(createRandom(`model-${n}`), `model-${n}`, record);
      records.push({ method, record });
      process.stderr.write(`${method}, seed ${n}: ${record.filter(Boolean).length} of ${record.length} feasible\n`);
    }
  }
  const all = records.flatMap(({ record }) => record.filter((f): f is number[] => f !== null));
  if (all.length < 2) throw new Error('fewer than two feasible designs were found; widen the study');
  const ideal = [0, 1].map((k) => Math.min(...all.map((f) => f[k])));
  const nadir = [0, 1].map((k) => Math.max(...all.map((f) => f[k])));
  const volume = (record: History, upTo: number) =>
    hypervolume(
      record
        .slice(0, upTo)
        .filter((f): f is number[] => f !== null)
        .map((f) => f.map((v, k) => (v - ideal[k]) / (nadir[k] - ideal[k]))),
      [1.1, 1.1],
    );
  const lines = [
    `Measured ${new Date().toISOString().slice(0, 10)} on ${cpus()[0].model}, Node ${process.versions.node}: ${evaluations} evaluations, ${seeds} seeds, median (lowest–highest).`,
    '',
    `| method | ${marks.map((m) => `after ${m}`).join(' | ')} | feasible |`,
    `|---|${marks.map(() => '---|').join('')}---|`,
    ...Object.keys(methods).map((method) => {
      const own = records.filter((r) => r.method === method).map((r) => r.record);
      const cell = (upTo: number) => {
        const v = own.map((r) => volume(r, upTo)).sort((a, b) => a - b);
        return `${v[v.length >> 1].toFixed(3)} (${v[0].toFixed(3)}–${v[v.length - 1].toFixed(3)})`;
      };
      return `| ${method} | ${marks.map(cell).join(' | ')} | ${own.map((r) => r.filter(Boolean).length).join(', ')} |`;
    }),
  ];
  process.stdout.write(`${lines.join('\n')}\n`);
  return 0;
}

process.exitCode = await main(process.argv.slice(2));
