/** Where the queue is and how to enter: from the command line and the environment. */
import { isIP } from 'node:net';
import { QueueError } from './queue-error.ts';

export interface QueueAddress {
  host: string;
  port: number;
  db: number;
  username?: string;
  password?: string;
  /** Present: encrypted, with the certificate checked against the authorities that Node trusts. */
  tls?: { servername?: string };
}

/** Host and port for messages; never the password. */
export function addressText({ host, port, tls }: QueueAddress): string {
  return `${tls ? 'rediss' : 'redis'}://${host.includes(':') ? `[${host}]` : host}:${port}`;
}

const EXPECTED = 'an address such as redis://192.168.1.10:6379, or rediss:// with encryption, is expected';

/**
 * The address from `--queue URL`, or from PULSEJET_QUEUE_URL when the option has no value. User and password may stand in
 * the URL or in PULSEJET_QUEUE_USER and PULSEJET_QUEUE_PASSWORD, where other users of the machine do not see them.
 * @throws {QueueError} when there is no address or it cannot be read
 */
export function queueAddress(option: string | true, environment: NodeJS.ProcessEnv): QueueAddress {
  const text = option === true ? environment.PULSEJET_QUEUE_URL : option;
  if (!text) throw new QueueError(`No queue is named: give --queue a value or set PULSEJET_QUEUE_URL; ${EXPECTED}.`);
  const where = option === true ? 'PULSEJET_QUEUE_URL' : '--queue';
  let url: URL;
  try {
    url = new URL(text);
  } catch {
    // The text may hold a password, or be a study file that --queue swallowed.
    const shown = text.includes('@') ? '' : `, not "${text.slice(0, 80)}"`;
    throw new QueueError(`${where}: ${EXPECTED}${shown}. A --queue without a value stands behind the files.`);
  }
  if (!/^rediss?:$/.test(url.protocol) || url.hostname === '')
    throw new QueueError(`${where}: ${EXPECTED}, not ${url.protocol}//.`);
  const database = url.pathname.replace(/^\//, '');
  if (!/^\d{0,5}$/.test(database))
    throw new QueueError(`${where}: behind the port only the number of a database may follow, not "/${database}".`);
  const host = url.hostname.replace(/^\[|\]$/g, '');
  // A name for the handshake; an address is none, and its certificate is checked all the same.
  const tls = url.protocol === 'rediss:' ? { tls: isIP(host) ? {} : { servername: host } } : {};
  const username = decoded(url.username, where) || environment.PULSEJET_QUEUE_USER;
  const password = decoded(url.password, where) || environment.PULSEJET_QUEUE_PASSWORD;
  return {
    host,
    port: url.port === '' ? 6379 : Number(url.port),
    db: Number(database),
    ...(username ? { username } : {}),
    ...(password ? { password } : {}),
    ...tls,
  };
}

function decoded(part: string, where: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    throw new QueueError(`${where}: user or password holds a % that is not part of %XX; write %25 for a plain one.`);
  }
}
