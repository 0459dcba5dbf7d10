/**
 * The most memory that this process and those it has started hold at once.
 *
 * Of this process it is the greatest resident size; of the others, a browser's, the greatest sum over them of their proportional
 * share (Pss of Linux), in which memory that several of them share counts once. Where /proc is missing theirs is 0.
 */
import { readdirSync, readFileSync } from 'node:fs';

const SAMPLE_MILLISECONDS = 100;

/** MB. */
export interface PeakMemory {
  own: number;
  /** Of all processes that descend from this one. */
  started: number;
  together: number;
}

/** Looks every tenth of a second until it is stopped; `stop` may be called again. */
export function watchMemory(): { stop(): PeakMemory } {
  let started = 0;
  let together = 0;
  const timer = setInterval(() => {
    const now = descendants(process.pid).reduce((sum, id) => sum + share(id), 0);
    started = Math.max(started, now);
    together = Math.max(together, now + share(process.pid));
  }, SAMPLE_MILLISECONDS);
  return {
    stop: () => {
      clearInterval(timer);
      return { own: process.resourceUsage().maxRSS / 1024, started, together };
    },
  };
}

/** Processes that descend from one, without itself; empty where /proc is missing. */
function descendants(ancestor: number): number[] {
  const parents = new Map<number, number>();
  try {
    for (const name of readdirSync('/proc').filter((entry) => /^\d+$/.test(entry))) {
      const parent = /^PPid:\s+(\d+)/m.exec(quietly(`/proc/${name}/status`))?.[1];
      if (parent !== undefined) parents.set(Number(name), Number(parent));
    }
  } catch {
    return [];
  }
  const found: number[] = [];
  for (const [id] of parents)
    for (let above = parents.get(id); above !== undefined; above = parents.get(above))
      if (above === ancestor) {
        found.push(id);
        break;
      }
  return found;
}

/** A process may end between two looks. */
function quietly(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}

/** MB. */
function share(id: number): number {
  return Number(/^Pss:\s+(\d+)/m.exec(quietly(`/proc/${id}/smaps_rollup`))?.[1] ?? 0) / 1024;
}
