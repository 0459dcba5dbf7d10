/**
 * When noting where a search stands is worth its while: often enough that little is asked again, rarely enough that the log stays
 * lean. To ask for so many stored answers again takes a second or two; a note takes a tenth of their room in the log.
 */
const ANSWERS = 3000;

export class NoteDue {
  #answers: number;
  readonly #every: number;

  /**
   * @param answers already asked for when the run began
   * @param every answers between two notes, at the least
   */
  constructor(answers: number, every = ANSWERS) {
    this.#answers = answers;
    this.#every = every;
  }

  /** @param answers asked for so far */
  at(answers: number): boolean {
    if (answers - this.#answers < this.#every) return false;
    this.#answers = answers;
    return true;
  }
}
