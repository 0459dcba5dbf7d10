import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checksTable } from '../../shared/checks/checks-table.ts';
import { CHECK_RULES } from '../../shared/checks/registry.ts';

describe('table of checks', () => {
  it('has one row for each check', () => {
    expect(checksTable().match(/^\| .*`/gm)).toHaveLength(CHECK_RULES.length);
  });
  it('stands in shared/checks/README.md as the registry has it now', async () => {
    const readme = new URL('../../shared/checks/README.md', import.meta.url);
    const markers = /(<!-- checks -->\n)[\s\S]*?(<!-- \/checks -->)/;
    const text = readFileSync(readme, 'utf8');
    const current = text.replace(markers, (_, open: string, close: string) => `${open}${checksTable()}${close}`);
    // `npx vitest run tests/checks -u` writes the current table.
    await expect(current).toMatchFileSnapshot(readme.pathname);
    expect(text).toMatch(markers);
  });
});
