/** An encrypted service with a certificate of one's own, and a service that goes away in the middle of a study. */
import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Queue } from 'bullmq';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { queueAddress } from '../../src/evaluation/queue/address.ts';
import { identityOf, queueName } from '../../src/evaluation/queue/identity.ts';
import { run, start, TINY, temporaryFolder } from '../cli/support.ts';
import { type Certificate, PASSWORD, REDIS_INSTALLED, type Redis, startRedis } from './redis.ts';

declare const MODEL_VERSION: string;
const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));
const OPENSSL_INSTALLED = spawnSync('openssl', ['version']).status === 0;

/** A new authority and a certificate for "localhost" and 127.0.0.1 that it signed. */
function certificateOfOurOwn(): Certificate {
  const folder = temporaryFolder();
  const openssl = (line: string) => execFileSync('openssl', line.split(' '), { cwd: folder, stdio: 'ignore' });
  writeFileSync(join(folder, 'names'), 'subjectAltName=DNS:localhost,IP:127.0.0.1\n');
  openssl('req -x509 -newkey rsa:2048 -nodes -days 2 -keyout ca.key -out ca.crt -subj /CN=authority-of-the-test');
  openssl('req -newkey rsa:2048 -nodes -keyout own.key -out own.csr -subj /CN=localhost');
  openssl('x509 -req -in own.csr -CA ca.crt -CAkey ca.key -CAcreateserial -days 2 -extfile names -out own.crt');
  return {
    authority: join(folder, 'ca.crt'),
    certificate: join(folder, 'own.crt'),
    key: join(folder, 'own.key'),
  };
}

describe.skipIf(!REDIS_INSTALLED || !OPENSSL_INSTALLED)('an encrypted service', () => {
  let redis: Redis;
  let certificate: Certificate;
  beforeAll(async () => {
    certificate = certificateOfOurOwn();
    redis = await startRedis(certificate);
  });
  afterAll(() => redis?.stop());

  test('whose certificate nobody vouches for is refused, with the cure; so is one spoken to in plain', async () => {
    const env = { PULSEJET_QUEUE_PASSWORD: PASSWORD, NODE_EXTRA_CA_CERTS: '' };
    const [unknown, plain] = await Promise.all(
      ['rediss', 'redis'].map((protocol) => run(['worker', '--queue', `${protocol}://localhost:${redis.port}`], env)),
    );
    expect(unknown.code).toBe(2);
    expect(unknown.stderr).toMatch(/certificate .* is not accepted.*NODE_EXTRA_CA_CERTS/);
    expect(plain.code).toBe(2);
    expect(plain.stderr).toContain('rediss://');
    for (const { stderr } of [unknown, plain]) expect(stderr).not.toContain(PASSWORD);
  });

  test('that is killed and forgets everything in the middle of a study: the same bytes as a local run', async () => {
    const [local, shared] = [temporaryFolder(), temporaryFolder()];
    const here = await run(['run', TINY, '--out', local, '--no-pdf']);
    const env = { PULSEJET_QUEUE_PASSWORD: PASSWORD, NODE_EXTRA_CA_CERTS: certificate.authority };
    // By name and by number: the certificate is for both.
    const workers = ['localhost', '127.0.0.1'].map((host, n) =>
      start(['worker', '--workers', '1', '--name', `worker-${n}`, '--queue', `rediss://${host}:${redis.port}`], env),
    );
    const there = start(['run', TINY, '--out', shared, '--no-pdf', '--queue', `rediss://localhost:${redis.port}`], env);
    const address = queueAddress(redis.url, {});
    const queue = new Queue(queueName(identityOf(MODEL_VERSION)), {
      prefix: 'pulsejet',
      connection: { ...address, tls: { ...address.tls, ca: readFileSync(certificate.authority) } },
    });
    queue.on('error', () => {});
    let busy = false;
    const over = there.ended.then(() => true);
    while (!busy && !(await Promise.race([over, pause(20)]))) busy = (await queue.getActiveCount()) > 0;
    await queue.close();
    await redis.restart(() => pause(1500));
    const ended = await there.ended;
    for (const { child } of workers) child.kill('SIGINT');
    const stopped = await Promise.all(workers.map((worker) => worker.ended));
    expect(busy).toBe(true);
    expect(ended.stderr).toContain('does not answer');
    expect(ended.stderr).toContain('is back');
    expect(ended.stderr).not.toContain('this machine evaluates it');
    expect(ended.code).toBe(here.code);
    expect(stopped.map(({ code }) => code)).toEqual([0, 0]);
    for (const { stderr } of stopped) expect(stderr).not.toContain('Warning');
    const resultsOf = (folder: string) => readFileSync(join(folder, 'tiny', 'results.json'), 'utf8');
    expect(resultsOf(shared)).toBe(resultsOf(local));
  }, 300_000);
});
