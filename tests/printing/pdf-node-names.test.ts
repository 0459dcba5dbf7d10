import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { renumberNodes } from '../../src/report/printing/pdf-node-names.ts';

/** Two heads of a table, a cell that refers to them, and the list of the names, as Skia writes them. */
function tagged(first: number): Buffer {
  const name = (i: number) => `(node${String(first + i).padStart(8, '0')})`;
  return Buffer.from(
    `<</S /TH /ID ${name(5)}>> <</S /TH /ID ${name(0)}>> <</S /TD /A [<</Headers [${name(0)} ${name(5)}]>>]>> ` +
      `<</Names [${name(0)} 4 0 R ${name(5)} 3 0 R]>> /T (a title with \\(node00000007\\))`,
    'latin1',
  );
}

describe('names of the structure elements', () => {
  it('are the same wherever the browser began to count, and keep their order and references', () => {
    const [early, late] = [tagged(262), tagged(98_765_430)];
    renumberNodes(early);
    renumberNodes(late);
    expect(early.equals(late)).toBe(true);
    expect(early.toString('latin1')).toBe(
      '<</S /TH /ID (node00000002)>> <</S /TH /ID (node00000001)>> <</S /TD /A [<</Headers [(node00000001) (node00000002)]>>]>> ' +
        '<</Names [(node00000001) 4 0 R (node00000002) 3 0 R]>> /T (a title with \\(node00000007\\))',
    );
  });

  it('leave a file without such names as it is', () => {
    const bytes = readFileSync(new URL(import.meta.url));
    const kept = Buffer.from(bytes.toString('latin1').replaceAll('(node0', '(kept0'), 'latin1');
    const copy = Buffer.from(kept);
    renumberNodes(copy);
    expect(copy.equals(kept)).toBe(true);
  });
});
