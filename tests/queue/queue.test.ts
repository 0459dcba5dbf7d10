/** Run and worker in one process on a real service: partners that do not fit, hostile jobs, lost and senseless answers. */
import { Queue, Worker } from 'bullmq';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { Interrupted } from '../../src/evaluation/evaluation.ts';
import { type QueueAddress, queueAddress } from '../../src/evaluation/queue/address.ts';
import { takeAnswer } from '../../src/evaluation/queue/answer-box.ts';
import { type Identity, identityOf, queueName } from '../../src/evaluation/queue/identity.ts';
import { batchId, writeQuestion } from '../../src/evaluation/queue/messages.ts';
import { QueueEvaluator } from '../../src/evaluation/queue/queue-evaluator.ts';
import { QueueWorker } from '../../src/evaluation/queue/queue-worker.ts';
import { requestKey } from '../../src/evaluation/request-key.ts';
import { summarise } from '../../src/evaluation/summary.ts';
import { REDIS_INSTALLED, type Redis, startRedis } from './redis.ts';
import { answerTo, requests, StandIn } from './requests.ts';

const MODEL = 'a'.repeat(64);
const OTHER = 'b'.repeat(64);
const id = (n: number) => `b${String(n).padStart(64, '0')}`;

describe.skipIf(!REDIS_INSTALLED)('the queue', () => {
  let redis: Redis;
  let address: QueueAddress;
  const open: { close(): Promise<unknown> }[] = [];
  beforeAll(async () => {
    redis = await startRedis();
    address = queueAddress(redis.url, {});
  });
  afterAll(() => redis?.stop());
  afterEach(async () => {
    for (const resource of open.splice(0).reverse()) await resource.close();
  });

  const notes = { run: [] as string[], worker: [] as string[] };
  async function openRun(local = new StandIn(), identity?: Identity) {
    notes.run.length = 0;
    const run = await QueueEvaluator.open({
      address,
      modelVersion: MODEL,
      identity,
      local,
      onNote: (sentence) => notes.run.push(sentence),
    });
    open.push(run);
    return run;
  }
  async function openWorker(identity?: Identity) {
    notes.worker.length = 0;
    const pool = new StandIn();
    const worker = await QueueWorker.open({
      address,
      modelVersion: identity?.modelVersion ?? MODEL,
      identity,
      pool,
      threads: 2,
      name: 'attic',
      onNote: (sentence) => notes.worker.push(sentence),
    });
    open.push(worker);
    return pool;
  }
  function rawQueue() {
    const queue = new Queue(queueName(identityOf(MODEL)), { prefix: 'pulsejet', connection: address });
    open.push(queue);
    return queue;
  }

  test('answers in the order of the requests, equal ones once, whole or slim', async () => {
    const pool = await openWorker();
    const run = await openRun();
    const asked = [...requests(30), ...requests(5)];
    const seen: number[] = [];
    const whole = await run.evaluate(asked, { onResult: (index) => void seen.push(index) });
    expect(whole).toEqual(asked.map(answerTo));
    expect(seen.toSorted((a, b) => a - b)).toEqual(asked.map((_, i) => i));
    expect(pool.asked).toBe(30);
    const slim = await run.evaluate(asked, { figuresOnly: true });
    expect(slim.map(summarise)).toEqual(asked.map(answerTo).map(summarise));
    expect(run.mostThreads).toBe(2);
  });

  test.each([
    ['performance model', { modelVersion: OTHER, arithmetic: identityOf(MODEL).arithmetic }, 'performance model bbbb'],
    ['arithmetic', { modelVersion: MODEL, arithmetic: '01234567' }, 'elementary functions differently'],
  ])('a worker with another %s is refused by name, and both say so', async (_, identity, why) => {
    const fitting = await openWorker();
    const strange = await openWorker(identity);
    const run = await openRun();
    // The worker hears of the run when it renews its own entry.
    await expect.poll(() => notes.worker.join('\n'), { timeout: 15_000 }).toContain('does not serve run');
    await run.evaluate(requests(8));
    expect(notes.run.find((note) => note.startsWith('Worker attic is refused'))).toContain(why);
    expect([fitting.asked, strange.asked]).toEqual([8, 0]);
  });

  test('hostile jobs are answered with a reason, never carried out, and the worker goes on', async () => {
    const pool = await openWorker();
    const queue = rawQueue();
    const [request] = requests(1);
    const sound = { requests: [request], keys: [requestKey(request, MODEL)], figuresOnly: false };
    const question = JSON.parse(writeQuestion(sound, MODEL));
    const altered = (change: (question: never) => void) => {
      const copy = structuredClone(question);
      change(copy as never);
      return { question: JSON.stringify(copy) };
    };
    const jobs: [unknown, string][] = [
      [{}, 'no question'],
      [{ question: 'process.exit(1)' }, 'no JSON'],
      [{ question: `[${'9,'.repeat(1_100_000)}9]` }, 'longer than'],
      [{ question: '{"__proto__":{"polluted":true}}' }, 'not sound'],
      [
        altered((q: { designs: { engine: { sections: unknown } }[] }) => {
          q.designs[0].engine.sections = 'all';
        }),
        'sections',
      ],
      [
        altered((q: { designs: { engine: { intake: { petals: number } } }[] }) => {
          q.designs[0].engine.intake.petals = 1e9;
        }),
        'valves',
      ],
      [
        altered((q: { designs: { engine: { shell: { thickness: number } } }[] }) => {
          q.designs[0].engine.shell.thickness = 0.5;
        }),
        'not the one that its key names',
      ],
      [
        altered((q: { designs: { constantsDraw: unknown }[] }) => {
          q.designs[0].constantsDraw = [1];
        }),
        'constantsDraw',
      ],
      [
        altered((q: { modelVersion: string }) => {
          q.modelVersion = OTHER;
        }),
        'it asks performance model bbbb',
      ],
    ];
    await queue.addBulk(
      jobs.map(([data], n) => ({ name: 'batch', data, opts: { jobId: id(n), removeOnComplete: true } })),
    );
    const client = await queue.client;
    for (const [n, [, reason]] of jobs.entries()) {
      let answer: string | null = null;
      await expect.poll(async () => (answer ??= await takeAnswer(client, id(n))), { timeout: 10_000 }).not.toBeNull();
      expect(JSON.parse(answer ?? '')).toMatchObject({
        kind: 'refused',
        worker: 'attic',
        reason: expect.stringContaining(reason),
      });
    }
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
    expect(pool.asked).toBe(0);

    const nameless = await queue.add('batch', { question: '' }, { jobId: 'x/../../y' });
    await expect.poll(() => nameless.getState(), { timeout: 10_000 }).toBe('failed');

    const run = await openRun();
    expect(await run.evaluate([request])).toEqual([answerTo(request)]);
    expect(pool.asked).toBe(1);
  });

  test('a job whose data is no JSON does not stop a worker', async () => {
    const pool = await openWorker();
    const queue = rawQueue();
    await queue.pause();
    await queue.add('batch', {}, { jobId: id(99) });
    const client = await queue.client;
    await client.hset(`pulsejet:${queue.name}:${id(99)}`, { data: '{"broken' });
    await queue.resume();
    const run = await openRun();
    expect(await run.evaluate(requests(6))).toEqual(requests(6).map(answerTo));
    expect(pool.asked).toBe(6);
  });

  test('what no worker answers soundly is evaluated by the run itself', async () => {
    const liar = new Worker(
      queueName(identityOf(MODEL)),
      async (job) => {
        await (await rawClient).set(`pulsejet:answer:${job.id}`, '{"kind":"results","results":[]}');
        return 'answered';
      },
      { prefix: 'pulsejet', connection: address },
    );
    open.push(liar);
    const rawClient = rawQueue().client;
    const local = new StandIn();
    const run = await openRun(local);
    expect(await run.evaluate(requests(4))).toEqual(requests(4).map(answerTo));
    expect(local.asked).toBe(4);
    expect(notes.run.join('\n')).toContain('this machine evaluates it');
  });

  test('a batch on which every worker fails is evaluated by the run itself', async () => {
    const failing = new Worker(queueName(identityOf(MODEL)), () => Promise.reject(new Error('no memory')), {
      prefix: 'pulsejet',
      connection: address,
    });
    open.push(failing);
    const local = new StandIn();
    const run = await openRun(local);
    expect(await run.evaluate(requests(2))).toEqual(requests(2).map(answerTo));
    expect(notes.run.join('\n')).toContain('no memory');
  });

  test('asks again when the service forgot a batch, and stops when told', async () => {
    const run = await openRun();
    const asking = run.evaluate(requests(1));
    expect(notes.run.join('\n')).toContain('No worker serves this run');
    const [request] = requests(1);
    const name = batchId({ requests: [request], keys: [requestKey(request, MODEL)], figuresOnly: false });
    const queue = rawQueue();
    await expect.poll(() => queue.getJobState(name), { timeout: 5000 }).toBe('waiting');
    await queue.obliterate({ force: true });
    await openWorker();
    expect(await asking).toEqual([answerTo(request)]);

    await open.splice(-1)[0].close();
    const stop = new AbortController();
    const stopped = run.evaluate(requests(3), { signal: stop.signal });
    setTimeout(() => stop.abort(), 50);
    await expect(stopped).rejects.toBeInstanceOf(Interrupted);
    await expect.poll(() => queue.getWaitingCount(), { timeout: 5000 }).toBe(0);
  });

  test('a store that fails stops the batch with its own error', async () => {
    await openWorker();
    const run = await openRun();
    const onResult = () => Promise.reject(new Error('the disk is full'));
    await expect(run.evaluate(requests(5), { onResult })).rejects.toThrow('the disk is full');
  });
});
