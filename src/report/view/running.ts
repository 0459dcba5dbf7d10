/** "Running it": supply, needs, sequences and measurement sheets of the best candidates. */
import type { Candidate, StudyResults } from '../../ranking/results.ts';
import { both } from '../format/quantity.ts';
import { type MeasurementSheet, measurementSheet } from './measurement.ts';
import { abortRules, startSteps, stopSteps } from './sequences.ts';
import { supplyLines } from './supply-lines.ts';
import type { Line } from './wanted.ts';

export interface NeedRow {
  label: string;
  note: string;
  values: string[];
}

export interface RunningView {
  supply: Line[];
  candidates: string[];
  needs: NeedRow[];
  /** Sequences are written for the first candidate; null when there is none. */
  sequences: { candidate: string; start: string[]; stop: string[]; abort: string[] } | null;
  sheets: MeasurementSheet[];
}

/** One row for each need that any of the candidates has, in the order in which they first appear. */
function needRows(best: readonly Candidate[]): NeedRow[] {
  const rows = new Map<string, NeedRow>();
  best.forEach((c, column) => {
    for (const need of c.assessment.needs) {
      const row = rows.get(need.id) ?? { label: need.label, note: need.note, values: best.map(() => '–') };
      row.values[column] = both(need.value, need.unit);
      rows.set(need.id, row);
    }
  });
  return [...rows.values()];
}

export function runningView(results: StudyResults): RunningView {
  const best = results.candidates.slice(0, 3);
  const first = best[0];
  return {
    supply: supplyLines(results.study.brief),
    candidates: best.map((c) => c.id),
    needs: needRows(best),
    sequences: first
      ? { candidate: first.id, start: startSteps(first), stop: stopSteps(first), abort: abortRules(first) }
      : null,
    sheets: best.map(measurementSheet),
  };
}
