/** Ctrl-C, SIGTERM and a closed terminal ask a run to stop; a second time ends it on the spot. */
import { EXIT } from './exit-codes.ts';
import { tell } from './output.ts';

const SIGNALS: NodeJS.Signals[] = ['SIGINT', 'SIGTERM', 'SIGHUP'];

export interface Interruption {
  signal: AbortSignal;
  /** Takes the signal handlers away again. */
  release(): void;
}

export function listenForInterruption(): Interruption {
  const controller = new AbortController();
  const onSignal = (name: NodeJS.Signals) => {
    // A closed terminal may send both SIGHUP and SIGTERM; only an impatient Ctrl-C is a second wish.
    if (controller.signal.aborted && name === 'SIGINT') process.exit(EXIT.interrupted);
    if (controller.signal.aborted) return;
    tell('\nStopping after the evaluations in hand. Press Ctrl-C again to stop at once; nothing stored is lost.');
    controller.abort();
  };
  for (const name of SIGNALS) process.on(name, onSignal);
  return {
    signal: controller.signal,
    release: () => {
      for (const name of SIGNALS) process.off(name, onSignal);
    },
  };
}
