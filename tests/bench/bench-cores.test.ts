import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { timeTogether } from '../../src/bench/bench-cores.ts';

const FILE = fileURLToPath(new URL('./support/counting-work.mjs', import.meta.url));

describe('timing of processes that start at one word', () => {
  it('gives the mean processor time of the processes and a time that has passed', async () => {
    const { wall, processor } = await timeTogether(FILE, 'model', { processes: 3, threads: 2 });
    expect(processor).toBe(2);
    expect(wall).toBeGreaterThan(0);
  });

  it('fails when a process ends before its work is done', async () => {
    await expect(timeTogether(FILE, 'model', { processes: 2, threads: 0 })).rejects.toThrow(/"model" ended early: 3/);
  });
});
