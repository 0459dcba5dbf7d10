import { join } from 'node:path';
import { expect, it } from 'vitest';
import { chanceDesign } from '../../src/bench/chance-design.ts';
import { loadStudy } from '../../src/config/files.ts';
import { packageFolder } from '../../src/report/package-folder.ts';
import { createRandom } from '../../src/search/random.ts';
import { architecturesOf } from '../../src/space/architectures.ts';

it('draws every variable over its whole range, and whole numbers where only these mean something', async () => {
  const reading = await loadStudy(join(packageFolder(), 'configs', 'demo-night.yaml'));
  if (!reading.ok) throw new Error('the demo study does not read');
  for (const space of architecturesOf(reading.study)) {
    const random = createRandom('chance');
    const draws = Array.from({ length: 400 }, () => chanceDesign(space, random));
    space.variables.forEach((variable, i) => {
      const values = draws.map((x) => x[i]);
      const [low, high] = variable.kind === 'choice' ? [0, variable.options.length - 1] : [variable.low, variable.high];
      // Of 400 uniform draws none falls into an end's twentieth with a chance of 1e-9.
      const twentieth = variable.kind === 'real' ? (high - low) / 20 : 0;
      expect(Math.min(...values)).toBeGreaterThanOrEqual(low);
      expect(Math.max(...values)).toBeLessThanOrEqual(high);
      if (high - low > 20 && variable.kind === 'integer') return;
      expect(Math.min(...values)).toBeLessThanOrEqual(low + twentieth);
      expect(Math.max(...values)).toBeGreaterThanOrEqual(high - twentieth);
      if (variable.kind !== 'real') expect(values.every(Number.isInteger)).toBe(true);
    });
  }
});
