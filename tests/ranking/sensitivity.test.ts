import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readStudy } from '../../src/config/read-study.ts';
import { chooseFinalists, type JudgedDesign } from '../../src/ranking/finalists.ts';
import { sensitivitiesFrom, sensitivityPlan } from '../../src/ranking/sensitivity.ts';
import { architecturesOf } from '../../src/space/architectures.ts';
import { summary } from '../support/fixtures.ts';

const reading = readStudy(readFileSync('configs/demo-quick.yaml', 'utf8'), 'demo-quick');
if (!reading.ok) throw new Error('demo is not read');
const STUDY = reading.study;
const SPACES = architecturesOf(STUDY);
const SPACE = SPACES[0];
const X = SPACE.variables.map((variable) =>
  variable.kind === 'choice' ? 0 : variable.kind === 'integer' ? 14 : 0.5 * (variable.low + variable.high),
);

describe('sensitivities', () => {
  const plan = sensitivityPlan(SPACE, X, STUDY.brief);

  it('step every variable both ways where the bounds allow', () => {
    SPACE.variables.forEach((variable, index) => {
      const steps = plan.steps.filter((step) => step.variable === index);
      expect(steps).toHaveLength(variable.kind === 'choice' ? 1 : 2);
    });
    expect(plan.requests.every(({ fidelity, constantsDraw }) => fidelity === 'full' && constantsDraw === null)).toBe(
      true,
    );
  });

  it('of a power law are its exponents', () => {
    const base = summary();
    const answers = plan.requests.map(({ engine }, place) => {
      const step = plan.steps.find(({ request }) => request === place)!;
      const ratio = step.value / X[step.variable];
      const variable = SPACE.variables[step.variable];
      if (variable.kind === 'choice') return summary({ thrust: 1.2 * base.thrust! });
      if (variable.kind === 'integer')
        return summary({ thrust: base.thrust! * 1.05 ** (step.value - X[step.variable]) });
      expect(engine).toBeTruthy();
      return summary({ thrust: base.thrust! * ratio ** 2, tsfc: base.tsfc! / ratio });
    });
    const found = sensitivitiesFrom(SPACE, X, base, plan, answers);
    SPACE.variables.forEach((variable, index) => {
      const { thrust, tsfc, stops, step } = found[index];
      expect(stops).toBe(false);
      if (variable.kind === 'real') {
        expect(thrust).toBeCloseTo(1.01 ** 2 - 1, 9);
        expect(tsfc).toBeCloseTo(1 / 1.01 - 1, 9);
        expect(step).toContain('+1 %');
      } else {
        expect(thrust).toBeCloseTo(variable.kind === 'choice' ? 0.2 : 0.05, 9);
      }
    });
  });

  it('say when a step stops the engine, and use the side that runs', () => {
    const answers = plan.requests.map((_, place) => {
      const step = plan.steps.find(({ request }) => request === place)!;
      return step.value > X[step.variable]
        ? summary({ status: 'dies', thrust: null, tsfc: null, valveLife: null })
        : summary();
    });
    const found = sensitivitiesFrom(SPACE, X, summary(), plan, answers);
    expect(found[0]).toMatchObject({ stops: true, thrust: 0 });
  });
});

describe('the choice of finalists', () => {
  const design = (space: number, shift: number, tsfc: number, life: number, broken = 0): JudgedDesign => ({
    architecture: SPACES[space].architecture.id,
    x: SPACES[space].variables.map((variable) =>
      variable.kind === 'choice'
        ? 0
        : variable.kind === 'integer'
          ? variable.low
          : variable.low + shift * (variable.high - variable.low),
    ),
    summary: summary({ tsfc, valveLife: life, violations: broken > 0 ? [{ id: 'thrust', violation: broken }] : [] }),
  });

  it('gives a place to other architectures and takes no two alike', () => {
    const designs = [
      design(0, 0.1, 7e-5, 3000),
      design(0, 0.11, 7.01e-5, 3010),
      design(0, 0.6, 7.2e-5, 2900),
      design(8, 0.5, 12e-5, 9000),
      design(4, 0.5, 9e-5, 2000, 0.2),
    ];
    const chosen = chooseFinalists(STUDY, SPACES, designs);
    expect(chosen).toHaveLength(3);
    expect(chosen).toContain(designs[3]);
    expect(chosen).toContain(designs[2]);
    expect(chosen).not.toContain(designs[4]);
  });

  it('without a feasible design takes the least-violating of each architecture', () => {
    const designs = [design(0, 0.1, 7e-5, 3000, 0.5), design(0, 0.9, 7e-5, 3000, 0.2), design(4, 0.5, 9e-5, 2000, 0.4)];
    const chosen = chooseFinalists(STUDY, SPACES, designs);
    expect(chosen[0]).toBe(designs[1]);
    expect(chosen).toContain(designs[2]);
  });

  it('keeps within the number of places', () => {
    const designs = Array.from({ length: 40 }, (_, i) => design(i % 6, (i + 1) / 41, 7e-5 + i * 1e-6, 2000 + 100 * i));
    expect(chooseFinalists(STUDY, SPACES, designs)).toHaveLength(STUDY.search.finalists);
  });
});
