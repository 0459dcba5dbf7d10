/** A Redis service of the tests' own: own port, own folder, password, no files; gone afterwards. */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** False: the tests that need a service are skipped, which the closing line of the continuous integration counts. */
export const REDIS_INSTALLED = spawnSync('redis-server', ['--version']).status === 0;
if (!REDIS_INSTALLED) console.warn('redis-server is not installed: the tests of the queue at work are skipped.');

export const PASSWORD = 'a pass/word @ loopback';

export interface Redis {
  port: number;
  url: string;
  /** Ends it at once and starts it again at the same place; like a service that keeps nothing on disk, it forgets everything. */
  restart(whileAway: () => Promise<void>): Promise<void>;
  stop(): Promise<void>;
}

/** Files of a certificate for "localhost" and of the authority that signed it. */
export interface Certificate {
  authority: string;
  certificate: string;
  key: string;
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer().on('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      server.close(() => resolve(port));
    });
  });
}

export async function startRedis(certificate?: Certificate): Promise<Redis> {
  const port = await freePort();
  const folder = mkdtempSync(join(tmpdir(), 'redis-'));
  const place = certificate
    ? {
        port: 0,
        'tls-port': port,
        'tls-cert-file': certificate.certificate,
        'tls-key-file': certificate.key,
        'tls-ca-cert-file': certificate.authority,
        'tls-auth-clients': 'no',
      }
    : { port };
  const settings = { ...place, bind: '127.0.0.1', dir: folder, save: '', appendonly: 'no', requirepass: PASSWORD };
  let service = await launch(settings);
  const host = certificate ? 'localhost' : '127.0.0.1';
  return {
    port,
    url: `${certificate ? 'rediss' : 'redis'}://:${encodeURIComponent(PASSWORD)}@${host}:${port}`,
    restart: async (whileAway) => {
      await service.end('SIGKILL');
      await whileAway();
      service = await launch(settings);
    },
    stop: async () => {
      await service.end('SIGTERM');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function launch(settings: object): Promise<{ end(signal: NodeJS.Signals): Promise<void> }> {
  const child = spawn(
    'redis-server',
    Object.entries(settings).flatMap(([name, value]) => [`--${name}`, String(value)]),
  );
  const ended = new Promise<void>((resolve) => void child.on('close', () => resolve()));
  await new Promise<void>((resolve, reject) => {
    child.stdout.on('data', (text) => {
      if (String(text).includes('Ready to accept connections')) resolve();
    });
    void ended.then(() => reject(new Error('redis-server ended before it was ready')));
  });
  return {
    end: async (signal) => {
      child.kill(signal);
      await ended;
    },
  };
}
