/** Designs that ran, kept for the trade pictures and for what the answer compares: all of them in a small study, an even share in a large one. */
import type { EvaluationSummary } from '../evaluation/evaluation.ts';
import type { TradePoint } from '../ranking/results.ts';

/** Designs of one architecture that are kept; beyond that every second one goes, so that a long night costs no memory. */
const KEPT = 1000;

type Figure = 'thrust' | 'valveLife' | 'tsfc' | 'mass';

/** What the trade pictures show of a design, and its mass; coordinates and flags stay in the log. */
export interface KeptDesign extends TradePoint {
  mass: number;
}

/** @param summary of a full run that is ok */
export function keptDesign(architecture: string, summary: EvaluationSummary): KeptDesign {
  const { tsfc, valveLife, thrust, mass, violations } = summary;
  return {
    architecture,
    tsfc: tsfc ?? 0,
    valveLife: valveLife ?? 0,
    thrust: thrust ?? 0,
    mass: mass ?? 0,
    feasible: violations.length === 0,
    reason: violations[0]?.id ?? '',
  };
}

/** What can be had at all is told by the extremes, which are never thinned out. */
const EXTREMES: readonly [Figure, sign: 1 | -1][] = [
  ['thrust', 1],
  ['valveLife', 1],
  ['tsfc', -1],
  ['mass', -1],
];

/** Plain data, for a note in the log. */
export interface KeptDesignsState {
  kept: Entry[];
  extremes: Map<string, Entry>;
  stride: number;
  running: number;
  feasible: number;
}

interface Entry {
  place: number;
  design: KeptDesign;
}

/** Offers come in the order of asking, so the same seed keeps the same designs for any number of workers. */
export class KeptDesigns {
  #kept: Entry[] = [];
  #extremes = new Map<string, Entry>();
  #stride = 1;
  /** Designs that ran, and those of them that also meet every binding check and wish. */
  running = 0;
  feasible = 0;

  /** The design as it is kept; null when it did not run or is not among those that are. */
  offer(architecture: string, summary: EvaluationSummary): KeptDesign | null {
    if (summary.status !== 'ok') return null;
    const entry = { place: this.running++, design: keptDesign(architecture, summary) };
    if (entry.design.feasible) this.feasible++;
    const isExtreme = this.#keepExtremes(entry, summary);
    if (entry.place % this.#stride !== 0) return isExtreme ? entry.design : null;
    this.#kept.push(entry);
    if (this.#kept.length > KEPT) {
      this.#stride *= 2;
      this.#kept = this.#kept.filter(({ place }) => place % this.#stride === 0);
    }
    return entry.design;
  }

  /** Whether it is one; what has no such figure is none. */
  #keepExtremes(entry: Entry, summary: EvaluationSummary): boolean {
    const beaten = EXTREMES.filter(([figure, sign]) => {
      const held = this.#extremes.get(figure)?.design;
      return summary[figure] !== null && (!held || sign * entry.design[figure] > sign * held[figure]);
    });
    for (const [figure] of beaten) this.#extremes.set(figure, entry);
    return beaten.length > 0;
  }

  get state(): KeptDesignsState {
    const { running, feasible } = this;
    return { kept: this.#kept, extremes: this.#extremes, stride: this.#stride, running, feasible };
  }

  set state(state: KeptDesignsState) {
    this.#kept = state.kept;
    this.#extremes = state.extremes;
    this.#stride = state.stride;
    this.running = state.running;
    this.feasible = state.feasible;
  }

  /** In the order of asking, each once. */
  get designs(): KeptDesign[] {
    const all = new Map([...this.#kept, ...this.#extremes.values()].map(({ place, design }) => [place, design]));
    return [...all.entries()].sort(([a], [b]) => a - b).map(([, design]) => design);
  }
}
