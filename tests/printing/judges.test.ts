/** The judges of the report must themselves find faults, or their silence would prove nothing. */
import { beforeAll, describe, expect, it } from 'vitest';
import { axeFindings } from '../support/axe.ts';
import { htmlFaults } from '../support/valid-html.ts';
import { scratchFolder, writePage } from './fixture.ts';

let folder: string;
beforeAll(async () => {
  folder = await scratchFolder();
});

describe('axeFindings', () => {
  it('finds nothing on a sound page and says what it looked at', async () => {
    const file = await writePage(folder, 'sound.html', '<main><h1>Answer</h1><p>Build it.</p></main>');
    const { light, dark } = await axeFindings(file);
    for (const result of [light, dark]) {
      expect(result.violations).toEqual([]);
      expect(result.passes).toContain('color-contrast');
      expect(result.scriptErrors).toEqual([]);
    }
  });

  it('finds contrast that fails only in the dark, a nameless picture, requests and script errors', async () => {
    const file = await writePage(
      folder,
      'faulty.html',
      `<main><h1>Answer</h1><p class="c">Build it.</p><img src="http://127.0.0.1:9/x.png"></main>
       <script>throw new Error('broken')</script>`,
      '<style>@media (prefers-color-scheme: dark){body{background:#000}.c{color:#333}h1{color:#fff}}</style>',
    );
    const { light, dark } = await axeFindings(file);
    expect(light.violations.map((one) => one.rule)).toEqual(['image-alt']);
    expect(dark.violations.map((one) => one.rule).sort()).toEqual(['color-contrast', 'image-alt']);
    expect(dark.violations.find((one) => one.rule === 'color-contrast')?.nodes[0].target).toBe('p');
    expect(light.requests).toEqual(['http://127.0.0.1:9/x.png']);
    expect(light.scriptErrors.join()).toContain('broken');
  });
});

describe('htmlFaults', () => {
  const page = (body: string) =>
    `<!DOCTYPE html>\n<html lang="en">\n<head><title>t</title></head>\n<body>${body}</body>\n</html>\n`;

  it('passes a sound page and names the faults of another', async () => {
    expect(await htmlFaults(page('<main><h1>a</h1><p style="color:red">b</p></main>'))).toEqual([]);
    const faults = await htmlFaults(page('<p id="x"><div id="x"></p>'));
    expect(faults.join('\n')).toMatch(/no-dup-id/);
    expect(faults.join('\n')).toMatch(/close-order|no-implicit-close/);
  });
});
