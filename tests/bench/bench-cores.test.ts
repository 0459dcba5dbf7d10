import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { Crew } from '../../src/bench/bench-cores.ts';

const FILE = fileURLToPath(new URL('./support/counting-work.mjs', import.meta.url));

describe('a crew of processes that work at a word', () => {
  it('gives the mean processor time of those called and a time that has passed, again and again', async () => {
    const crew = await Crew.start(FILE, 'model', { processes: 3, threads: 2 });
    try {
      for (const count of [1, 3, 3]) {
        const { wall, processor, waited } = await crew.go(count);
        expect([processor, waited]).toEqual([2, 0.5]);
        expect(wall).toBeGreaterThan(0);
      }
    } finally {
      crew.end();
    }
  });

  it('fails when a process ends before its work is done', async () => {
    const crew = await Crew.start(FILE, 'model', { processes: 2, threads: 0 });
    await expect(crew.go()).rejects.toThrow(/"model" ended early: 3/);
    crew.end();
  });

  it('fails when a process ends before it is warm', async () => {
    await expect(Crew.start(FILE, 'model', { threads: -1 })).rejects.toThrow(/"model" ended early: 4/);
  });
});
