import { describe, expect, it } from 'vitest';
import { wishContradictions } from '../../shared/checks/wish-contradictions.ts';
import type { Brief } from '../../shared/engine/brief.ts';
import { briefOf } from './fixtures.ts';

const site = { pressure: 101325, temperature: 288.15 };
const said = (change: (brief: Brief) => void) => {
  const brief = briefOf();
  change(brief);
  return wishContradictions(brief, site);
};

describe('wishes that contradict physics', () => {
  it('nothing is said of a sane brief', () => {
    expect(said(() => {})).toEqual([]);
  });
  it('nothing is said of wishes that published engines met: 454 N of a 9 in drone engine, 20 N of a 62 mm one', () => {
    const wish = (thrust: number, maxDiameter: number) =>
      said((b) => {
        b.wanted.thrust = thrust;
        b.wanted.maxDiameter = maxDiameter;
      });
    expect(wish(454, 0.2286)).toEqual([]);
    expect(wish(20, 0.062)).toEqual([]);
  });
  it.each([
    [
      'thrust from a circle',
      /does not come out of/,
      (b: Brief) => void Object.assign(b.wanted, { thrust: 5000, maxDiameter: 0.1 }),
    ],
    ['endurance', /longer than any strip/, (b: Brief) => void Object.assign(b.wanted, { endurance: 1e9 })],
    ['regulator', /stands at/, (b: Brief) => void Object.assign(b.supply!, { regulatorPressure: 9e5 })],
    ['vapour', /boil off/, (b: Brief) => void Object.assign(b.supply!, { kind: 'cylinder-vapour', capacity: 1 })],
    [
      'air',
      /takes at least .* of air/,
      (b: Brief) => {
        b.supply = { kind: 'carburettor', fuel: 'petrol', ratedFlow: 0.001, ratingDepression: 10159, capacity: 5 };
      },
    ],
  ])('%s is said in one sentence with numbers', (_, words, change) => {
    const sentences = said(change);
    expect(sentences).toHaveLength(1);
    expect(sentences[0]).toMatch(words);
    expect(sentences[0]).not.toMatch(/NaN|undefined|unknown/);
  });
});
