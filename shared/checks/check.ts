/** The shape of every feasibility check. One check lives in one file and is a pure function of engine, performance and brief. */
import type { Brief } from '../engine/brief.ts';
import type { Engine } from '../engine/engine.ts';
import type { Performance } from '../engine/performance.ts';

export type CheckVerdict = 'pass' | 'caution' | 'fail' | 'not applicable' | 'not computed';

export interface Check {
  /** Stable kebab-case identifier. */
  id: string;
  title: string;
  verdict: CheckVerdict;
  /** SI value and limit; null where the verdict is 'not applicable' or 'not computed'. */
  value: number | null;
  limit: number | null;
  /** SI unit symbol of value and limit, '' for a ratio. */
  unit: string;
  /** (clearance from the limit) / |limit|: positive is good, whichever way the limit points. */
  margin: number | null;
  /** One sentence for a welder: what is the matter and what would clear it. */
  sentence: string;
  /** Published source, "common practice, no source", or "from memory" with confidence. */
  source: string;
  /** True when a 'fail' makes the design infeasible rather than merely unwise. */
  binding: boolean;
}

export interface Band {
  low: number;
  median: number;
  high: number;
}

export interface PartMass {
  part: string;
  /** kg. */
  mass: number;
  /** Blank sheet area, m²; 0 for parts that are not sheet. */
  area: number;
  /** Standard designation; "bought" or "labour" for the items of the cost that are not made, which have no mass. */
  material: string;
  /** In the user's currency; null when a price is missing. */
  cost: number | null;
}

/** Everything that is judged about one design, given what the gas-dynamic model found. SI units. */
export interface Assessment {
  checks: Check[];
  /** Life of the valve (or of the shell for valveless), s of running, 5–50–95 %; null when it does not run. */
  valveLife: Band | null;
  /** Same in cycles. */
  valveLifeCycles: Band | null;
  /** What limits valveLife, in a few words. */
  lifeLimiter: string;
  /** Overall length along the axis as drawn, m; largest outside diameter (height over both legs for a U), m. */
  overallLength: number;
  overallDiameter: number;
  mass: number;
  cost: number | null;
  parts: PartMass[];
  /** dB(A) at limits.operatorDistance, and the ± of the estimate; null when it does not run. */
  noise: { level: number; uncertainty: number; distance: number; exposureMinutes: number } | null;
  /** Needs for the supply page of the report, each with a label, SI value and unit. */
  needs: { id: string; label: string; value: number; unit: string; note: string }[];
}

export interface CheckInput {
  engine: Engine;
  performance: Performance;
  brief: Brief;
}
