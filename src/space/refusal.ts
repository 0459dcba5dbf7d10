/** Geometry's objections to a design, gathered and put into one refusal. */
import type { Refusal } from './architecture.ts';

export interface Objection {
  /** Kebab-case name of the constraint. */
  constraint: string;
  /** Normalised to the limit; above 0. */
  violation: number;
  sentence: string;
}

/** How far `value` exceeds `limit`, over the limit; null when it does not. */
export function excess(constraint: string, value: number, limit: number, sentence: () => string): Objection | null {
  return value > limit ? { constraint, violation: value / limit - 1, sentence: sentence() } : null;
}

/** One refusal for all objections: the worst names it, all add to its violation; null when there is none. */
export function refusalFor(objections: readonly (Objection | null)[]): Refusal | null {
  const all = objections.filter((objection): objection is Objection => objection !== null);
  if (all.length === 0) return null;
  const worst = all.reduce((a, b) => (b.violation > a.violation ? b : a));
  const violation = all.reduce((sum, objection) => sum + objection.violation, 0);
  return { refused: true, constraint: worst.constraint, violation, sentence: worst.sentence };
}
