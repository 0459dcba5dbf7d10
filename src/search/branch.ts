/** One architecture's part of a search: its population, its books, and what its latest generation gained. */

import { guest, type Kin } from './cross-seeding.ts';
import { Evolution, type EvolutionState } from './evolution.ts';
import { FAILED, FEASIBLE, INFEASIBLE, type Member, type SearchProblem } from './outcome.ts';
import { childRandom, type Random } from './random.ts';
import { ScreenAudit } from './screening.ts';
import { measure, type Yardstick } from './yardstick.ts';

export interface BranchCounts {
  /** Designs whose fate is known, refused geometry not counted. */
  designs: number;
  /** Screening and full runs. */
  screened: number;
  full: number;
  /** Designs that geometry forbade, at no cost. */
  refused: number;
  /** Designs that ran in full, and those that also broke nothing. */
  running: number;
  feasible: number;
}

/** Distinct failure reasons that are counted apart; later ones are counted together. */
const REASONS = 200;

/** Weight of an architecture's growth that other architectures already outdo. */
const SHADOWED = 0.1;

/** Worth of halving what stands between an architecture and its first feasible design, in hypervolume. */
const APPROACH = 0.01;

/** Bounds of the chance that a design comes from kin. */
const MOST_OPEN = 0.5;
const LEAST_OPEN = 0.05;

/** Everything from which a branch goes on, between two generations. */
export interface BranchState {
  evolution: EvolutionState;
  audit: ScreenAudit['state'];
  books: Omit<BranchCounts, 'refused'>;
  reasons: Map<string, number>;
  volume: number;
  leader: Member | null;
  survival: { guests: number; bred: number };
}

export class Branch {
  readonly evolution: Evolution;
  readonly audit = new ScreenAudit();
  private books: BranchState['books'] = { designs: 0, screened: 0, full: 0, running: 0, feasible: 0 };
  private reasons = new Map<string, number>();
  /** Feasible designs of the latest generation. */
  fresh: Member[] = [];
  private audits: number[] = [];
  private volume = 0;
  /** `changes` of the archive when `volume` was measured. */
  private measuredAt = -1;
  private leader: Member | null = null;
  /** Smoothed share of designs that live on, of guests and of own offspring. */
  private survival = { guests: 0.5, bred: 0.1 };

  constructor(
    readonly problem: SearchProblem,
    population: number,
    seed: string,
  ) {
    this.evolution = new Evolution(problem, { population }, childRandom(seed, problem.id), (reason) =>
      this.count(reason),
    );
  }

  get state(): BranchState {
    const { books, reasons, volume, leader, survival } = this;
    return { evolution: this.evolution.state, audit: this.audit.state, books, reasons, volume, leader, survival };
  }

  set state(state: BranchState) {
    this.evolution.state = state.evolution;
    this.audit.state = state.audit;
    this.books = state.books;
    this.reasons = state.reasons;
    this.volume = state.volume;
    this.leader = state.leader;
    this.survival = state.survival;
    this.fresh = [];
    this.audits = [];
    this.measuredAt = -1;
  }

  /** `random` decides which designs come from kin. */
  ask(count: number, kin: Kin = [], random: Random | null = null): number[][] {
    const guests: number[][] = [];
    for (let n = 0; random !== null && n < count; n++) {
      if (random.uniform() >= this.openness) continue;
      const design = guest(this.evolution, kin, random);
      if (design !== null) guests.push(design);
    }
    return this.evolution.ask(count, guests);
  }

  /** Chance that a design comes from kin: as guests survive against the own offspring. */
  get openness(): number {
    const { guests, bred } = this.survival;
    return Math.max(LEAST_OPEN, (MOST_OPEN * guests) / (guests + bred));
  }

  /** Which of the screened designs are to be run in full. */
  promote(screened: readonly Member[]): boolean[] {
    this.books.screened += screened.length;
    const promoted = this.evolution.promising(screened);
    this.audits = this.audit.choose(screened, promoted);
    return promoted;
  }

  /**
   * Takes the generation in the order of asking: `full[n]` is the full run, or null; `screened` is empty without screening.
   * A failed screen that was not run in full counts as the design's fate; one that ran but did not promise is set aside.
   */
  tell(full: readonly (Member | null)[], screened: readonly Member[]): void {
    for (const n of this.audits) if (full[n] !== null) this.audit.learn(full[n]);
    this.audits = [];
    const judged = full.map((member, n) => {
      if (member !== null) {
        member.screened = screened[n] ?? null;
        return member;
      }
      return screened[n].tier >= FAILED ? screened[n] : null;
    });
    this.fresh = [];
    this.books.designs += full.length;
    for (const member of judged) {
      if (member === null) continue;
      if (member.tier !== FEASIBLE) this.count(member.reason || 'no reason given');
      else this.fresh.push(member);
    }
    for (const member of full) {
      if (member === null) continue;
      this.books.full++;
      if (member.tier <= INFEASIBLE) this.books.running++;
      if (member.tier === FEASIBLE) this.books.feasible++;
    }
    this.evolution.tell(judged);
    const alive = new Set(this.evolution.population);
    const invited = this.evolution.guests;
    const rate = (group: readonly (Member | null)[], before: number) =>
      group.length === 0
        ? before
        : before + 0.3 * (group.filter((m) => m && alive.has(m)).length / group.length - before);
    this.survival = {
      guests: rate(judged.slice(0, invited), this.survival.guests),
      bred: Math.max(0.02, rate(judged.slice(invited), this.survival.bred)),
    };
  }

  private count(reason: string): void {
    const key = this.reasons.has(reason) || this.reasons.size < REASONS ? reason : 'other';
    this.reasons.set(key, (this.reasons.get(key) ?? 0) + 1);
  }

  /**
   * What the latest generation bought, as hypervolume: growth of the common front, a lesser share of this architecture's own
   * growth, or nearness to a first feasible design. `others` is the common front before it.
   */
  gain(yardstick: Yardstick | null, others: readonly Member[], othersVolume: number): number {
    const before = this.leader;
    this.leader = this.evolution.population[0] ?? null;
    if (this.fresh.length === 0 || yardstick === null) return APPROACH * approach(before, this.leader);
    const { archive } = this.evolution;
    if (archive.changes === this.measuredAt) return 0;
    this.measuredAt = archive.changes;
    const volume = measure(yardstick, archive.members);
    const own = Math.max(0, volume - this.volume);
    this.volume = volume;
    if (own === 0) return 0;
    const common = measure(yardstick, [...others, ...this.fresh]) - othersVolume;
    return Math.max(0, common) + SHADOWED * own;
  }

  get counts(): BranchCounts {
    return { ...this.books, refused: this.evolution.refused };
  }

  /** Failure reasons with their counts, most frequent first. */
  get failures(): { reason: string; count: number }[] {
    return Array.from(this.reasons, ([reason, count]) => ({ reason, count })).sort(
      (a, b) => b.count - a.count || (a.reason < b.reason ? -1 : 1),
    );
  }
}

/** 1 for a step up from failure to running or from broken to feasible, else the halvings of what is broken. */
function approach(before: Member | null, now: Member | null): number {
  if (before === null || now === null || before.tier === FEASIBLE) return 0;
  if (now.tier < before.tier) return 1;
  if (!(before.violation > 0) || !(now.violation > 0)) return 0;
  return Math.min(1, Math.log2(before.violation / now.violation));
}
