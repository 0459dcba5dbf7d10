/** The handful of figures by which candidates are compared, as text and as numbers to sort by. */
import type { Band } from '../../../shared/checks/check.ts';
import type { Candidate } from '../../ranking/results.ts';
import { bandImperial, bandMetric, bandPhrase } from '../format/band.ts';
import { chance, fixed, MISSING } from '../format/number.ts';
import { imperial, metric } from '../format/quantity.ts';

/** A figure in both systems with the plain SI number behind it, for sorting. */
export interface Figure {
  metric: string;
  imperial: string;
  /** The same without units, for columns whose head names them. */
  bare: string;
  bareImperial: string;
  /** SI value as text, '' when there is none. */
  sort: string;
}

export interface KeyFigures {
  thrust: Figure;
  tsfc: Figure;
  life: Figure;
  frequency: Figure;
  mass: Figure;
  length: Figure;
  diameter: Figure;
  fuelFlow: Figure;
  cost: string;
  sustainChance: string;
  sustainSort: string;
}

function point(value: number | null | undefined): Band | null {
  return value === null || value === undefined ? null : { low: value, median: value, high: value };
}

/** The band over the draws, or the calculated value when too few draws ran. */
export function tsfcBand(c: Candidate): Band | null {
  return c.robustness.tsfc ?? point(c.performance.running?.tsfc);
}
export function lifeBand(c: Candidate): Band | null {
  return c.robustness.valveLife ?? c.assessment.valveLife;
}
export function thrustBand(c: Candidate): Band | null {
  return c.robustness.thrust ?? point(c.performance.running?.thrust);
}
export function frequencyBand(c: Candidate): Band | null {
  return c.robustness.frequency ?? point(c.performance.running?.frequency);
}
export function fuelFlowBand(c: Candidate): Band | null {
  return c.robustness.fuelFlow ?? point(c.performance.running?.fuelFlow);
}

/** "34 min (12–95)", or a single figure when low and high are equal. */
export function bandFigure(band: Band | null, si: string): Figure {
  if (!band) return pointFigure(null, si);
  if (band.low === band.high) return pointFigure(band.median, si);
  const text = bandMetric(band, si);
  const twin = bandImperial(band, si);
  return {
    metric: bandPhrase(text),
    imperial: twin ? bandPhrase(twin) : '',
    bare: bandPhrase(text && { ...text, unit: '' }),
    bareImperial: twin ? bandPhrase({ ...twin, unit: '' }) : '',
    sort: String(band.median),
  };
}

export function pointFigure(value: number | null, si: string): Figure {
  const whole = { metric: metric(value, si), imperial: imperial(value, si) };
  const withoutUnit = (text: string) => text.split('\u00a0')[0];
  return {
    ...whole,
    bare: withoutUnit(whole.metric),
    bareImperial: withoutUnit(whole.imperial),
    sort: value === null ? '' : String(value),
  };
}

export function keyFigures(c: Candidate, currency: string): KeyFigures {
  const { assessment, robustness } = c;
  return {
    thrust: bandFigure(thrustBand(c), 'N'),
    tsfc: bandFigure(tsfcBand(c), 'kg/(N s)'),
    life: bandFigure(lifeBand(c), 's'),
    frequency: bandFigure(frequencyBand(c), 'Hz'),
    mass: pointFigure(assessment.mass, 'kg'),
    length: pointFigure(assessment.overallLength, 'm'),
    diameter: pointFigure(assessment.overallDiameter, 'm'),
    fuelFlow: bandFigure(fuelFlowBand(c), 'kg/s'),
    cost: money(assessment.cost, currency),
    sustainChance: chance(robustness.sustainChance, robustness.draws),
    sustainSort: String(robustness.sustainChance),
  };
}

/** "120 EUR"; a dash when a price is missing. */
export function money(amount: number | null, currency: string): string {
  if (amount === null) return MISSING;
  return `${fixed(amount, amount < 100 ? 2 : 0)}\u00a0${currency}`;
}
