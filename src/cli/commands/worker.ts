/** `worker`: serves the runs of other machines until it is stopped. */
import { addressText, QueueWorker, queueAddress } from '../../evaluation/queue/index.ts';
import { defaultWorkers, WorkerPool } from '../../evaluation/worker-pool.ts';
import { EXIT } from '../exit-codes.ts';
import { listenForInterruption } from '../interruption.ts';
import { tell } from '../output.ts';
import { createProgress } from '../progress.ts';
import { modelVersion } from '../versions.ts';

export interface WorkerOptions {
  /** Absent or true: the environment's. */
  queue?: string | true;
  workers?: number;
  name?: string;
}

export async function workerCommand(options: WorkerOptions): Promise<void> {
  const address = queueAddress(options.queue ?? true, process.env);
  const threads = options.workers ?? defaultWorkers();
  const progress = createProgress(process.stderr, () => performance.now() / 1000);
  const interruption = listenForInterruption();
  const note = (sentence: string) => progress.note(sentence);
  const pool = new WorkerPool({ workers: threads, onFault: note });
  try {
    const worker = await QueueWorker.open({
      address,
      modelVersion,
      pool,
      threads,
      name: options.name,
      onNote: note,
      onBatch: (designs) => progress.answered(true, designs),
    });
    tell(
      `Worker ${worker.name} serves ${addressText(address)} with ${threads} threads, performance model ${modelVersion.slice(0, 12)}. Ctrl-C stops it after the batches in hand.`,
    );
    progress.stage('Designs evaluated', null);
    await stopped(interruption.signal);
    await worker.close();
    progress.close();
    tell('Stopped.');
  } finally {
    progress.close();
    await pool.close();
    interruption.release();
  }
  // A connection that is still trying would keep the process alive.
  process.exit(EXIT.done);
}

function stopped(signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (signal.aborted) resolve();
    signal.addEventListener('abort', () => resolve(), { once: true });
  });
}
