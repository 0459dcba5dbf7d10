/** Wishes that contradict physics, or each other, in words. First thing on page one. */
import { duration, figure, kilograms, newtons, tsfc } from '../../shared/checks/say.ts';
import { wishContradictions } from '../../shared/checks/wish-contradictions.ts';
import type { FuelSupply } from '../../shared/engine/brief.ts';
import { FUELS } from '../../shared/gas/fuels.ts';
import type { Study } from '../config/study.ts';
import type { StudyEvidence } from './evidence.ts';
import type { TradePoint } from './results.ts';

/** What an engine that ran did. */
type Ran = Pick<TradePoint, 'tsfc' | 'valveLife' | 'thrust'>;

/** Equivalence ratios at which propane and petrol vapour burn in still air at all: 2.1 to 9.5 and 1.4 to 7.6 % by volume (US Bureau of Mines Bulletin 627). */
const FLAMMABLE = { propane: { lean: 0.51, rich: 2.5 }, petrol: { lean: 0.7, rich: 4 } } as const;

/** Sentences; empty when the wishes and physics agree. */
export function contradictionsOf({ study, finalists, tradePoints, architectures }: StudyEvidence): string[] {
  const ran: Ran[] = [...tradePoints];
  for (const { summary } of finalists) {
    const { tsfc, valveLife, thrust } = summary;
    if (tsfc !== null && valveLife !== null && thrust !== null) ran.push({ tsfc, valveLife, thrust });
  }
  const count = architectures.reduce((sum, { running }) => sum + running, 0);
  const feasible = architectures.some((architecture) => architecture.feasible > 0);
  return [
    ...wishContradictions(study.brief, study.site),
    ...mixtureContradictions(study),
    ...singleWishes(study, ran, count),
    ...fuelOnBoard(study, ran),
    ...(feasible ? [] : jointWishes(study, ran, count)),
  ];
}

function mixtureContradictions({ space }: Study): string[] {
  const sentences: string[] = [];
  for (const fuel of new Set(space.feeds.map((feed) => feed.fuel))) {
    const { lean, rich } = FLAMMABLE[fuel];
    const { low, high } = space.equivalenceRatio;
    if (high < lean) {
      sentences.push(
        `At an equivalence ratio of at most ${figure(high)} ${fuel} does not burn: its lean limit in still air is about ${lean}.`,
      );
    } else if (low > rich) {
      sentences.push(
        `At an equivalence ratio of at least ${figure(low)} ${fuel} does not burn: its rich limit in still air is about ${rich}.`,
      );
    } else if (low > 1) {
      const spare = (1 - 1 / low) * 100;
      const air = FUELS[fuel].stoichiometricAirFuelRatio;
      sentences.push(
        `The equivalence ratio is held at ${figure(low)} or above: each kilogram of ${fuel} needs ${figure(air)} kg of air and gets ${figure(air / low)} kg at most, so ${figure(spare, 2)} % of the fuel at least leaves unburnt.`,
      );
    }
  }
  return sentences;
}

function extreme(
  ran: readonly Ran[],
  figureOf: (engine: Ran) => number,
  pick: (a: number, b: number) => number,
): number | null {
  let found: number | null = null;
  for (const engine of ran) found = found === null ? figureOf(engine) : pick(found, figureOf(engine));
  return found;
}

function singleWishes({ brief }: Study, ran: readonly Ran[], count: number): string[] {
  const { thrust, endurance, maxTsfc } = brief.wanted;
  const sentences: string[] = [];
  const mostThrust = extreme(ran, (engine) => engine.thrust, Math.max);
  if (thrust !== null && mostThrust !== null && mostThrust < thrust) {
    sentences.push(
      `You ask for ${newtons(thrust)}. The strongest of ${count} engines that ran in these ranges gives ${newtons(mostThrust)}; allow a wider chamber.`,
    );
  }
  const longestLife = extreme(ran, (engine) => engine.valveLife, Math.max);
  if (endurance !== null && longestLife !== null && longestLife < endurance) {
    sentences.push(
      `You ask for ${duration(endurance)} of running. The longest life among ${count} engines that ran is ${duration(longestLife)} in the middle of its band; plan to change valves, or allow other strip or a valveless intake.`,
    );
  }
  const leastFuel = extreme(ran, (engine) => engine.tsfc, Math.min);
  if (maxTsfc !== null && leastFuel !== null && leastFuel > maxTsfc) {
    sentences.push(`You allow ${tsfc(maxTsfc)}. The thriftiest of ${count} engines that ran uses ${tsfc(leastFuel)}.`);
  }
  return sentences;
}

/** Fuel that is there at the start, kg. */
function fuelHeld(supply: FuelSupply): number {
  return 'fill' in supply ? supply.capacity * supply.fill * supply.cylinders : supply.capacity;
}

function fuelOnBoard({ brief }: Study, ran: readonly Ran[]): string[] {
  const { supply, wanted } = brief;
  const leastFuel = extreme(ran, (engine) => engine.tsfc, Math.min);
  if (supply === null || wanted.thrust === null || wanted.endurance === null || leastFuel === null) return [];
  const needed = leastFuel * wanted.thrust * wanted.endurance;
  const held = fuelHeld(supply);
  if (needed <= held) return [];
  return [
    `${newtons(wanted.thrust)} for ${duration(wanted.endurance)} takes at least ${kilograms(needed)} of ${supply.fuel} by the thriftiest engine that ran, and the supply holds ${kilograms(held)}.`,
  ];
}

/** Wishes that can each be met, but by no engine together. */
function jointWishes({ brief }: Study, ran: readonly Ran[], count: number): string[] {
  const { thrust, endurance, maxTsfc } = brief.wanted;
  const wishes: { words: string; met(engine: Ran): boolean }[] = [];
  if (thrust !== null) wishes.push({ words: `${newtons(thrust)} of thrust`, met: (engine) => engine.thrust >= thrust });
  if (endurance !== null) {
    wishes.push({ words: `${duration(endurance)} of life`, met: (engine) => engine.valveLife >= endurance });
  }
  if (maxTsfc !== null)
    wishes.push({ words: `a TSFC below ${tsfc(maxTsfc)}`, met: (engine) => engine.tsfc <= maxTsfc });
  const sentences: string[] = [];
  wishes.forEach((a, i) => {
    for (const b of wishes.slice(i + 1)) {
      const alone = [a, b].every((wish) => ran.some((engine) => wish.met(engine)));
      if (alone && !ran.some((engine) => a.met(engine) && b.met(engine))) {
        sentences.push(`Some engines give ${a.words} and some ${b.words}, but none of ${count} that ran gives both.`);
      }
    }
  });
  return sentences;
}
