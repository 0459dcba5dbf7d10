/** A search's state told by places in a log, and read back: the same state, whichever of its answers the log has as such. */
import { deserialize, serialize } from 'node:v8';
import { beforeAll, expect, test } from 'vitest';
import { KeptDesigns } from '../../src/cli/kept-designs.ts';
import { packSearch, type StudySearchState, unpackSearch, Whereabouts } from '../../src/cli/search-in-log.ts';
import { OBJECTIVES, outcomeOf } from '../../src/cli/search-outcome.ts';
import type { EvaluationSummary } from '../../src/evaluation/evaluation.ts';
import { ARCHITECTURE_SEARCH, searchArchitectures } from '../../src/search/architecture-search.ts';
import type { EvaluationOrder } from '../../src/search/evaluation-order.ts';
import type { SearchProblem } from '../../src/search/outcome.ts';
import { extentOf, NOTHING_YET } from '../../src/search/state-parts.ts';

const real = (name: string) => ({ kind: 'real' as const, name, label: name, low: 0, high: 1, unit: '' });
const problems: SearchProblem[] = ['plain', 'odd'].map((id) => ({
  id,
  variables: [real('a'), real('b')],
  objectiveCount: OBJECTIVES,
  check: ([a]) => (a > 0.95 ? { violations: [a - 0.95], reason: 'too long' } : null),
}));

/** Some die, some break a limit, the others trade fuel against life. */
function summaryFor({ x: [a, b], fidelity }: EvaluationOrder): EvaluationSummary {
  const dies = b < 0.2;
  const broken = b > 0.8 ? [{ id: 'thrust', violation: b - 0.8 }] : [];
  return {
    status: dies ? 'dies' : 'ok',
    reason: dies ? 'no ignition' : '',
    tsfc: dies ? null : 1 + a + (fidelity === 'screen' ? 0.01 : 0),
    valveLife: dies ? null : 10 ** (3 + a - (b - 0.5) ** 2),
    thrust: dies ? null : 100 * b,
    frequency: null,
    fuelFlow: null,
    mass: 1 + b,
    followRatio: null,
    forceOffered: null,
    forceNeeded: null,
    violations: dies ? [{ id: 'self-sustaining', violation: 1 - b }] : broken,
    flags: [],
  };
}

const log = new Map<number, { key: string; [name: string]: unknown }>();
const at = { at: (position: number) => log.get(position) ?? null };
/** Knows every answer, and every third one only. */
const everywhere = new Whereabouts();
const here = new Whereabouts();
/** As they stood; and packed in turn with each of the two. */
const states: Buffer[] = [];
const packed = { everywhere: [] as Buffer[], here: [] as Buffer[], nowhere: [] as Buffer[] };

beforeAll(async () => {
  const kept = new Map(problems.map(({ id }) => [id, new KeptDesigns()]));
  const asked = { screen: 0, full: 0 };
  let extent = NOTHING_YET(problems.length);
  await searchArchitectures({
    problems,
    seed: 'notes',
    settings: { ...ARCHITECTURE_SEARCH, evaluations: 400, population: 12 },
    evaluate: async (orders) =>
      orders.map((order) => {
        const { id, problem, x, fidelity } = order;
        const name = `${problem}/${id}`;
        const summary = summaryFor(order);
        log.set(1000 + 7 * id, { key: '', id: name, architecture: problem, fidelity, x: [...x], ...summary });
        everywhere.note(x, fidelity, name, 1000 + 7 * id);
        if (id % 3 === 0) here.note(x, fidelity, name, 1000 + 7 * id);
        asked[fidelity]++;
        const design = fidelity === 'full' ? kept.get(problem)?.offer(problem, summary) : null;
        if (design) for (const where of [everywhere, here]) where.keep(design, x);
        return outcomeOf(summary);
      }),
    onState: (state) => {
      const held = { search: state(), kept: new Map([...kept].map(([id, designs]) => [id, designs.state])), asked };
      states.push(serialize(held));
      for (const [name, where] of Object.entries({ everywhere, here, nowhere: new Whereabouts() }))
        packed[name as keyof typeof packed].push(serialize(packSearch(held, extent, where)));
      extent = extentOf(held.search);
    },
  });
});

type Packed = ReturnType<typeof packSearch>;

function unpack(buffers: readonly Buffer[], where = new Whereabouts()): StudySearchState {
  const all = buffers.map((buffer) => deserialize(buffer) as Packed);
  const growths = all.map(({ growth }) => growth);
  return unpackSearch(all[all.length - 1].state, growths, at, problems, where);
}

test.each(['everywhere', 'here', 'nowhere'] as const)('with answers %s in the log', (name) => {
  expect(states.length).toBeGreaterThan(8);
  states.forEach((state, n) => {
    const found = unpack(packed[name].slice(0, n + 1));
    expect(found).toStrictEqual(deserialize(state));
    // A design that stands in several lists is one and the same there.
    const [{ evolution }] = found.search.branches;
    for (const member of evolution.population)
      for (const other of [...evolution.archive, ...found.search.front])
        if (other.problem === member.problem && other.id === member.id) expect(other).toBe(member);
  });
});

test('places found again are told again', () => {
  const where = new Whereabouts();
  const found = unpack(packed.everywhere, where);
  const again = packSearch(found, extentOf(found.search), where);
  const before = (deserialize(packed.everywhere[packed.everywhere.length - 1]) as Packed).state;
  expect(again.state.positions).toEqual(before.positions);
  expect(again.state.members.apart.every(({ id }) => id < 0)).toBe(true);
});

test('what is told by places takes less room', () => {
  const sizes = [packed.everywhere, packed.here, packed.nowhere].map((buffers) => buffers[buffers.length - 1].length);
  expect(sizes[0]).toBeLessThan(0.5 * sizes[1]);
  expect(sizes[1]).toBeLessThan(sizes[2]);
});

test('a log without an answer, or a growth left out, is refused', () => {
  expect(() => unpack(packed.everywhere.slice(1))).toThrow(/part .* is missing/);
  const answers = [...log];
  log.clear();
  expect(() => unpack(packed.everywhere)).toThrow('No answer begins at byte');
  for (const [byte, answer] of answers) log.set(byte, answer);
});
