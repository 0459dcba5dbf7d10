/** What a search over architectures hands on. Pure data; the same seed and outcomes give the same bytes. */
import type { Branch, BranchCounts } from './branch.ts';
import type { Member } from './outcome.ts';
import { FEASIBLE } from './outcome.ts';
import type { Yardstick } from './yardstick.ts';

export interface ProblemResult extends BranchCounts {
  /** SearchProblem.id. */
  id: string;
  /** Feasible designs that stand best for all that this architecture found, then the least-violating. */
  population: Member[];
  /** When nothing was feasible: the design that came nearest. */
  leastViolating: Member | null;
  /** Every reason for which a design was not feasible, most frequent first. */
  failures: { reason: string; count: number }[];
}

export interface ConvergencePoint {
  /** Spent so far, in full evaluations. */
  evaluations: number;
  /** Designs whose fate is known. */
  designs: number;
  /** Of the common front, on the yardstick. */
  hypervolume: number;
}

/** What the coarse grid did in a search. Costs are in full evaluations. */
export interface ScreeningReport {
  /** Coarse runs, and full runs. */
  screened: number;
  full: number;
  /** Cost of everything, and what it would have cost to run every design in full, in full evaluations. */
  spent: number;
  withoutScreening: number;
  /** Failed screens run in full to check the screen, and those among them that then ran. */
  audited: number;
  overturned: number;
}

export interface ArchitectureSearchResult {
  problems: ProblemResult[];
  /** No feasible design found dominates any of these; rising in the first objective. */
  front: Member[];
  yardstick: Yardstick | null;
  convergence: ConvergencePoint[];
  screening: ScreeningReport;
  stoppedBecause: string;
}

export function problemResult(branch: Branch, population: number): ProblemResult {
  const best = branch.evolution.best(population);
  return {
    id: branch.problem.id,
    ...branch.counts,
    population: best,
    leastViolating: best.length > 0 && best[0].tier !== FEASIBLE ? best[0] : null,
    failures: branch.failures,
  };
}

export function screeningReport(branches: readonly Branch[], spent: number): ScreeningReport {
  const report = { screened: 0, full: 0, spent, withoutScreening: 0, audited: 0, overturned: 0 };
  for (const { counts, audit } of branches) {
    report.screened += counts.screened;
    report.full += counts.full;
    report.withoutScreening += counts.designs;
    report.audited += audit.audited;
    report.overturned += audit.overturned;
  }
  return report;
}
