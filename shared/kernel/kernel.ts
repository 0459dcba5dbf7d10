/**
 * The compiled hot loops and the memory they work on.
 *
 * Each flow has a memory of its own with an instance of the kernel on it, taken from a small pool: `takeKernel` and
 * `giveBack`. A flow that is never given back keeps its memory until the collector takes both. The compiled module is made
 * once a thread. Where WebAssembly or its vectors are missing, `takeKernel` gives null and the TypeScript loops run instead,
 * to the same last bit.
 */
import { KERNEL_BINARY } from './kernel-binary.ts';
import { MAX_CELLS, MAX_INTERVALS, MEMORY_BYTES } from './layout.ts';

/** What the kernel exports; n is the number of cells. */
export interface KernelFunctions {
  /** After the grid has been put in place. */
  prepare(n: number): void;
  /** After the constants of the sources have been put in place. */
  prepareSources(n: number): void;
  recoverPrimitives(n: number): void;
  predictHalfStep(n: number): void;
  innerFluxes(n: number): void;
  applyFluxes(n: number): void;
  applyCellSources(n: number, chamberStart: number, chamberEnd: number, sparkEnd: number): void;
}

export interface Kernel {
  run: KernelFunctions;
  memory: KernelMemory;
  /** Scalars at the head of the memory; an offset of layout.ts divided by 8 is the index. */
  head: Float64Array;
  /** The sources whose arrays lie in this memory. */
  sources: object | null;
}

/** The parts of WebAssembly that the kernel needs; the language's own library describes it for browsers only. */
interface KernelMemory {
  readonly buffer: ArrayBuffer;
  grow(pages: number): number;
}
interface WebAssemblyApi {
  Module: new (bytes: Uint8Array) => object;
  Memory: new (size: { initial: number }) => KernelMemory;
  Instance: new (module: object, imports: object) => { exports: unknown };
}

const PAGE = 65536;
const PAGES = Math.ceil(MEMORY_BYTES / PAGE);
/** Memories kept for reuse: an engine tries three starts, and two are compared now and then. */
const POOL = 6;

/** undefined: not yet tried; null: this host cannot. */
let compiled: object | null | undefined;
let allowed = true;
const pool: { memory: KernelMemory; run: KernelFunctions }[] = [];

/** Forbids or allows the kernel in flows made from now on in this thread. For tests and measurements: results are the same. */
export function allowKernel(yes: boolean): void {
  allowed = yes;
}

function api(): WebAssemblyApi | undefined {
  return (globalThis as { WebAssembly?: WebAssemblyApi }).WebAssembly;
}

function compiledModule(): object | null {
  if (compiled !== undefined) return compiled;
  compiled = null;
  const wasm = api();
  if (!wasm) return null;
  const text = atob(KERNEL_BINARY);
  const bytes = Uint8Array.from(text, (c) => c.charCodeAt(0));
  try {
    compiled = new wasm.Module(bytes);
  } catch {
    // A processor or host without WebAssembly's vectors: the TypeScript loops do the same.
  }
  return compiled;
}

/** A kernel on memory full of zeros, or null when the flow must take the TypeScript path. */
export function takeKernel(cells: number, intervals: number): Kernel | null {
  if (!allowed || cells < 3 || cells > MAX_CELLS || intervals > MAX_INTERVALS) return null;
  const module = compiledModule();
  if (!module) return null;
  const slot = pool.pop() ?? makeSlot(module);
  const head = new Float64Array(slot.memory.buffer, 0, 32);
  return { run: slot.run, memory: slot.memory, head, sources: null };
}

function makeSlot(module: object): { memory: KernelMemory; run: KernelFunctions } {
  const wasm = api() as WebAssemblyApi;
  const memory = new wasm.Memory({ initial: PAGES });
  const instance = new wasm.Instance(module, { env: { memory }, host: { exp: Math.exp } });
  return { memory, run: instance.exports as KernelFunctions };
}

/** Returns a kernel's memory to the pool. Every array that lay in it becomes empty, so that late use shows at once. */
export function giveBack(kernel: Kernel): void {
  if (pool.length >= POOL) return;
  kernel.memory.grow(0);
  new Uint8Array(kernel.memory.buffer).fill(0);
  pool.push({ memory: kernel.memory, run: kernel.run });
}
