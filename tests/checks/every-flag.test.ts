import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CHECK_RULES } from '../../shared/checks/registry.ts';
import { evaluationText } from '../../src/cli/evaluation-text.ts';
import { readEngineFile } from '../../src/config/read-engine.ts';
import { evaluateRequest } from '../../src/evaluation/evaluate-request.ts';

const folder = new URL('../../configs/engines/', import.meta.url);
const files = readdirSync(folder).filter((name) => name.startsWith('every-flag'));

describe('engine files that are wrong on purpose', () => {
  /** Checks that the text of `evaluate` names as a fail or a caution, over all files. */
  const named = new Set<string>();
  it.each(files)('%s is marked as invented, and evaluate names each flag with its sentence', (name) => {
    const text = readFileSync(new URL(name, folder), 'utf8');
    expect(text).toMatch(/^invented: true$/m);
    const reading = readEngineFile(text, name);
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    const { engine, brief } = reading;
    // As the command does it, but for the probe of the edge, which no check reads.
    const result = evaluateRequest({ engine, brief, fidelity: 'full', constantsDraw: null, probeEdge: false });
    const { checks } = result.assessment;
    expect(checks.map((check) => check.id)).toEqual(CHECK_RULES.map((rule) => rule.id));
    const printed = evaluationText(engine, result);
    for (const { id, verdict, sentence } of checks) {
      if (verdict !== 'fail' && verdict !== 'caution') continue;
      expect(printed).toMatch(new RegExp(`^ +${verdict.toUpperCase()} +${id}\\b`, 'm'));
      expect(printed).toContain(sentence);
      named.add(id);
    }
  });
  it('together trip every check there is', () => {
    expect(CHECK_RULES.map((rule) => rule.id).filter((id) => !named.has(id))).toEqual([]);
  });
});
