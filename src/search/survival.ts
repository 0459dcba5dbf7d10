/** Which members live on: constraints first, then fronts, then what each adds to the hypervolume. */
import { crowdingDistance } from './crowding.ts';
import { dominatesConstrained } from './domination.ts';
import { truncateFront } from './hypervolume-contribution.ts';
import { nonDominatedSort } from './non-dominated-sorting.ts';
import { FEASIBLE, INFEASIBLE, type Member } from './outcome.ts';
import { selectSpread } from './subset-selection.ts';

/**
 * The best `keep` members, best first, with `rank` and `worth` set. Feasible members come front by front; the front that
 * does not fit whole is cut to the points that matter most for hypervolume (2 or 3 objectives) or spread (more). Then
 * scouts, at most a share `scoutShare` of `keep`; then those that break constraints and failures, each by how far they are
 * from working.
 */
export function survive(members: readonly Member[], keep: number, scoutShare = 0): Member[] {
  const feasible = members.filter((member) => member.tier === FEASIBLE);
  const rest = members.filter((member) => member.tier !== FEASIBLE);
  const scouts = feasible.length > (1 - scoutShare) * keep ? chooseScouts(rest, Math.floor(scoutShare * keep)) : [];
  const room = keep - scouts.length;
  const survivors: Member[] = [];
  const fronts = nonDominatedSort(feasible.map((member) => member.f));
  for (let rank = 0; rank < fronts.length && survivors.length < room; rank++) {
    const front = fitFront(
      fronts[rank].map((index) => feasible[index]),
      room - survivors.length,
    );
    const distance = crowdingDistance(front.map((member) => member.f));
    front.forEach((member, n) => {
      member.rank = rank;
      member.worth = distance[n];
      survivors.push(member);
    });
  }
  const scouting = new Set(scouts);
  for (const scout of scouts) {
    scout.rank = 0;
    scout.worth = 0;
    survivors.push(scout);
  }
  rest.sort((a, b) => a.tier - b.tier || a.violation - b.violation || a.id - b.id);
  for (let n = 0; n < rest.length && survivors.length < keep; n++) {
    if (scouting.has(rest[n])) continue;
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

/**
 * Members that break constraints but lead somewhere: those that no other outdoes in objectives and violation together,
 * spread out. They keep a way open between parts of the feasible region (after Ray, Singh, Isaacs and Smith,
 * infeasibility-driven evolution, 2009).
 */
function chooseScouts(rest: readonly Member[], room: number): Member[] {
  const scouts: Member[] = [];
  if (room === 0) return scouts;
  const candidates = rest.filter((member) => member.tier === INFEASIBLE);
  const points = candidates.map((member) => [...member.f, member.violation]);
  for (const front of nonDominatedSort(points)) {
    if (scouts.length === room) break;
    const spread = selectSpread(
      front.map((index) => points[index]),
      room - scouts.length,
    );
    for (const n of spread) scouts.push(candidates[front[n]]);
  }
  return scouts;
}

/**
 * One against one, for a single objective: each child takes its parent's place when it is no worse, so that a good design
 * does not crowd out the others early. `parents[n]` is the parent of `children[n]`; null children are passed over.
 */
export function duel(
  population: readonly Member[],
  parents: readonly Member[],
  children: readonly (Member | null)[],
): Member[] {
  const holder = new Map<Member, Member>();
  for (const member of population) holder.set(member, member);
  children.forEach((child, n) => {
    const held = holder.get(parents[n]);
    if (child !== null && held !== undefined && !dominatesConstrained(held, child)) holder.set(parents[n], child);
  });
  return [...holder.values()];
}
