import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import type { Engine } from '../../shared/engine/engine.ts';
import { type EvaluationRequest, type EvaluationResult, Interrupted } from '../../src/evaluation/evaluation.ts';
import { summarise } from '../../src/evaluation/summary.ts';
import { WorkerPool, type WorkerPoolOptions } from '../../src/evaluation/worker-pool.ts';

const workerFile = new URL('./support/fault-worker.mjs', import.meta.url);
const request = (name: string) =>
  ({ engine: { name } as Engine, fidelity: 'full', constantsDraw: null }) as EvaluationRequest;
const message = (result: EvaluationResult) => (result.performance.verdict as { message: string }).message;

let pool: WorkerPool;
const faults: string[] = [];
function open(options: WorkerPoolOptions = {}): WorkerPool {
  faults.length = 0;
  pool = new WorkerPool({
    workerFile,
    workers: 2,
    timeLimit: 20,
    onFault: (sentence) => faults.push(sentence),
    ...options,
  });
  return pool;
}
afterEach(() => pool.close());

describe('the worker pool', () => {
  test('places results by the index of their request, not by arrival', async () => {
    const arrivals: number[] = [];
    const names = [120, 60, 30, 5, 90, 1].map((delay) => `slow ${delay}`);
    const results = await open({ workers: 3 }).evaluate(names.map(request), {
      onResult: (index) => void arrivals.push(index),
    });
    expect(results.map(message)).toEqual(names);
    expect(arrivals).not.toEqual([0, 1, 2, 3, 4, 5]);
    expect(arrivals.toSorted()).toEqual([0, 1, 2, 3, 4, 5]);
  });

  test('spreads a batch over its threads and keeps them for the next', async () => {
    open();
    const first = (await pool.evaluate(Array.from({ length: 20 }, () => request('x')))).map(message);
    const second = (await pool.evaluate(Array.from({ length: 20 }, () => request('x')))).map(message);
    expect(new Set([...first, ...second]).size).toBeLessThanOrEqual(2);
  });

  test('replaces a thread that crashed and asks once more', async () => {
    const mark = join(mkdtempSync(join(tmpdir(), 'pool-')), 'mark');
    const [result, other] = await open().evaluate([request(`crash-once ${mark}`), request('ok')]);
    expect(message(result)).toContain('crash-once');
    expect(result.fault).toBeUndefined();
    expect(message(other)).toContain('ok');
    expect(faults).toHaveLength(1);
  });

  test.each([
    ['crash', 'an odd corner'],
    ['exit', 'ended with code 3'],
  ])('a design that loses its worker twice (%s) is a result with its reason', async (name, reason) => {
    const results = await open().evaluate([request('ok'), request(name), request('ok')]);
    expect(results[1].fault).toBe('crashed');
    expect(message(results[1])).toContain('twice');
    expect(message(results[1])).toContain(reason);
    expect(message(results[2])).toContain('ok');
  });

  test('a worker out of memory does not take the process along', async () => {
    const [result, next] = await open({ workers: 1, memoryLimit: 32 }).evaluate([request('memory'), request('ok')]);
    expect(result.fault).toBe('crashed');
    expect(message(result)).toContain('out of memory (32 MB)');
    expect(message(next)).toContain('ok');
  });

  test('ends an evaluation that hangs and goes on', async () => {
    const results = await open({ timeLimit: 1.5 }).evaluate([request('hang'), request('ok'), request('ok')]);
    expect(results[0].fault).toBe('timed out');
    expect(message(results[0])).toContain('1.5 s');
    expect(
      results
        .slice(1)
        .map(message)
        .every((text) => text.startsWith('ok')),
    ).toBe(true);
    expect(faults[0]).toContain('"hang"');
  });

  test('keeps only figures of a batch when that is all that is wanted, once each result was heard', async () => {
    const heard: EvaluationResult[] = [];
    const [kept] = await open().evaluate([request('curves')], {
      figuresOnly: true,
      onResult: (_, result) => void heard.push(result),
    });
    expect(heard[0].performance.running?.traces.time).toHaveLength(1000);
    expect(kept.performance.running?.traces.time).toEqual([]);
    expect(summarise(kept)).toEqual(summarise(heard[0]));
  });

  test('stops between evaluations when asked, and reports those that were done', async () => {
    const stop = new AbortController();
    const done: number[] = [];
    const running = open({ workers: 1 }).evaluate(
      Array.from({ length: 10 }, () => request('slow 20')),
      {
        signal: stop.signal,
        onResult: (index) => {
          done.push(index);
          if (index === 2) stop.abort();
        },
      },
    );
    await expect(running).rejects.toBeInstanceOf(Interrupted);
    expect(done.length).toBeGreaterThanOrEqual(3);
    expect(done.length).toBeLessThan(10);
  });

  test('a store that fails stops the batch with its own error', async () => {
    const running = open().evaluate([request('ok'), request('ok'), request('slow 50')], {
      onResult: () => Promise.reject(new Error('the disk is full')),
    });
    await expect(running).rejects.toThrow('the disk is full');
  });

  test('refuses a pool without workers', () => {
    open();
    expect(() => new WorkerPool({ workers: 0 })).toThrow(RangeError);
    expect(() => new WorkerPool({ workers: 1.5 })).toThrow(RangeError);
  });
});
