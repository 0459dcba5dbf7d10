/**
 * Domination with constraints (Deb, Computer Methods in Applied Mechanics and Engineering 186, 2000): a feasible design
 * beats one that breaks a constraint; two that do are compared by how much they break; two feasible ones by their
 * objectives. Failures stand below anything that ran, graded ones before ungraded, refused geometry last.
 */
import { FEASIBLE, INFEASIBLE, type Member } from './outcome.ts';

/** True when a is nowhere worse and somewhere better than b. All objectives are minimised. */
export function dominates(a: ArrayLike<number>, b: ArrayLike<number>): boolean {
  let better = false;
  for (let k = 0; k < a.length; k++) {
    if (a[k] > b[k]) return false;
    if (a[k] < b[k]) better = true;
  }
  return better;
}

/** True when design a beats design b, constraints first. */
export function dominatesConstrained(a: Member, b: Member): boolean {
  if (a.tier !== b.tier) return a.tier < b.tier;
  if (a.tier === FEASIBLE) return dominates(a.f, b.f);
  return a.violation < b.violation;
}

/** Largest violation of each constraint seen so far: what one unit of breakage is measured against. */
export class ViolationScale {
  largest: number[] = [];

  /** Learns from members that ran but break constraints. */
  observe(members: readonly Member[]): void {
    for (const { tier, violations } of members) {
      if (tier !== INFEASIBLE) continue;
      for (let k = 0; k < violations.length; k++) {
        if (violations[k] > (this.largest[k] ?? 0)) this.largest[k] = violations[k];
      }
    }
  }

  /** Sets every infeasible member's violation to the sum of its broken constraints over their scales. */
  apply(members: readonly Member[]): void {
    for (const member of members) {
      if (member.tier !== INFEASIBLE) continue;
      let sum = 0;
      for (let k = 0; k < member.violations.length; k++) {
        if (member.violations[k] > 0) sum += member.violations[k] / this.largest[k];
      }
      member.violation = sum;
    }
  }
}
