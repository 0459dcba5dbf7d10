/** When noting where a search stands is worth its while: often enough that little is asked again, rarely enough that the log stays lean. */

/** Answers that may lie behind a note, or this share of all when that is more. */
const ANSWERS = 5000;
const SHARE = 0.005;

export class NoteDue {
  #answers: number;
  readonly #least: number;

  /**
   * @param answers already asked for when the run began
   * @param least answers between two notes, at the least
   */
  constructor(answers: number, least = ANSWERS) {
    this.#answers = answers;
    this.#least = least;
  }

  /** @param answers asked for so far */
  at(answers: number): boolean {
    if (answers - this.#answers < Math.max(this.#least, SHARE * answers)) return false;
    this.#answers = answers;
    return true;
  }
}
