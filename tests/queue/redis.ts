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
  stop(): Promise<void>;
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

export async function startRedis(): Promise<Redis> {
  const port = await freePort();
  const folder = mkdtempSync(join(tmpdir(), 'redis-'));
  const settings = { port, bind: '127.0.0.1', dir: folder, save: '', appendonly: 'no', requirepass: PASSWORD };
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
    port,
    url: `redis://:${encodeURIComponent(PASSWORD)}@127.0.0.1:${port}`,
    stop: async () => {
      child.kill();
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
