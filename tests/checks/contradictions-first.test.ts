import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FUELS } from '../../shared/gas/fuels.ts';
import { readStudy } from '../../src/config/read-study.ts';
import type { Study } from '../../src/config/study.ts';
import { contradictionsOf } from '../../src/ranking/contradictions.ts';
import { NO_DRAWINGS } from '../../src/report/drawing-set.ts';
import { renderHtml } from '../../src/report/render-html.ts';
import { FACTS, results } from '../report/fixtures.ts';

/** From a study file as a user writes it to the text of the report. */
function reportOf(change: (study: Study) => void): { sentences: string[]; text: string; answer: string } {
  const reading = readStudy(readFileSync('configs/demo-quick.yaml', 'utf8'), 'demo-quick.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const { study } = reading;
  change(study);
  const sentences = contradictionsOf({
    study,
    finalists: [],
    tradePoints: [],
    architectures: [],
  } as unknown as Parameters<typeof contradictionsOf>[0]);
  const answered = { ...results(), contradictions: sentences };
  const html = renderHtml(answered, FACTS, { paper: 'A4', drawings: NO_DRAWINGS });
  const body = html.slice(html.indexOf('<body'));
  const text = body.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');
  return { sentences, text, answer: answered.answer[0].slice(0, 40) };
}

describe('a wish that contradicts physics is said in words at the top of the report', () => {
  it.each([
    [
      'endurance longer than any strip can give',
      'is longer than any strip in stock can give',
      (study: Study) => {
        study.brief.wanted.endurance = 3000 * 3600;
      },
    ],
    [
      'less air than stoichiometry needs: a carburettor rated too small for the thrust',
      'of air to burn its petrol',
      (study: Study) => {
        study.brief.supply = {
          kind: 'carburettor',
          fuel: 'petrol',
          ratedFlow: 1e-3,
          ratingDepression: 10159,
          capacity: 5,
        };
      },
    ],
    [
      'less air than stoichiometry needs: a mixture richer than the air burns',
      `needs ${FUELS.propane.stoichiometricAirFuelRatio.toPrecision(3)} kg of air`,
      (study: Study) => {
        study.space.equivalenceRatio = { low: 1.3, high: 1.4 };
      },
    ],
  ])('%s', (_, words, change) => {
    const { sentences, text, answer } = reportOf(change);
    const said = sentences.find((sentence) => sentence.includes(words));
    expect(sentences.join('\n')).toContain(words);
    const place = text.indexOf(words);
    expect(place).toBeGreaterThan(-1);
    expect(place).toBeLessThan(text.indexOf(answer));
    expect(said).toMatch(/\d/);
  });
  it('the demo study as it stands contradicts nothing', () => {
    expect(reportOf(() => {}).sentences).toEqual([]);
  });
});
