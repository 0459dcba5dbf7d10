/** The box that a search moves in: variables of mixed kinds, made ready for the inner loops. */
import type { Variable } from '../space/architecture.ts';

export const REAL = 0;
export const INTEGER = 1;
export const CHOICE = 2;

export interface Domain {
  size: number;
  /** REAL, INTEGER or CHOICE for each coordinate. */
  kind: Uint8Array;
  /** Bounds, both included; a choice runs from 0 to options − 1. */
  low: Float64Array;
  high: Float64Array;
}

/** Throws RangeError when a variable has no value to take, e.g. low above high. */
export function createDomain(variables: readonly Variable[]): Domain {
  const size = variables.length;
  const domain: Domain = {
    size,
    kind: new Uint8Array(size),
    low: new Float64Array(size),
    high: new Float64Array(size),
  };
  variables.forEach((variable, i) => {
    const low = variable.kind === 'choice' ? 0 : variable.low;
    const high = variable.kind === 'choice' ? variable.options.length - 1 : variable.high;
    if (!Number.isFinite(low) || !Number.isFinite(high) || low > high) {
      throw new RangeError(`Variable "${variable.name}": its range ${low} to ${high} holds no value.`);
    }
    domain.low[i] = variable.kind === 'integer' ? Math.ceil(low) : low;
    domain.high[i] = variable.kind === 'integer' ? Math.floor(high) : high;
    if (domain.low[i] > domain.high[i]) {
      throw new RangeError(`Variable "${variable.name}": no whole number lies between ${low} and ${high}.`);
    }
    domain.kind[i] = variable.kind === 'real' ? REAL : variable.kind === 'integer' ? INTEGER : CHOICE;
  });
  return domain;
}

/** Brings every coordinate into its bounds and whole coordinates to the nearest whole number, in place. Not-a-number becomes the lower bound. */
export function repair(domain: Domain, x: number[]): number[] {
  for (let i = 0; i < domain.size; i++) {
    let value = x[i];
    if (domain.kind[i] !== REAL) value = Math.round(value);
    if (!(value >= domain.low[i])) value = domain.low[i];
    else if (value > domain.high[i]) value = domain.high[i];
    // Adding zero turns −0 into 0, so that equal designs have equal text.
    x[i] = value + 0;
  }
  return x;
}

/** True when every coordinate lies in its bounds and whole ones are whole. */
export function inside(domain: Domain, x: readonly number[]): boolean {
  if (x.length !== domain.size) return false;
  for (let i = 0; i < domain.size; i++) {
    if (!(x[i] >= domain.low[i] && x[i] <= domain.high[i])) return false;
    if (domain.kind[i] !== REAL && !Number.isInteger(x[i])) return false;
  }
  return true;
}

/** Maps u in [0, 1) to a value of coordinate i; whole coordinates take each value with equal chance. */
export function fromUnit(domain: Domain, i: number, u: number): number {
  const low = domain.low[i];
  const high = domain.high[i];
  if (domain.kind[i] === REAL) return low + u * (high - low);
  return Math.min(high, low + Math.floor(u * (high - low + 1)));
}

/** A 32-bit fingerprint of a design, to find repeats without text. */
export function fingerprint(x: readonly number[]): number {
  scratch.set(x.length <= 256 ? x : x.slice(0, 256));
  let hash = 0x811c9dc5;
  for (let i = 0; i < 2 * Math.min(256, x.length); i++) {
    hash = Math.imul(hash ^ scratchBits[i], 0x01000193);
    hash ^= hash >>> 15;
  }
  return hash >>> 0;
}

const scratch = new Float64Array(256);
const scratchBits = new Int32Array(scratch.buffer);

export function sameDesign(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return a.length === b.length;
}
