/** Which members live on: constraints first, then fronts, then what each adds to the hypervolume. */
import { crowdingDistance } from './crowding.ts';
import { truncateFront } from './hypervolume-contribution.ts';
import { nonDominatedSort } from './non-dominated-sorting.ts';
import { FEASIBLE, type Member } from './outcome.ts';
import { selectSpread } from './subset-selection.ts';

/**
 * The best `keep` members, best first, with `rank` and `worth` set. Feasible members come front by front; the front that
 * does not fit whole is cut to the points that matter most for hypervolume (2 or 3 objectives) or spread (more). Then
 * those that break constraints, then failures, each by how far they are from working.
 */
export function survive(members: readonly Member[], keep: number): Member[] {
  const feasible = members.filter((member) => member.tier === FEASIBLE);
  const rest = members.filter((member) => member.tier !== FEASIBLE);
  const survivors: Member[] = [];
  const fronts = nonDominatedSort(feasible.map((member) => member.f));
  for (let rank = 0; rank < fronts.length && survivors.length < keep; rank++) {
    const front = fitFront(
      fronts[rank].map((index) => feasible[index]),
      keep - survivors.length,
    );
    const distance = crowdingDistance(front.map((member) => member.f));
    front.forEach((member, n) => {
      member.rank = rank;
      member.worth = distance[n];
      survivors.push(member);
    });
  }
  rest.sort((a, b) => a.tier - b.tier || a.violation - b.violation || a.id - b.id);
  for (let n = 0; n < rest.length && survivors.length < keep; n++) {
    rest[n].rank = fronts.length + n;
    rest[n].worth = 0;
    survivors.push(rest[n]);
  }
  return survivors;
}

function fitFront(front: Member[], room: number): Member[] {
  if (front.length <= room) return front;
  const points = front.map((member) => member.f);
  const objectives = points[0].length;
  if (objectives === 1) return front.slice(0, room);
  const kept = objectives <= 3 ? truncateFront(points, room) : selectSpread(points, room);
  return kept.map((index) => front[index]);
}
