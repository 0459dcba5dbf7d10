/**
 * Where each record of a log lies, by key, in typed arrays: 24 bytes a slot, so a million records take 50 MB and nothing
 * that the garbage collector must walk.
 *
 * Open addressing with linear probing. Of a key's 256 bits the first 128 are kept: two of a million digests agree in these
 * with a chance of 1.5e-27, and whoever reads a record compares the whole key.
 */

/** Hexadecimal digits of a key that are kept. */
const DIGITS = 32;
const WORDS = DIGITS / 8;
/** Slots in use, at most, before the table is doubled. */
const LOAD = 0.6;

const NIBBLES = Uint8Array.from({ length: 256 }, (_, code) => {
  const digit = '0123456789abcdef'.indexOf(String.fromCharCode(code));
  return digit < 0 ? 255 : digit;
});

/** The number that 8 hexadecimal digits say, 0 to 2³²−1; −1 when they are none. */
export function hexWord(bytes: Uint8Array, at: number): number {
  let value = 0;
  let odd = 0;
  for (let i = 0; i < 8; i++) {
    const nibble = NIBBLES[bytes[at + i]];
    odd |= nibble;
    value = (value << 4) | (nibble & 15);
  }
  return odd > 15 ? -1 : value >>> 0;
}

export class KeyIndex {
  size = 0;
  #capacity = 1 << 10;
  #words = new Uint32Array(WORDS * this.#capacity);
  /** Position + 1; 0 is an empty slot. */
  #places = new Float64Array(this.#capacity);
  readonly #wanted = new Uint32Array(WORDS);
  readonly #text = new Uint8Array(DIGITS);

  /** Position of a key (64 hexadecimal digits); undefined when it is not there. */
  get(key: string): number | undefined {
    for (let i = 0; i < DIGITS; i++) this.#text[i] = key.charCodeAt(i);
    this.#want(this.#text, 0);
    const place = this.#places[this.#find()];
    return place === 0 ? undefined : place - 1;
  }

  set(key: string, position: number): void {
    for (let i = 0; i < DIGITS; i++) this.#text[i] = key.charCodeAt(i);
    this.setFrom(this.#text, 0, position);
  }

  /** As `set`, with the key's digits taken from bytes. A key that is there gets the new position. */
  setFrom(bytes: Uint8Array, at: number, position: number): void {
    this.#want(bytes, at);
    const slot = this.#find();
    if (this.#places[slot] === 0) {
      for (let w = 0; w < WORDS; w++) this.#words[WORDS * slot + w] = this.#wanted[w];
      this.size++;
    }
    this.#places[slot] = position + 1;
    if (this.size > LOAD * this.#capacity) this.#grow();
  }

  /** All positions, rising. */
  positions(): Float64Array {
    return this.#places
      .filter((place) => place > 0)
      .map((place) => place - 1)
      .sort();
  }

  #want(bytes: Uint8Array, at: number): void {
    for (let w = 0; w < WORDS; w++) this.#wanted[w] = hexWord(bytes, at + 8 * w);
  }

  /** Slot of the wanted key, or the empty one where it belongs. */
  #find(): number {
    const words = this.#words;
    const places = this.#places;
    const wanted = this.#wanted;
    const mask = places.length - 1;
    const a = wanted[0];
    let slot = a & mask;
    while (places[slot] !== 0) {
      const at = WORDS * slot;
      if (words[at] === a && words[at + 1] === wanted[1] && words[at + 2] === wanted[2] && words[at + 3] === wanted[3])
        break;
      slot = (slot + 1) & mask;
    }
    return slot;
  }

  #grow(): void {
    const [words, places] = [this.#words, this.#places];
    this.#capacity *= 2;
    this.#words = new Uint32Array(WORDS * this.#capacity);
    this.#places = new Float64Array(this.#capacity);
    for (let old = 0; old < places.length; old++) {
      if (places[old] === 0) continue;
      for (let w = 0; w < WORDS; w++) this.#wanted[w] = words[WORDS * old + w];
      const slot = this.#find();
      for (let w = 0; w < WORDS; w++) this.#words[WORDS * slot + w] = this.#wanted[w];
      this.#places[slot] = places[old];
    }
  }
}
