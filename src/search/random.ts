/**
 * Random numbers for the search: explicit generators, passed in, never global. The same seed gives the same numbers on
 * every machine. `seedrandom` turns the seed's text into bits; a small counter-based generator (sfc32, C. Doty-Humphrey's
 * PractRand library, 128 bits of state) spins them, because the search draws some millions.
 */
import seedrandom from 'seedrandom';

export interface Random {
  /** Next number, uniform in [0, 1). */
  uniform(): number;
}

/** A generator whose state can be noted and put back, so that a search goes on where it was. */
export interface Generator extends Random {
  /** Four 32-bit numbers. */
  state: number[];
}

/** A generator from the seed's text. */
export function createRandom(seed: string): Generator {
  const source = seedrandom(seed);
  let a = source.int32() | 0;
  let b = source.int32() | 0;
  let c = source.int32() | 0;
  let counter = 1;
  function uniform(): number {
    const t = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return (t >>> 0) / 4294967296;
  }
  for (let i = 0; i < 12; i++) uniform();
  return {
    uniform,
    get state() {
      return [a, b, c, counter];
    },
    set state(words) {
      [a, b, c, counter] = words;
    },
  };
}

/** An independent generator for one part of a run, named by (seed, id): parts may then run in any order. */
export function childRandom(seed: string, id: string | number): Generator {
  return createRandom(JSON.stringify([seed, id]));
}

/** Uniform integer in [0, count). */
export function integerBelow(random: Random, count: number): number {
  return Math.min(count - 1, Math.floor(random.uniform() * count));
}

/** Standard normal by the polar form's simpler cousin (Box and Muller 1958). */
export function normal(random: Random): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random.uniform()));
  return radius * Math.cos(2 * Math.PI * random.uniform());
}

/** Standard Cauchy: heavy-tailed, for step factors. */
export function cauchy(random: Random): number {
  return Math.tan(Math.PI * (random.uniform() - 0.5));
}

/** Fisher–Yates shuffle, in place. */
export function shuffle<T>(random: Random, items: T[] | Int32Array): void {
  const array = items as T[];
  for (let i = array.length - 1; i > 0; i--) {
    const j = integerBelow(random, i + 1);
    const held = array[i];
    array[i] = array[j];
    array[j] = held;
  }
}
