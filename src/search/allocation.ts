/**
 * Who gets how much of the next generation: effort follows what it bought lately, while nobody falls below a floor. Counts
 * are dealt from accumulated shares, so that small shares are served now and then instead of never.
 */
export interface AllocationState {
  yield: Float64Array;
  standing: Float64Array;
  owed: Float64Array;
}

/** Weight of what a party holds against what it gained lately. */
const STANDING = 0.5;

export class Allocation {
  /** Smoothed gain for each design evaluated. */
  private yield: Float64Array;
  private owed: Float64Array;
  /** What the common front would lose without each party. */
  private standing: Float64Array;

  /** `floor`: least share of an even deal that everyone keeps, 0 to 1. */
  constructor(
    private readonly parties: number,
    private readonly floor: number,
  ) {
    this.yield = new Float64Array(parties);
    this.standing = new Float64Array(parties);
    this.owed = new Float64Array(parties);
  }

  /** Notes what `designs` evaluations gained (in any unit that all parties share). */
  learn(party: number, gain: number, designs: number): void {
    if (designs > 0) this.yield[party] += 0.3 * (Math.max(0, gain) / designs - this.yield[party]);
  }

  /** Notes what the common front would lose without each party. */
  rank(standing: readonly number[]): void {
    this.standing.set(standing);
  }

  get state(): AllocationState {
    return { yield: this.yield, standing: this.standing, owed: this.owed };
  }

  set state(state: AllocationState) {
    this.yield = state.yield;
    this.owed = state.owed;
    this.standing = state.standing;
  }

  /** Share of each party in the next generation; they sum to 1 and none is below floor / parties. */
  shares(): number[] {
    const stood = this.standing.reduce((sum, value) => sum + value, 0);
    const total = this.yield.reduce((sum, value) => sum + value, 0);
    return Array.from(this.yield, (value, party) => {
      const gained = total > 0 ? value / total : 1 / this.parties;
      const held = stood > 0 ? this.standing[party] / stood : gained;
      const earned = (1 - STANDING) * gained + STANDING * held;
      return this.floor / this.parties + (1 - this.floor) * earned;
    });
  }

  /** Splits `count` designs; the counts sum to `count`. */
  deal(count: number): number[] {
    this.shares().forEach((share, party) => {
      this.owed[party] += share * count;
    });
    const counts = Array.from(this.owed, (owed) => Math.max(0, Math.floor(owed)));
    let left = count - counts.reduce((sum, value) => sum + value, 0);
    const byRemainder = counts
      .map((_, party) => party)
      .sort((a, b) => this.owed[b] - counts[b] - (this.owed[a] - counts[a]) || a - b);
    for (let n = 0; left > 0; n++, left--) counts[byRemainder[n % this.parties]]++;
    for (let n = this.parties - 1; left < 0; n = (n + this.parties - 1) % this.parties) {
      const party = byRemainder[n];
      if (counts[party] === 0) continue;
      counts[party]--;
      left++;
    }
    counts.forEach((dealt, party) => {
      this.owed[party] -= dealt;
    });
    return counts;
  }
}
