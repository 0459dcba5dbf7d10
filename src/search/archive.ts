/** The non-dominated feasible designs of a whole run, thinned to a bounded number that keeps the front's shape. */
import { truncateFront } from './hypervolume-contribution.ts';
import { FEASIBLE, type Member } from './outcome.ts';
import { selectSpread } from './subset-selection.ts';

export class Archive {
  /** Rising in the first objective. */
  members: Member[] = [];
  /** How often it changed. */
  changes = 0;

  /** Grows to twice the capacity, then is thinned to it. */
  constructor(private readonly capacity: number) {}

  /** True when the member was taken in; it must be feasible and neither dominated nor equalled by a member. */
  add(member: Member): boolean {
    if (member.tier !== FEASIBLE) return false;
    const { f } = member;
    const place = this.firstNotBelow(f[0]);
    const { members } = this;
    // Only members no larger in the first objective can dominate; only those no smaller can be dominated.
    if (f.length === 2) {
      if (place > 0 && members[place - 1].f[1] <= f[1]) return false;
      if (place < members.length && members[place].f[0] === f[0] && members[place].f[1] <= f[1]) return false;
      let end = place;
      while (end < members.length && members[end].f[1] >= f[1]) end++;
      members.splice(place, end - place, member);
    } else {
      for (let i = place - 1; i >= 0; i--) if (notWorse(members[i].f, f)) return false;
      for (let i = place; i < members.length && members[i].f[0] === f[0]; i++) {
        if (notWorse(members[i].f, f)) return false;
      }
      let end = place;
      for (let i = place; i < members.length; i++) if (!notWorse(f, members[i].f)) members[end++] = members[i];
      members.length = end;
      members.splice(place, 0, member);
    }
    if (members.length > 2 * this.capacity) this.thin();
    this.changes++;
    return true;
  }

  private firstNotBelow(value: number): number {
    let first = 0;
    let last = this.members.length;
    while (first < last) {
      const middle = (first + last) >> 1;
      if (this.members[middle].f[0] < value) first = middle + 1;
      else last = middle;
    }
    return first;
  }

  private thin(): void {
    const points = this.members.map((member) => member.f);
    const kept = points[0].length === 2 ? truncateFront(points, this.capacity) : selectSpread(points, this.capacity);
    kept.sort((i, j) => i - j);
    this.members = kept.map((index) => this.members[index]);
  }
}

function notWorse(a: readonly number[], b: readonly number[]): boolean {
  for (let k = 0; k < a.length; k++) if (a[k] > b[k]) return false;
  return true;
}
