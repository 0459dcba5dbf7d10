/** A set of 32-bit fingerprints in typed arrays (open addressing): 11 to 22 bytes each, however many a night brings. */

/** Slots in use, at most, before the table is doubled. */
const LOAD = 0.6;

export class KnownDesigns {
  #slots = new Uint32Array(1 << 10);
  /** 0 marks an empty slot, so that fingerprint is held apart. */
  #zero = false;
  /** In the order of adding, so that what is new since a moment can be told. */
  #order = new Uint32Array(1 << 10);
  #size = 0;

  get size(): number {
    return this.#size;
  }

  has(mark: number): boolean {
    return mark === 0 ? this.#zero : this.#slots[this.#find(mark)] === mark;
  }

  add(mark: number): void {
    if (this.has(mark)) return;
    if (mark === 0) this.#zero = true;
    else this.#slots[this.#find(mark)] = mark;
    if (this.#size === this.#order.length) {
      const longer = new Uint32Array(2 * this.#size);
      longer.set(this.#order);
      this.#order = longer;
    }
    this.#order[this.#size++] = mark;
    if (this.#size > LOAD * this.#slots.length) this.#grow();
  }

  /** All of them in the order of adding; not a copy. */
  get marks(): Uint32Array {
    return this.#order.subarray(0, this.#size);
  }

  set marks(marks: Uint32Array) {
    let length = 1 << 10;
    while (marks.length > LOAD * length) length *= 2;
    this.#slots = new Uint32Array(length);
    this.#order = new Uint32Array(length);
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
