/** When a checkpoint is worth its while: often enough that little is asked again, rarely enough that nobody waits for it. */
import type { StudyClock } from './study-clock.ts';

/** Answers that may lie behind a checkpoint, whatever the time, or this share of all when that is more. */
const ANSWERS = 5000;
const SHARE = 0.005;
/** Otherwise after so many times the time that the last one took, s. */
const PATIENCE = 200;
/** What the first one is taken to cost, s. */
const FIRST_COST = 0.005;

export class CheckpointDue {
  readonly #clock: StudyClock;
  #answers: number;
  #time: number;
  #cost = FIRST_COST;

  /** @param answers already asked for when the run began */
  constructor(clock: StudyClock, answers: number) {
    this.#clock = clock;
    this.#answers = answers;
    this.#time = clock.latest;
  }

  /** @param answers asked for so far */
  at(answers: number): boolean {
    const often = answers - this.#answers >= Math.max(ANSWERS, SHARE * answers);
    const long = this.#clock.latest - this.#time >= PATIENCE * this.#cost;
    if (!often && !long) return false;
    this.#answers = answers;
    return true;
  }

  async during(write: () => Promise<void>): Promise<void> {
    const began = performance.now();
    await write();
    this.#cost = Math.max(FIRST_COST, (performance.now() - began) / 1000);
    this.#time = this.#clock.latest;
  }
}
