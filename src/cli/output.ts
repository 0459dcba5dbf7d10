/** Where words go: data to standard output, everything else to standard error. A reader that went away ends nothing. */
import type { ExitCode } from './exit-codes.ts';
import { EXIT } from './exit-codes.ts';

/** A pipe that was closed early (`| head`) or a terminal that is gone is no fault of the run. */
export function forgiveClosedStreams(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE' && error.code !== 'EIO' && error.code !== 'ERR_STREAM_DESTROYED') throw error;
    });
  }
}

export function writeData(text: string): void {
  process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
}

/** Foreign text in messages cannot steer the terminal. */
export function printable(text: string): string {
  return text.replace(/[^\P{C}\n\t]/gu, '?');
}

export function tell(text: string): void {
  process.stderr.write(`${printable(text)}\n`);
}

/** An end that has been told to the user already. */
export class Ended extends Error {
  readonly code: ExitCode;

  constructor(code: ExitCode) {
    super(`ended with code ${code}`);
    this.code = code;
  }
}

/** Wrong use of the command. */
export class UsageError extends Error {
  readonly code = EXIT.badConfiguration;
}
