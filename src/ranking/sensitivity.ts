/** What each design variable does to the results: one step each way, everything else held. A plan of requests, then a reduction. */
import type { Brief } from '../../shared/engine/brief.ts';
import type { EvaluationRequest, EvaluationSummary } from '../evaluation/evaluation.ts';
import type { ArchitectureSpace, Variable } from '../space/architecture.ts';
import { lengthWords } from '../space/wording.ts';
import type { Sensitivity } from './results.ts';

/** Step of a real variable over its value: wide enough to outweigh rounding to half millimetres, narrow enough to be local. */
const REAL_STEP = 0.03;

/** One changed coordinate. */
export interface SensitivityStep {
  /** Index of the variable. */
  variable: number;
  /** The coordinate's new value. */
  value: number;
  /** Place in `requests`; null when geometry refuses the step. */
  request: number | null;
}

export interface SensitivityPlan {
  steps: SensitivityStep[];
  requests: EvaluationRequest[];
}

/** Requests for one step up and one down of every variable of a design, inside the bounds. */
export function sensitivityPlan(space: ArchitectureSpace, x: readonly number[], brief: Brief): SensitivityPlan {
  const plan: SensitivityPlan = { steps: [], requests: [] };
  space.variables.forEach((variable, index) => {
    for (const value of stepsOf(variable, x[index])) {
      const engine = space.toEngine(x.map((old, i) => (i === index ? value : old)));
      if ('refused' in engine) {
        plan.steps.push({ variable: index, value, request: null });
        continue;
      }
      plan.steps.push({ variable: index, value, request: plan.requests.length });
      plan.requests.push({ engine, brief, fidelity: 'full', constantsDraw: null });
    }
  });
  return plan;
}

function stepsOf(variable: Variable, value: number): number[] {
  switch (variable.kind) {
    case 'real': {
      const step = REAL_STEP * Math.max(Math.abs(value), 1e-12);
      return [value - step, value + step].filter((next) => next >= variable.low && next <= variable.high);
    }
    case 'integer':
      return [value - 1, value + 1].filter((next) => next >= variable.low && next <= variable.high);
    case 'choice':
      return variable.options.length < 2 ? [] : [value + 1 < variable.options.length ? value + 1 : value - 1];
  }
}

/** Reduces the answers: relative change of each figure per +1 % (real) or for one step (integer up, choice to the named option). */
export function sensitivitiesFrom(
  space: ArchitectureSpace,
  x: readonly number[],
  base: EvaluationSummary,
  plan: SensitivityPlan,
  answers: readonly EvaluationSummary[],
): Sensitivity[] {
  return space.variables.map((variable, index) => {
    const steps = plan.steps.filter((step) => step.variable === index && step.request !== null);
    const tried = steps.map((step) => ({ value: step.value, summary: answers[step.request!] }));
    const running = tried.filter(({ summary }) => summary.status === 'ok');
    const change = (figure: (summary: EvaluationSummary) => number | null): number | null =>
      relativeChange(
        variable,
        x[index],
        figure(base),
        running.map(({ value, summary }) => ({ value, figure: figure(summary) })),
      );
    return {
      variable: variable.name,
      label: variable.label,
      step: stepWords(variable, x[index]),
      tsfc: change((summary) => summary.tsfc),
      thrust: change((summary) => summary.thrust),
      valveLife: change((summary) => summary.valveLife),
      stops: tried.some(({ summary }) => summary.status === 'dies'),
    };
  });
}

/** Slope through the outermost values that are there, in logarithms; the base stands in for a missing side. */
function relativeChange(
  variable: Variable,
  value: number,
  base: number | null,
  tried: { value: number; figure: number | null }[],
): number | null {
  const known = [{ value, figure: base }, ...tried]
    .filter((point): point is { value: number; figure: number } => point.figure !== null && point.figure > 0)
    .sort((a, b) => a.value - b.value);
  if (known.length < 2) return null;
  const [first, last] = [known[0], known[known.length - 1]];
  const growth = Math.log(last.figure / first.figure);
  if (variable.kind === 'real') {
    const relative = Math.log(last.value / first.value);
    return Number.isFinite(relative) && relative !== 0 ? Math.expm1((growth / relative) * Math.log(1.01)) : null;
  }
  const perStep = Math.expm1(growth / (last.value - first.value));
  // A choice at its last option was stepped back: the change is told for that step.
  return variable.kind === 'choice' && last.value === value ? Math.expm1(-growth) : perStep;
}

function stepWords(variable: Variable, value: number): string {
  if (variable.kind === 'integer') return '+1';
  if (variable.kind === 'choice') return `to ${variable.options[stepsOf(variable, value)[0]] ?? 'nothing else'}`;
  if (variable.unit === 'm') return `+1 %, ${lengthWords(0.01 * value)}`;
  if (variable.unit === 'rad') return `+1 % (${((1.8 * value) / Math.PI).toFixed(2)}°)`;
  return `+1 %, ${Number((0.01 * value).toPrecision(2))}${variable.unit === '' ? '' : ` ${variable.unit}`}`;
}
