/**
 * One population searching one problem, turned inside out: it is asked for designs and told what became of them, so that
 * whoever owns the budget decides when and where they are evaluated.
 */
import { Archive } from './archive.ts';
import { createDomain, type Domain, fingerprint, repair } from './domain.ts';
import { ViolationScale } from './domination.ts';
import { KnownDesigns } from './known-designs.ts';
import { latinHypercube } from './latin-hypercube.ts';
import { FEASIBLE, INFEASIBLE, type Member, REFUSED, refuse, type SearchProblem } from './outcome.ts';
import type { Generator } from './random.ts';
import { selectSubset } from './subset-selection.ts';
import { duel, survive } from './survival.ts';
import {
  defaultVariation,
  type Offspring,
  Variation,
  type VariationSettings,
  type VariationState,
} from './variation.ts';

export interface EvolutionSettings {
  /** Members that live on from one generation to the next. */
  population: number;
  variation?: VariationSettings;
  /** Non-dominated designs remembered beside the population. */
  archiveCapacity?: number;
  /** Designs that will be asked for in all, when known: exploring is wound down towards it. */
  horizon?: number;
}

/** Redraws before a design that repeats an old one or that geometry forbids is given up. */
const REDRAWS = 20;

/** Share of scouts at the start, until they are wound down to none at this share of the horizon. */
const SCOUTS = 0.3;
const SCOUTS_END = 0.8;

/** Scouts where no horizon is known. */
const SCOUTS_ALWAYS = 0.25;

/** Members left at the horizon with a single objective (linear reduction: Tanabe and Fukunaga, CEC 2014). */
const LAST_MEMBERS = 8;

/** Everything from which an evolution goes on, between two generations. Plain data; members are shared, not copied. */
export interface EvolutionState {
  population: Member[];
  archive: Member[];
  refused: number;
  /** Fingerprints, in the order of asking. */
  known: Uint32Array;
  toldOf: number;
  started: boolean;
  random: number[];
  variation: VariationState;
  largestViolations: number[];
}

export class Evolution {
  readonly domain: Domain;
  readonly archive: Archive;
  /** Best first. */
  population: Member[] = [];
  /** Designs that geometry forbade, at no cost. */
  refused = 0;
  private readonly variation: Variation;
  private readonly scale = new ViolationScale();
  /** Fingerprints of every design ever asked for: none is paid for twice. */
  private readonly known = new KnownDesigns();
  private toldOf = 0;
  private started = false;
  private asked: Offspring[] = [];
  /** How many of those asked for are guests. */
  guests = 0;

  constructor(
    readonly problem: SearchProblem,
    readonly settings: EvolutionSettings,
    private readonly random: Generator,
    /** Told the reason of every design that geometry forbids. */
    private readonly onRefusal?: (reason: string) => void,
  ) {
    this.domain = createDomain(problem.variables);
    this.variation = new Variation(this.domain, settings.variation ?? defaultVariation(problem.objectiveCount));
    this.archive = new Archive(settings.archiveCapacity ?? 1000);
  }

  get state(): EvolutionState {
    const { population, refused, toldOf, started } = this;
    return {
      population,
      archive: this.archive.members,
      refused,
      known: this.known.marks,
      toldOf,
      started,
      random: this.random.state,
      variation: this.variation.state,
      largestViolations: this.scale.largest,
    };
  }

  set state(state: EvolutionState) {
    this.population = state.population;
    this.archive.members = state.archive;
    this.refused = state.refused;
    this.known.marks = state.known;
    this.toldOf = state.toldOf;
    this.started = state.started;
    this.random.state = state.random;
    this.variation.state = state.variation;
    this.scale.largest = state.largestViolations;
    this.asked = [];
  }

  /**
   * At most `count` new designs; fewer when the domain holds no more or geometry forbids what is tried. `guests` are designs
   * from elsewhere, which come first where they are new and allowed.
   */
  ask(count: number, guests: readonly number[][] = []): number[][] {
    const invited = this.invite(guests.slice(0, count));
    const wanted = count - invited.length;
    this.guests = invited.length;
    this.asked = [...invited, ...(this.started ? this.breed(wanted) : this.sow(wanted))];
    this.started = true;
    return this.asked.map((offspring) => offspring.x);
  }

