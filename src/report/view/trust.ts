/** How far to trust the numbers: what the model said about engines that were measured. */
import type { StudyResults } from '../../ranking/results.ts';
import { count, significant } from '../format/number.ts';

export interface ValidationLine {
  engine: string;
  quantity: string;
  measured: string;
  computed: string;
  accepted: string;
  within: string;
  outside: boolean;
  role: string;
  source: string;
}

function range(low: number, high: number): string {
  return low === high ? significant(low) : `${significant(low)}–${significant(high)}`;
}

export function validationLines(results: StudyResults): ValidationLine[] {
  return results.validation.map((row) => ({
    engine: row.engine,
    quantity: row.unit ? `${row.quantity}, ${row.unit}` : row.quantity,
    measured: range(row.measuredLow, row.measuredHigh),
    computed: row.computed === null ? 'does not run' : significant(row.computed),
    accepted: range(row.acceptLow, row.acceptHigh),
    within: row.within ? 'yes' : 'no',
    outside: !row.within,
    role: row.role === 'fitted' ? 'fitted' : 'only checked',
    source: row.source,
  }));
}

/** "Of 12 fitted figures 11 lie inside their bands. Of 9 that only check, 6 lie inside. Outside: …"; '' without a table. */
export function validationSummary({ validation }: StudyResults): string {
  if (validation.length === 0) return '';
  const parts = (['fitted', 'checked'] as const).flatMap((role) => {
    const rows = validation.filter((row) => row.role === role);
    const inside = rows.filter((row) => row.within).length;
    return rows.length === 0
      ? []
      : [
          `Of ${rows.length} ${role === 'fitted' ? 'that the constants were fitted to' : 'that only check the model'}, ${inside} inside.`,
        ];
  });
  const outside = validation.filter((row) => !row.within).map((row) => `${row.quantity} of ${row.engine}`);
  const told = outside.length === 0 ? 'None lies outside.' : `Outside: ${outside.join('; ')}.`;
  return `${count(validation.length, 'published figure')} against their accepted bands. ${parts.join(' ')} ${told}`;
}

/** Two or three sentences for page one. */
export function trustSentences(results: StudyResults): string[] {
  const { validation } = results;
  const sentences: string[] = [];
  if (validation.length === 0)
    sentences.push('The model behind these figures has not been compared with measured engines in this report.');
  else {
    const checked = validation.filter((v) => v.role === 'checked');
    const inside = validation.filter((v) => v.within).length;
    const engines = new Set(validation.map((v) => v.engine)).size;
    sentences.push(
      `One set of model constants serves every engine. Of ${count(validation.length, 'figure')} measured on ${count(engines, 'engine')}, ` +
        `${inside} ${inside === 1 ? 'is' : 'are'} met within the stated band` +
        (checked.length > 0
          ? `; ${count(checked.length, 'figure')} of these took no part in fitting the constants, and ${checked.filter((c) => c.within).length} of them ${checked.filter((c) => c.within).length === 1 ? 'is' : 'are'} met.`
          : '.'),
    );
  }
  const draws = results.candidates[0]?.robustness.draws ?? 0;
  if (draws > 0)
    sentences.push(
      `Bands are 5 to 95 % of ${count(draws, 'draw')} over the uncertainty of the constants and over build tolerances. Valve life is known to a factor, not to a percentage.`,
    );
  sentences.push(
    'Nothing here was measured on your engine: measure it with the sheet in “Running it” before you rely on a figure.',
  );
  return sentences;
}
