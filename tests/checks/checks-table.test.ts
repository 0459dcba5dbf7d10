import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checksTable } from '../../shared/checks/checks-table.ts';
import { CHECK_RULES } from '../../shared/checks/registry.ts';

/** A formatter may pad the cells of the committed table. */
const unpadded = (table: string) =>
  table
    .replace(/ *\| */g, '|')
    .replace(/-{3,}/g, '---')
    .trim();

describe('table of checks', () => {
  it('has one row for each check', () => {
    expect(checksTable().match(/^\| .*`/gm)).toHaveLength(CHECK_RULES.length);
  });
  it('stands in the README as the registry has it now', async () => {
    const readme = new URL('../../README.md', import.meta.url);
    const text = readFileSync(readme, 'utf8');
    const [before, rest] = text.split('<!-- checks:start -->');
    const [table, after] = rest.split('<!-- checks:end -->');
    if (unpadded(table) === unpadded(checksTable())) return;
    // Fails; `npx vitest run tests/checks -u` writes the current table instead.
    const current = `${before}<!-- checks:start -->\n${checksTable()}<!-- checks:end -->${after}`;
    await expect(current).toMatchFileSnapshot(readme.pathname);
  });
});
