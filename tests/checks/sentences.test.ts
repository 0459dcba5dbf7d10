import { describe, expect, it } from 'vitest';
import { assess } from '../../shared/checks/assess.ts';
import type { Check, CheckInput } from '../../shared/checks/check.ts';
import { CHECK_RULES } from '../../shared/checks/registry.ts';
import { SCENARIOS } from './scenarios.ts';

const found = (input: CheckInput, id: string) => assess(input).checks.find((check) => check.id === id)!;

/** A wish for more room than anything has turns each pass that can become a caution into one. */
function withGreatestMargin(input: CheckInput): CheckInput {
  input.brief.limits.cautionMargin = 1e9;
  return input;
}

/** Words of a remedy: what to do, or what to have more or less of. */
const REMEDY =
  /\b(add|bend|blow|bring|build|bush|buy|carry|change|choose|couple|cut|draw|drill|enrich|fence|fit|fix|go|have|inject|keep|lead|lean|lengthen|let|lighten|lower|make|measure|narrow|nest|order|plan|practise|price|put|raise|roll|run|save|scale|set|shorten|stand|stay|take|trust|turn|use|warm|wear|weld|wind|less|lighter|longer|shorter|thinner|thicker|wider|larger|smaller|closer|flatter|stiffer|stronger)\b/;

/** Figures in the fields and in the words; what would clear it after the last colon or semicolon. */
function expectClear({ id, verdict, sentence, value, limit, margin }: Check): void {
  for (const figure of [value, limit, margin]) expect(Number.isFinite(figure)).toBe(true);
  if (verdict === 'pass') return;
  // Whether a supply fits the feed is a matter of kind: it has no figure.
  if (id !== 'fuel-match') expect(sentence).toMatch(/\d/);
  const cure = sentence.split(/[:;] /).slice(1);
  expect(cure.at(-1) ?? `no cure in: ${sentence}`).toMatch(REMEDY);
}

describe('every judged check gives value, limit, margin and says what would clear it', () => {
  it.each(CHECK_RULES.map((rule) => rule.id))('%s', (id) => {
    const { pass, trip } = SCENARIOS[id];
    expectClear(found(pass(), id));
    if (id === 'engine-runs') return; // Its sentence is the gas-dynamic model's own, which its tests judge.
    expectClear(found(trip(), id));
    expectClear(found(withGreatestMargin(pass()), id));
  });
});

it('an augmenter is not recommended to an engine that has one', () => {
  const sentences = (augmenter: CheckInput['engine']['augmenter']) =>
    ['thrust', 'tsfc'].map((id) => {
      const input = SCENARIOS[id].trip();
      input.engine.augmenter = augmenter;
      return found(input, id).sentence;
    });
  for (const sentence of sentences(null)) expect(sentence).toMatch(/fit an augmenter/);
  for (const sentence of sentences({ diameter: 0.25, length: 1, gap: 0.1, taper: 0 })) {
    expect(sentence).not.toMatch(/augmenter/);
  }
});
