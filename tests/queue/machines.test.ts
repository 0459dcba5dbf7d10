/** Whole machines: the real command in processes of its own, on a real service. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Queue } from 'bullmq';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { queueAddress } from '../../src/evaluation/queue/address.ts';
import { identityOf, queueName } from '../../src/evaluation/queue/identity.ts';
import { run, start, TINY, temporaryFolder } from '../cli/support.ts';
import { PASSWORD, REDIS_INSTALLED, type Redis, startRedis } from './redis.ts';

declare const MODEL_VERSION: string;
const resultsOf = (folder: string) => readFileSync(join(folder, 'tiny', 'results.json'), 'utf8');
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

describe.skipIf(!REDIS_INSTALLED)('runs on other machines', () => {
  let redis: Redis;
  beforeAll(async () => {
    redis = await startRedis();
  });
  afterAll(() => redis?.stop());

  test('two workers, one killed in the middle of a batch: the same bytes as a local run', async () => {
    const [local, shared] = [temporaryFolder(), temporaryFolder()];
    const here = await run(['run', TINY, '--out', local, '--no-pdf']);
    const env = { PULSEJET_QUEUE_URL: `redis://127.0.0.1:${redis.port}`, PULSEJET_QUEUE_PASSWORD: PASSWORD };
    const workers = ['first', 'second'].map((name) => start(['worker', '--workers', '1', '--name', name], env));
    const there = start(['run', TINY, '--out', shared, '--no-pdf', '--queue'], env);
    const queue = new Queue(queueName(identityOf(MODEL_VERSION)), {
      prefix: 'pulsejet',
      connection: queueAddress(redis.url, {}),
    });
    let struck = false;
    const waiting = there.ended.then(() => true);
    while (!struck && !(await Promise.race([waiting, pause(20)]))) {
      const held = await queue.getActive();
      struck = held.some((job) => job?.processedBy === 'first');
      if (struck) workers[0].child.kill('SIGKILL');
    }
    await queue.close();
    const ended = await there.ended;
    workers[1].child.kill('SIGINT');
    const [first, second] = await Promise.all(workers.map((worker) => worker.ended));
    expect(struck).toBe(true);
    expect(first.signal).toBe('SIGKILL');
    expect(second.code).toBe(0);
    expect(ended.code).toBe(here.code);
    expect(ended.stderr).toContain('Worker second serves this run with 1 threads');
    // Nothing was evaluated by the run's own machine.
    expect(ended.stderr).not.toContain('this machine evaluates it');
    expect(resultsOf(shared)).toBe(resultsOf(local));
  }, 300_000);

  test.each([
    ['a wrong password', { PULSEJET_QUEUE_PASSWORD: 'guessed-secret' }, 'refuses the user or password'],
    ['no password', { PULSEJET_QUEUE_PASSWORD: '' }, 'asks for a password'],
  ])('%s ends both commands before they begin', async (_, env, words) => {
    const url = `redis://127.0.0.1:${redis.port}`;
    const ends = await Promise.all([
      run(['run', TINY, '--out', temporaryFolder(), '--no-pdf', '--queue', url], env),
      run(['worker', '--queue', url], env),
    ]);
    for (const { code, stderr } of ends) {
      expect(code).toBe(2);
      expect(stderr).toContain(words);
      expect(stderr).not.toContain('guessed-secret');
    }
  });
});

test('a queue where nothing listens is told at once', async () => {
  const { code, stderr } = await run(['worker', '--queue', 'redis://127.0.0.1:1']);
  expect(code).toBe(2);
  expect(stderr).toContain('redis://127.0.0.1:1 cannot be reached: nothing listens there');
});

test('without the optional package a queue is refused with the cure, and nothing else needs it', async () => {
  const hook = `export async function resolve(name, context, next) {
    if (name === 'bullmq') throw Object.assign(new Error('not here'), { code: 'ERR_MODULE_NOT_FOUND' });
    return next(name, context);
  }`;
  const loader = `import { register } from 'node:module'; register(${JSON.stringify(`data:text/javascript,${encodeURIComponent(hook)}`)});`;
  const env = { NODE_OPTIONS: `--import=data:text/javascript,${encodeURIComponent(loader)}` };
  const queued = await run(['worker', '--queue', 'redis://127.0.0.1:1'], env);
  expect(queued.code).toBe(2);
  expect(queued.stderr).toContain('optional package "bullmq", which is not installed');
  const local = await run(['run', TINY, '--out', temporaryFolder(), '--no-pdf', '--evaluations', '2'], env);
  expect(local.stderr).not.toContain('bullmq');
  expect([0, 3]).toContain(local.code);
});
