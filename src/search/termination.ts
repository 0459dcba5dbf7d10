/** When a search ends. Every rule answers with its reason or null; the first to answer wins. */

export interface Progress {
  /** What would be spent after one more design, in full evaluations. */
  evaluations: number;
  generation: number;
  hypervolume: number;
}

export interface StoppingRule {
  /** Asked once after each generation. */
  check(progress: Progress): string | null;
}

export function evaluationBudget(limit: number): StoppingRule {
  return {
    check: ({ evaluations }) => (evaluations > limit + 1e-9 ? `the budget of ${limit} evaluations is spent` : null),
  };
}

/** The clock is passed in, s, and when the search began. The only rule whose answer depends on the machine. */
export function timeLimit(seconds: number, clock: () => number, start = clock()): StoppingRule {
  return { check: () => (clock() - start >= seconds ? `the time limit of ${seconds} s is reached` : null) };
}

/** Ends when hypervolume, once above nothing, gains less than `share` of itself over `generations`. */
export function hypervolumeStall(generations: number, share = 1e-4): StoppingRule {
  const history: number[] = [];
  return {
    check({ hypervolume }) {
      history.push(hypervolume);
      if (history.length <= generations) return null;
      const past = history[history.length - 1 - generations];
      if (!(past > 0) || hypervolume - past > share * past) return null;
      return `hypervolume gained less than ${share * 100} % in ${generations} generations`;
    },
  };
}

/** The first reason that any rule gives; every rule is asked, since some keep a history. */
export function firstReason(rules: readonly StoppingRule[], progress: Progress): string | null {
  const reasons = rules.map((rule) => rule.check(progress));
  return reasons.find((reason) => reason !== null) ?? null;
}
