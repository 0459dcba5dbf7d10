import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readFinalists } from '../../src/bench/bench-finalists.ts';
import { Table } from '../../src/bench/bench-table.ts';
import { packageFolder } from '../../src/report/package-folder.ts';

describe('the table of a benchmark', () => {
  it('gives the median between the lowest and the highest, and a dash where a column was not measured', () => {
    const table = new Table('figure', ['one', 'other']);
    for (const speed of [3, 1, 2, 10]) table.add({ 'speed, m/s': speed }, 0);
    table.add({ 'memory, MB': 123.4 }, 1);
    expect(table.lines()).toEqual([
      '| figure: median (lowest–highest) | one | other |',
      '|---|---|---|',
      '| speed, m/s | 2.50 (1.00–10.0) | – |',
      '| memory, MB | – | 123 |',
    ]);
  });

  it('has one column without a name when nothing is compared', () => {
    const table = new Table('report');
    table.add({ 'HTML, ms': 1 });
    expect(table.lines()).toEqual(['| report | median (lowest–highest) |', '|---|---|', '| HTML, ms | 1.00 |']);
  });
});

describe('finalists for measuring the report', () => {
  const sample = join(packageFolder(), 'reports', 'sample');

  it('are the stored ones, repeated or cut to the number wanted, with names and ranks of their own', async () => {
    for (const count of [1, 9]) {
      const { candidates } = (await readFinalists(sample, count)).results;
      expect(candidates.map(({ id, rank }) => [id, rank])).toEqual(
        Array.from({ length: count }, (_, i) => [`C${i + 1}`, i + 1]),
      );
    }
  });

  it('are refused by name where there is no finished study', async () => {
    await expect(readFinalists(join(sample, 'patterns'), 1)).rejects.toThrow(/patterns.*results\.json/);
  });
});
