/** Designs that ran, kept for the ranking and for pictures: all of them in a small study, an even share in a large one. */
import type { EvaluationSummary } from '../evaluation/evaluation.ts';
import type { JudgedDesign } from '../ranking/finalists.ts';

/** Designs of one architecture that are kept; beyond that every second one goes, so that a long night costs no memory. */
const KEPT = 1000;

type Figure = 'thrust' | 'valveLife' | 'tsfc' | 'mass';

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
  design: JudgedDesign;
}

/** Offers come in the order of asking, so the same seed keeps the same designs for any number of workers. */
export class KeptDesigns {
  #kept: Entry[] = [];
  #extremes = new Map<string, Entry>();
  #stride = 1;
  /** Designs that ran, and those of them that also meet every binding check and wish. */
  running = 0;
  feasible = 0;

  offer(design: JudgedDesign): void {
    const { summary } = design;
    if (summary.status !== 'ok') return;
    const entry = { place: this.running++, design };
    if (summary.violations.length === 0) this.feasible++;
    for (const [figure, sign] of EXTREMES) this.#keepExtreme(figure, sign, entry);
    if (entry.place % this.#stride !== 0) return;
    this.#kept.push(entry);
    if (this.#kept.length <= KEPT) return;
    this.#stride *= 2;
    this.#kept = this.#kept.filter(({ place }) => place % this.#stride === 0);
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

  #keepExtreme(figure: Figure, sign: 1 | -1, entry: Entry): void {
    const value = (summary: EvaluationSummary) => sign * (summary[figure] ?? -sign * Infinity);
    const held = this.#extremes.get(figure);
    if (!held || value(entry.design.summary) > value(held.design.summary)) this.#extremes.set(figure, entry);
  }

  /** In the order of asking, each once. */
  get designs(): JudgedDesign[] {
    const all = new Map([...this.#kept, ...this.#extremes.values()].map(({ place, design }) => [place, design]));
    return [...all.entries()].sort(([a], [b]) => a - b).map(([, design]) => design);
  }
}
