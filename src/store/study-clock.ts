/**
 * How long a study has worked, over all its runs, s.
 *
 * Every stored answer carries the time at which it came. Answers that are read again bring their time along, so a run that
 * goes on after a stop sees the same times as the one that was stopped, and decides the same. Time in which no run worked
 * does not count, and a wall clock that is set back does no harm.
 */
export class StudyClock {
  readonly #monotonic: () => number;
  #latest = 0;
  #at: number;

  /** @param monotonic s, never going back */
  constructor(monotonic: () => number) {
    this.#monotonic = monotonic;
    this.#at = monotonic();
  }

  /** Time of the latest answer. */
  get latest(): number {
    return this.#latest;
  }

  /** A fresh answer came: its time, to the millisecond. */
  stamp(): number {
    const now = this.#monotonic();
    this.#latest = Math.round((this.#latest + Math.max(0, now - this.#at)) * 1000) / 1000;
    this.#at = now;
    return this.#latest;
  }

  /** A stored answer was read that had come at this time. */
  recall(time: number): void {
    if (!(time > this.#latest)) return;
    this.#latest = time;
    this.#at = this.#monotonic();
  }
}
