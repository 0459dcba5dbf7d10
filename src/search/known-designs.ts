/** A set of 32-bit fingerprints in a typed array (open addressing): 7 to 14 bytes each, however many a night brings. */

/** Slots in use, at most, before the table is doubled. */
const LOAD = 0.6;

export class KnownDesigns {
  #slots = new Uint32Array(1 << 10);
  /** 0 marks an empty slot, so that fingerprint is held apart. */
  #zero = false;
  #size = 0;

  get size(): number {
    return this.#size + (this.#zero ? 1 : 0);
  }

  has(mark: number): boolean {
    return mark === 0 ? this.#zero : this.#slots[this.#find(mark)] === mark;
  }

  add(mark: number): void {
    if (mark === 0) {
      this.#zero = true;
      return;
    }
    const slot = this.#find(mark);
    if (this.#slots[slot] === mark) return;
    this.#slots[slot] = mark;
    if (++this.#size > LOAD * this.#slots.length) this.#grow();
  }

  /** All of them, in any order. */
  get marks(): Uint32Array {
    const used = this.#slots.filter((mark) => mark !== 0);
    if (!this.#zero) return used;
    const all = new Uint32Array(used.length + 1);
    all.set(used, 1);
    return all;
  }

  set marks(marks: Uint32Array) {
    let length = 1 << 10;
    while (marks.length > LOAD * length) length *= 2;
    this.#slots = new Uint32Array(length);
    this.#size = 0;
    this.#zero = false;
    for (const mark of marks) this.add(mark);
  }

  /** Slot of the fingerprint, or the empty one where it belongs. Fingerprints are hashes already; the factor spreads their low bits. */
  #find(mark: number): number {
    const slots = this.#slots;
    const mask = slots.length - 1;
    let slot = (Math.imul(mark, 0x9e3779b1) >>> 7) & mask;
    while (slots[slot] !== 0 && slots[slot] !== mark) slot = (slot + 1) & mask;
    return slot;
  }

  #grow(): void {
    const old = this.#slots;
    this.#slots = new Uint32Array(2 * old.length);
    for (const mark of old) if (mark !== 0) this.#slots[this.#find(mark)] = mark;
  }
}
