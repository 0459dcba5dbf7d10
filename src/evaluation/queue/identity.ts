/** What must be equal between a run and its workers for their answers to have the same bytes. */
import { createHash } from 'node:crypto';
import { hostname } from 'node:os';

export interface Identity {
  /** SHA-256 of the performance model, 64 hexadecimal digits. */
  modelVersion: string;
  /** Digest of this machine's elementary functions, 8 hexadecimal digits. */
  arithmetic: string;
}

const FUNCTIONS: ((x: number) => number)[] = [
  Math.exp,
  Math.expm1,
  Math.log,
  Math.log10,
  Math.log2,
  Math.sqrt,
  Math.cbrt,
  Math.sin,
  Math.cos,
  Math.tan,
  Math.atan,
  Math.sinh,
  Math.cosh,
  Math.tanh,
  (x) => x ** 0.2857,
  (x) => x ** -1.4,
  (x) => Math.hypot(x, 1.3),
  (x) => Math.atan2(x, 1.7),
];

/**
 * Elementary functions may differ in the last bit between versions of Node, and a search amplifies that. Their values at
 * fixed arguments tell whether two machines agree.
 */
export function arithmeticDigest(functions: readonly ((x: number) => number)[] = FUNCTIONS): string {
  const values = new Float64Array(functions.length * 256);
  let place = 0;
  for (const f of functions) {
    // Steps of the golden ratio, over the six decades 1e-3 to 1e3 that the model meets.
    for (let n = 0; n < 256; n++) values[place++] = f(10 ** (-3 + 6 * ((n * 0.618_033_988_75) % 1)) % 300);
  }
  return createHash('sha256').update(new Uint8Array(values.buffer)).digest('hex').slice(0, 8);
}

export function identityOf(modelVersion: string): Identity {
  return { modelVersion, arithmetic: arithmeticDigest() };
}

/** Each identity has a queue of its own, so that no question ever reaches a worker that would answer differently. */
export function queueName({ modelVersion, arithmetic }: Identity): string {
  return `${modelVersion.slice(0, 16)}-${arithmetic}`;
}

/** Why two identities do not fit, from the view of `mine`; null when they do. */
export function mismatch(mine: Identity, theirs: Identity): string | null {
  if (mine.modelVersion !== theirs.modelVersion)
    return `has performance model ${theirs.modelVersion.slice(0, 12)}, and here it is ${mine.modelVersion.slice(0, 12)}; install the same version of the tool on both`;
  if (mine.arithmetic !== theirs.arithmetic)
    return `computes elementary functions differently in the last bit (${theirs.arithmetic}, here ${mine.arithmetic}); install the same version of Node on both`;
  return null;
}

/** Name of this process for people: host and process number. */
export function ownName(): string {
  return `${hostname()}/${process.pid}`;
}
