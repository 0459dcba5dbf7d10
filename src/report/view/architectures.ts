/** What became of every kind of engine that was explored. */
import type { ArchitectureResult, StudyResults } from '../../ranking/results.ts';
import { type ForceRow, forceBars } from '../charts/force-bars.ts';
import type { Markup } from '../charts/svg.ts';
import { shortName } from '../format/architecture-name.ts';
import { anchor } from '../format/escape.ts';
import { fixed } from '../format/number.ts';
import { sentenceCase } from '../format/sentence-case.ts';
import { dimensionLine } from './dimensions.ts';
import { type FigureView, figureView } from './figure.ts';
import { type KeyFigures, keyFigures } from './key-figures.ts';
import { keyMark } from './trade.ts';

export interface ArchitectureView {
  anchor: string;
  label: string;
  mark: Markup;
  /** "worked", "never worked" or "ran, but never within the limits". */
  outcome: string;
  evaluations: string;
  running: string;
  feasible: string;
  best: { id: string; anchor: string; figures: KeyFigures } | null;
  reason: string;
  freedBy: string;
  /** True when there is a nearest design or a failure to tell. */
  detail: boolean;
  failures: { reason: string; count: string }[];
  /** For an architecture without a feasible design: the one that came nearest. */
  nearest: { binding: string; status: string; line: string } | null;
}

export interface ArchitecturesView {
  rows: ArchitectureView[];
  forceFigure: FigureView | null;
}

function outcome(a: ArchitectureResult): string {
  if (a.feasible > 0) return 'worked';
  if (a.running > 0) return 'ran, but never within every limit';
  return a.evaluations > 0 ? 'never ran' : 'not evaluated';
}

export function architecturesView(results: StudyResults): ArchitecturesView {
  const candidates = new Map(results.candidates.map((c) => [c.id, c]));
  const rows = results.architectures.map((a): ArchitectureView => {
    const best = a.bestCandidate === null ? undefined : candidates.get(a.bestCandidate);
    return {
      anchor: `architecture-${anchor(a.architecture.id)}`,
      label: sentenceCase(a.architecture.label),
      mark: keyMark(a.architecture),
      outcome: sentenceCase(outcome(a)),
      evaluations: fixed(a.evaluations, 0),
      running: fixed(a.running, 0),
      feasible: fixed(a.feasible, 0),
      best: best
        ? { id: best.id, anchor: anchor(best.id), figures: keyFigures(best, results.study.brief.currency) }
        : null,
      reason: a.reason,
      freedBy: a.freedBy,
      detail: a.leastViolating !== null || a.failures.length > 0,
      failures: a.failures.map((f) => ({ reason: f.reason, count: fixed(f.count, 0) })),
      nearest: a.leastViolating
        ? {
            binding: a.leastViolating.bindingConstraint,
            status: a.leastViolating.summary.reason,
            line: dimensionLine(a.leastViolating.engine),
          }
        : null,
    };
  });
  const forces = results.architectures.flatMap((a): ForceRow[] =>
    a.forces && a.forces.offered < a.forces.needed
      ? [
          {
            name: `${shortName(a.architecture)}: force`,
            offered: a.forces.offered,
            needed: a.forces.needed,
            unit: 'N',
            offeredName: 'suction offers',
            neededName: 'valve needs',
          },
          {
            name: `${shortName(a.architecture)}: time`,
            offered: a.forces.timeOffered,
            needed: a.forces.timeNeeded,
            unit: 's',
            offeredName: 'must be open in',
            neededName: 'valve takes',
          },
        ]
      : [],
  );
  return {
    rows,
    forceFigure: figureView(
      'figure-forces',
      forceBars('forces', 'Why valves do not follow', forces),
      'Valves that do not follow: the force that suction offers one valve beside the force that opens it in half of the suction time, and that time beside what it takes with the force offered. Each pair of bars has its own scale.',
    ),
  };
}
