/** Opens the queue's library and proves the connection before any work begins. */
import type { IRedisClient } from 'bullmq';
import { addressText, type QueueAddress } from './address.ts';
import { QueueError } from './queue-error.ts';

/** Every key of ours begins with this, so that a user of the service can be confined to `~pulsejet:*`. */
export const PREFIX = 'pulsejet';
/** ms until a service that does not answer counts as absent. */
const PATIENCE = 5000;
/** ms between attempts to reach a service that went away: from, to. */
const RETRY = [500, 10_000] as const;

export type QueueLibrary = typeof import('bullmq');

/** @throws {QueueError} when the optional package is not installed */
export async function loadQueueLibrary(): Promise<QueueLibrary> {
  try {
    return await import('bullmq');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ERR_MODULE_NOT_FOUND') throw error;
    throw new QueueError(
      'A queue needs the optional package "bullmq", which is not installed here; run "npm ci" without --omit=optional. A study without --queue needs no package and no service.',
    );
  }
}

/** Options of a connection that waits for a service that went away, however long. */
export function lastingConnection(address: QueueAddress) {
  return {
    ...address,
    connectTimeout: PATIENCE,
    maxRetriesPerRequest: null,
    retryStrategy: (times: number) => Math.min(RETRY[1], RETRY[0] * times),
  };
}

/**
 * Connects once, without patience, so that a wrong address or password is told at once and not waited for.
 * @throws {QueueError} saying what is wrong
 */
export async function proveConnection(library: QueueLibrary, address: QueueAddress): Promise<void> {
  const queue = new library.Queue('proof', {
    prefix: PREFIX,
    skipMetasUpdate: true,
    connection: {
      ...address,
      connectTimeout: PATIENCE,
      maxRetriesPerRequest: 0,
      disconnectTimeout: 100,
      retryStrategy: () => null,
    },
  });
  queue.on('error', () => {});
  const late = new Promise<never>((_, reject) => {
    setTimeout(() => reject(new Error('it does not answer')), 2 * PATIENCE).unref();
  });
  try {
    await Promise.race([queue.waitUntilReady(), late]);
  } catch (error) {
    throw new QueueError(explained(error as NodeJS.ErrnoException, address));
  } finally {
    await closeCalmly(queue);
  }
}

/** A refusal by the service as a sentence; never shows the password. */
function explained({ code, message }: NodeJS.ErrnoException, address: QueueAddress): string {
  const place = addressText(address);
  if (message.startsWith('WRONGPASS'))
    return `The queue at ${place} refuses the user or password; check them in the URL or in PULSEJET_QUEUE_USER and PULSEJET_QUEUE_PASSWORD.`;
  if (message.startsWith('NOAUTH'))
    return `The queue at ${place} asks for a password; give it in the URL (redis://:password@host:port) or in PULSEJET_QUEUE_PASSWORD.`;
  if (message.startsWith('NOPERM'))
    return `The queue's user may not do what is needed at ${place} (${message}); it needs all commands on keys "${PREFIX}:*", and INFO, TIME and CLIENT.`;
  if (/CERT|ALTNAME|SIGNATURE/.test(code ?? ''))
    return `The certificate of the queue at ${place} is not accepted: ${message}. If the authority is your own, name its certificate in NODE_EXTRA_CA_CERTS; the host must be written as in the certificate.`;
  const why =
    {
      ECONNREFUSED: 'nothing listens there',
      ENOTFOUND: 'there is no such host',
      ETIMEDOUT: address.tls ? 'it does not answer in time; does it speak TLS?' : 'it does not answer in time',
      ECONNRESET: 'it broke the connection off; is it encrypted (then write rediss://)?',
    }[code ?? ''] ?? message;
  return `The queue at ${place} cannot be reached: ${why}. It must be a Redis 7 service; a study without --queue needs none.`;
}

/** Closes; a service that is gone is not waited for. */
export async function closeCalmly(resource: { close(): Promise<void>; disconnect(): Promise<void> }): Promise<void> {
  const closed = resource.close().then(
    () => true,
    () => false,
  );
  const late = new Promise<boolean>((resolve) => void setTimeout(() => resolve(false), 2000).unref());
  if (!(await Promise.race([closed, late]))) void resource.disconnect().catch(() => {});
}

/** Tells once that the service went away, and once that it is back. */
export class OutageTeller {
  readonly #place: string;
  readonly #tell: (sentence: string) => void;
  #gone = false;

  constructor(address: QueueAddress, tell: (sentence: string) => void) {
    this.#place = addressText(address);
    this.#tell = tell;
  }

  lost(error: Error): void {
    if (this.#gone) return;
    this.#gone = true;
    this.#tell(`The queue at ${this.#place} does not answer (${error.message || error.name}); waiting for it.`);
  }

  answered(): void {
    if (this.#gone) this.#tell(`The queue at ${this.#place} is back.`);
    this.#gone = false;
  }
}

/** Runs a script at the service, named once for each connection. */
export async function runScript(
  client: IRedisClient,
  script: { name: string; keys: number; lua: string },
  args: (string | number)[],
): Promise<unknown> {
  client.defineCommand(script.name, { numberOfKeys: script.keys, lua: script.lua });
  return client.runCommand(script.name, args);
}