  private invite(guests: readonly number[][]): Offspring[] {
    return guests
      .map((x) => repair(this.domain, x.slice()))
      .filter((x) => this.admit(x))
      .map((x) => ({ x, operator: 0, factor: 0, crossing: 0, parent: null }));
  }

  /** A space-filling start; places that geometry forbids are filled from further samples. */
  private sow(count: number): Offspring[] {
    const sown: Offspring[] = [];
    for (let round = 0; round < REDRAWS && sown.length < count; round++) {
      for (const x of latinHypercube(this.domain, count, this.random)) {
        if (sown.length < count && this.admit(x)) sown.push({ x, operator: 0, factor: 0, crossing: 0, parent: null });
      }
    }
    return sown;
  }

  private breed(count: number): Offspring[] {
    const bred: Offspring[] = [];
    for (let tries = 0; tries < REDRAWS * count && bred.length < count; tries++) {
      if (this.population.length === 0) return this.sow(count);
      for (const offspring of this.variation.make(this.population, this.random, this.turn(bred.length))) {
        repair(this.domain, offspring.x);
        if (bred.length < count && this.admit(offspring.x)) bred.push(offspring);
      }
    }
    return bred;
  }

  /** With one objective members take turns as parents. */
  private turn(n: number): Member | null {
    if (this.problem.objectiveCount > 1) return null;
    return this.population[(this.toldOf + n) % this.population.length];
  }

  /** True when the design is new and geometry allows it. A refused one may still join the population, to lead out of the forbidden region. */
  private admit(x: number[]): boolean {
    const mark = fingerprint(x);
    if (this.known.has(mark)) return false;
    this.known.add(mark);
    const refusal = this.problem.check?.(x) ?? null;
    if (refusal === null) return true;
    this.refused++;
    this.onRefusal?.(refusal.reason);
    const { population, settings } = this;
    const worst = population[population.length - 1];
    if (population.length < settings.population || worst.tier === REFUSED) {
      this.population = survive([...population, refuse(-this.refused, this.problem, x, refusal)], settings.population);
    }
    return false;
  }

  /**
   * Which of the screened designs would survive among the population's own screening runs, like against like: these are
   * worth a full evaluation. Those that failed the screen are not.
   */
  promising(screened: readonly Member[]): boolean[] {
    const rivals = this.population.map((member) => ({ ...(member.screened ?? member) }));
    const union = [...rivals, ...screened];
    this.scale.observe(screened);
    this.scale.apply(union);
    const survivors = new Set(survive(union, this.settings.population));
    return screened.map((member) => member.tier <= INFEASIBLE && survivors.has(member));
  }

  /** Takes the judged designs, in the order in which they were asked for; null where one was set aside unjudged. */
  tell(judged: readonly (Member | null)[]): void {
    const born = judged.filter((member) => member !== null);
    this.scale.observe(born);
    const union = [...this.population, ...born];
    this.scale.apply(union);
    this.population = this.select(union, judged);
    this.toldOf += judged.length;
    const alive = new Set(this.population);
    this.variation.learn(this.asked, (index) => judged[index] !== null && alive.has(judged[index]));
    for (const member of born) if (member.tier === FEASIBLE) this.archive.add(member);
  }

  private select(union: readonly Member[], judged: readonly (Member | null)[]): Member[] {
    const { population, horizon } = this.settings;
    const passed = horizon === undefined ? null : Math.min(1, this.toldOf / horizon);
    if (this.problem.objectiveCount > 1) {
      return survive(
        union,
        population,
        passed === null ? SCOUTS_ALWAYS : SCOUTS * Math.max(0, 1 - passed / SCOUTS_END),
      );
    }
    const least = Math.min(LAST_MEMBERS, population);
    const size = Math.round(population - (population - least) * (passed ?? 0));
    const parents = this.asked.map(({ parent }) => parent).filter((parent) => parent !== null);
    if (this.population.length < size || parents.length < judged.length) return survive(union, size);
    return survive(duel(this.population, parents, judged), size);
  }

  /** At most `count` members that stand best for everything found: the archive's finest subset, filled up from the population. */
  best(count: number): Member[] {
    const { members } = this.archive;
    const chosen = selectSubset(
      members.map((member) => member.f),
      count,
    ).map((index) => members[index]);
    const taken = new Set(chosen);
    for (const member of this.population) if (chosen.length < count && !taken.has(member)) chosen.push(member);
    return chosen;
  }
}
