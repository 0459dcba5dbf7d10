/** Turns whatever went wrong into words for a person and an exit code. No stack trace, unless PULSEJET_DEBUG asks. */
import { CommanderError } from 'commander';
import { Interrupted } from '../evaluation/evaluation.ts';
import { StoreError, writeFailure } from '../store/store-error.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { Ended, tell, UsageError } from './output.ts';

/** Says what happened and returns the code to end with. */
export function tellFailure(error: unknown): ExitCode {
  if (error instanceof Ended) return error.code;
  // Commander has printed its own message, or help.
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.done : EXIT.badConfiguration;
  if (error instanceof Interrupted) return EXIT.interrupted;
  if (error instanceof UsageError) return told(error.message, error.code);
  if (error instanceof StoreError) {
    return told(error.message, error.fault === 'different study' ? EXIT.badConfiguration : EXIT.cannotWrite);
  }
  if (error instanceof Error && error.name === 'NoBrowserError') return told(error.message, EXIT.noBrowser);
  if (error instanceof Error && error.name === 'PrintError') return told(notPrinted(error), EXIT.noBrowser);
  if (error instanceof Error && error.name === 'QueueError') return told(error.message, EXIT.badConfiguration);
  if (error instanceof Error && error.name === 'MailError') return told(error.message, EXIT.mailFailed);
  const system = systemError(error);
  if (system) return told(writeFailure(system.path ?? 'the study folder', system).message, EXIT.cannotWrite);
  const message = error instanceof Error ? error.message : String(error);
  tell(`pulsejet-study met a fault of its own: ${message}`);
  if (process.env.PULSEJET_DEBUG && error instanceof Error) tell(error.stack ?? '');
  else tell('Set PULSEJET_DEBUG=1 to see where. What a study stored so far is kept.');
  return EXIT.fault;
}

/** What the disk refused, met outside the store. */
function systemError(error: unknown): NodeJS.ErrnoException | null {
  const { code, syscall } = (error ?? {}) as NodeJS.ErrnoException;
  return error instanceof Error &&
    code &&
    /^(open|write|rename|f(data)?sync|mkdir|unlink|ftruncate)$/.test(syscall ?? '')
    ? (error as NodeJS.ErrnoException)
    : null;
}

/** A browser was found, but the PDF did not come out of it. */
export function notPrinted(error: Error): string {
  return `The PDF is missing: ${error.message}. The HTML is complete; "pulsejet-study report <study folder>" tries the PDF again.`;
}

function told(message: string, code: ExitCode): ExitCode {
  tell(message);
  return code;
}
