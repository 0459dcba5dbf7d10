import { expect, it } from 'vitest';
import { asLong } from '../../src/ranking/phrases.ts';

it.each([
  [321, 1, '320 times as long'],
  [2.13, 1, '2.1 times as long'],
  [10, 40, '0.25 times as long'],
  [1, 421, '1/420 as long'],
  [1, 6234, '1/6200 as long'],
  [1.04, 1, 'as long'],
])('a life of %d beside %d lasts %s', (own, other, words) => {
  expect(asLong(own, other)).toBe(words);
});
