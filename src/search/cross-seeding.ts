/**
 * Designs carried between kin: architectures that share most of their variables. What proved good in one is tried in the
 * other: its shared variables are taken over by name, the rest comes from one of the receiver's own better designs.
 */
import { dominates } from './domination.ts';
import type { Evolution } from './evolution.ts';
import { INFEASIBLE, type Member, type SearchProblem } from './outcome.ts';
import { integerBelow, type Random } from './random.ts';

/** Least share of the receiver's variables that kin can fill. */
const KIN = 0.5;

/** For each variable of `to` its place in `from`, −1 where `from` has none of that name, kind and options; null when they are no kin. */
export function kinship(from: SearchProblem, to: SearchProblem): number[] | null {
  const places = to.variables.map((variable) =>
    from.variables.findIndex(
      (other) =>
        other.name === variable.name &&
        other.kind === variable.kind &&
        (variable.kind !== 'choice' || (other.kind === 'choice' && String(other.options) === String(variable.options))),
    ),
  );
  return places.filter((place) => place >= 0).length >= KIN * places.length ? places : null;
}

/** The receiver's own design with the donor's values wherever these exist and lie within the receiver's bounds. */
export function graft(
  { low, high }: Evolution['domain'],
  own: readonly number[],
  donor: readonly number[],
  places: readonly number[],
): number[] {
  return own.map((value, i) => {
    const given = donor[places[i]];
    return given >= low[i] && given <= high[i] ? given : value;
  });
}

/** Kin of one architecture and where their variables lie. */
export type Kin = readonly { evolution: Evolution; places: readonly number[] }[];

/** A design for `receiver` from its kin; null when none has anything to offer. */
export function guest(receiver: Evolution, kin: Kin, random: Random): number[] | null {
  const { population } = receiver;
  const inNeed = receiver.archive.members.length === 0;
  const offers = kin
    .map(({ evolution, places }) => ({ places, members: offered(evolution, inNeed) }))
    .filter(({ members }) => members.length > 0);
  if (population.length === 0 || offers.length === 0) return null;
  const draw = () => {
    const { places, members } = offers[integerBelow(random, offers.length)];
    return { places, member: members[integerBelow(random, members.length)] };
  };
  const [first, second] = [draw(), draw()];
  const chosen = dominates(second.member.f, first.member.f) ? second : first;
  const place = Math.min(integerBelow(random, population.length), integerBelow(random, population.length));
  return graft(receiver.domain, population[place].x, chosen.member.x, chosen.places);
}

/** Feasible designs; where there are none, those that at least run, to kin that has nothing feasible either. */
function offered({ archive, population }: Evolution, inNeed: boolean): readonly Member[] {
  if (archive.members.length > 0 || !inNeed) return archive.members;
  return population.filter(({ tier }) => tier === INFEASIBLE);
}
