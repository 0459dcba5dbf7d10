/** Tells where one cycle of an engine ends and the next begins, from the pressure of its chamber. */

/**
 * A cycle is counted when the chamber, having been below ambient by this share of its recent depth, rises above ambient by
 * this share of its recent peak: overtones and valve chatter are no cycles.
 */
const SWING = 0.35;
/** Shortest cycle and memory of the recent extremes, acoustic periods. */
const SHORTEST = 0.25;
const MEMORY = 1.5;
/** Swing below which nothing counts, share of ambient. */
const STILL = 0.005;

export class CycleWatch {
  /** When the last cycle ended, s. */
  last = 0;
  private below = false;
  private peak = 0;
  private depth = 0;
  /** Acoustic period, s. */
  private readonly period: number;

  constructor(period: number) {
    this.period = period;
  }

  /** A watch that has seen what another has, and a cycle end at `time`, s. */
  static goOn(other: CycleWatch, time: number): CycleWatch {
    const watch = new CycleWatch(other.period);
    watch.last = time;
    watch.peak = other.peak;
    watch.depth = other.depth;
    return watch;
  }

  /** Sees one step of dt seconds that ends at `time`; true when a cycle ends with it. Pressures in Pa. */
  ends(chamber: number, ambient: number, time: number, dt: number): boolean {
    const fade = dt / (MEMORY * this.period);
    this.peak = Math.max(chamber - ambient, this.peak * (1 - fade), STILL * ambient);
    this.depth = Math.max(ambient - chamber, this.depth * (1 - fade), STILL * ambient);
    if (chamber < ambient - SWING * this.depth) this.below = true;
    const above = chamber > ambient + SWING * this.peak;
    if (!(this.below && above && time - this.last > SHORTEST * this.period)) return false;
    this.below = false;
    this.last = time;
    return true;
  }
}
