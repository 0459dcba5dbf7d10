/** `send`: mails the report of a finished study. */
import { resolve } from 'node:path';
import type { DeliverySettings } from '../../config/study.ts';
import { deliver } from '../../delivery/deliver.ts';
import { listenForInterruption } from '../interruption.ts';
import { tell, UsageError, writeData } from '../output.ts';
import { readStoredResults } from '../stored-results.ts';

export interface SendOptions {
  to: string[];
  from?: string;
  subject?: string;
}

/** Bytes; mail servers commonly take 10 to 25 MB. Common practice, no source. */
const ATTACHMENT_LIMIT = 15_000_000;

export async function sendCommand(name: string, options: SendOptions): Promise<void> {
  const folder = resolve(name);
  const { results } = await readStoredResults(folder);
  const configured = results.study.delivery;
  const from = options.from ?? configured?.from;
  if (from === undefined) throw new UsageError('The study names no sender; give one with --from.');
  const settings: DeliverySettings = {
    to: options.to,
    from,
    subject: options.subject ?? configured?.subject ?? null,
    attachmentLimit: configured?.attachmentLimit ?? ATTACHMENT_LIMIT,
  };
  const interruption = listenForInterruption();
  try {
    const receipt = await deliver({ results, folder }, settings, process.env, {
      signal: interruption.signal,
      onNote: tell,
    });
    for (const note of receipt.notes) tell(note);
    writeData(`Mailed to ${receipt.accepted.join(', ')}.`);
  } finally {
    interruption.release();
  }
}
