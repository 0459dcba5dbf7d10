/** Cuts requests into batches. How they are cut changes only the speed: every design is evaluated by itself. */
import type { EvaluationRequest } from '../evaluation.ts';
import { type Batch, MOST_DESIGNS } from './messages.ts';

/** s of one thread that a batch should take: long against the queue's own work, short against a night. */
const WANTED_TIME = 3;
/** Full results with the x–t field are large, so few of them travel together. */
const MOST_DETAILED = 4;
/**
 * A batch takes this part of an even share of what remains, so batches shrink towards the end and all threads end together
 * (guided self-scheduling, Polychronopoulos and Kuck, IEEE Trans. Comput. C-36 (1987) 1425; from memory, medium-high).
 */
const SHARE = 0.5;

export interface BatchWishes {
  /** Threads that serve the queue. */
  threads: number;
  /** What one design took lately, s. */
  secondsEach: number;
  figuresOnly: boolean;
}

/** Designs of the next batch when so many remain. */
export function batchSize(remaining: number, { threads, secondsEach }: BatchWishes): number {
  const byTime = Math.round(WANTED_TIME / Math.max(1e-3, secondsEach));
  const byShare = Math.ceil((SHARE * remaining) / Math.max(1, threads));
  return Math.max(1, Math.min(MOST_DESIGNS, byTime, byShare));
}

/** Batches in the order of the requests; each has one brief. */
export function cutIntoBatches(
  asked: readonly { request: EvaluationRequest; key: string }[],
  wishes: BatchWishes,
): Batch[] {
  const batches: Batch[] = [];
  let size = 0;
  asked.forEach(({ request, key }, place) => {
    const last = batches.at(-1);
    const most = request.fidelity === 'detailed' ? Math.min(size, MOST_DETAILED) : size;
    if (last && last.requests.length < most && last.requests[0].brief === request.brief) {
      last.requests.push(request);
      last.keys.push(key);
    } else {
      batches.push({ requests: [request], keys: [key], figuresOnly: wishes.figuresOnly });
      size = batchSize(asked.length - place, wishes);
    }
  });
  return batches;
}
