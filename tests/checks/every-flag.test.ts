import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assess } from '../../shared/checks/assess.ts';
import { CHECK_RULES } from '../../shared/checks/registry.ts';
import { simulate } from '../../shared/engine/simulate.ts';
import { readEngineFile } from '../../src/config/read-engine.ts';

/**
 * Checks that no engine file can be relied on to trip, with the reason. Hand-made performances trip them in checks.test.ts.
 */
const BEYOND_A_FILE: Record<string, string> = {
  'books-balance': 'the solver conserves mass and energy; only a fault in it would trip this',
  'steady-running': 'a settled limit cycle repeats; roughness shows near blow-out only',
  'fuel-match': 'reading the file refuses a supply of another fuel before anything runs',
  'valve-temperature': 'a running intake breathes enough cold air to keep its valves cool',
};

const folder = new URL('../../configs/engines/', import.meta.url);
const files = readdirSync(folder).filter((name) => name.startsWith('every-flag'));

describe('engine files that are wrong on purpose', () => {
  const tripped = new Set<string>();
  it.each(files)('%s reads, is marked as invented and is assessed without a hole', (name) => {
    const text = readFileSync(new URL(name, folder), 'utf8');
    expect(text).toMatch(/^invented: true$/m);
    const reading = readEngineFile(text, name);
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    const { engine, brief } = reading;
    const { checks } = assess({ engine, brief, performance: simulate(engine, { fidelity: 'screen' }) });
    expect(checks).toHaveLength(CHECK_RULES.length);
    for (const check of checks) if (check.verdict === 'fail' || check.verdict === 'caution') tripped.add(check.id);
  });
  it('together trip every check that a file can trip', () => {
    const quiet = CHECK_RULES.map((rule) => rule.id).filter((id) => !tripped.has(id) && !(id in BEYOND_A_FILE));
    expect(quiet).toEqual([]);
  });
});
