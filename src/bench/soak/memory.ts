/** How much memory this process holds, threads included, after a collection of the main thread's garbage. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

let collect: (() => void) | null = null;

export interface MemorySample {
  /** What was done so far. */
  done: number;
  /** MB of the main thread's heap in use, and of the whole process resident. */
  heap: number;
  resident: number;
}

export const megabytes = (bytes: number) => Math.round(bytes / 1e5) / 10;

export function sampleMemory(done: number): MemorySample {
  if (collect === null) {
    setFlagsFromString('--expose-gc');
    collect = runInNewContext('gc') as () => void;
  }
  collect();
  const { heapUsed, rss } = process.memoryUsage();
  return { done, heap: megabytes(heapUsed), resident: megabytes(rss) };
}

/** "after 1000: heap 40 MB, resident 200 MB; after …" */
export function memoryInWords(samples: readonly MemorySample[]): string {
  return samples
    .map(({ done, heap, resident }) => `after ${done}: heap ${heap} MB, resident ${resident} MB`)
    .join('; ');
}
