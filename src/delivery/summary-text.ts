/** The text of the mail: the answer, the best candidates, what is attached, and the usual cautions. */

import type { ArchitectureResult, Candidate, StudyResults } from '../ranking/results.ts';
import { bandImperial, bandMetric, bandPhrase } from '../report/format/band.ts';
import { chance } from '../report/format/number.ts';
import { plainLine } from './addresses.ts';

const BEST = 3;

const SAFETY =
  'Fuel gas, fire, noise, hot metal, exhaust gas and flying fragments injure people. Read the safety pages before ' +
  'cutting or starting anything; local codes and licensed practice decide.';

/**
 * @param results what the report shows
 * @param folder where the report lies, as the reader of the mail should see it
 * @param attached file names; empty when nothing is attached
 * @param notes what was left out and why
 */
export function summaryText(
  results: StudyResults,
  folder: string,
  attached: readonly string[],
  notes: readonly string[],
): string {
  const { report } = results.study;
  const lines = [plainLine(report.title), plainLine(report.question)];
  if (report.invented) lines.push('Invented demonstration data.');
  for (const sentence of results.contradictions) lines.push('', plainLine(sentence));
  lines.push('', ...results.answer.map((sentence) => plainLine(sentence)));
  if (results.candidates.length > 0) lines.push('', ...results.candidates.slice(0, BEST).flatMap(candidateLines));
  else lines.push('', ...results.architectures.map(reasonLine));
  lines.push('', `The whole report lies in ${plainLine(folder)}.`);
  if (attached.length > 0) lines.push(`Attached: ${attached.join(', ')}.`);
  for (const note of notes) lines.push(`Note: ${plainLine(note)}.`);
  lines.push('', SAFETY, '', `pulsejet-study ${plainLine(results.toolVersion)}`, '');
  return lines.join('\n');
}

function candidateLines(candidate: Candidate): string[] {
  const { robustness } = candidate;
  const tsfc = bandPhrase(bandMetric(robustness.tsfc, 'kg/(N s)'));
  const tsfcImperial = bandPhrase(bandImperial(robustness.tsfc, 'kg/(N s)'));
  const thrust = bandPhrase(bandMetric(robustness.thrust, 'N'));
  const thrustImperial = bandPhrase(bandImperial(robustness.thrust, 'N'));
  return [
    `${candidate.rank}. ${candidate.id}: ${plainLine(candidate.architecture.label)}${candidate.feasible ? '' : ' (not feasible)'}`,
    `   thrust ${thrust}, ${thrustImperial}`,
    `   TSFC ${tsfc}, ${tsfcImperial}`,
    `   valve life ${bandPhrase(bandMetric(robustness.valveLife, 's'))}`,
    `   chance that it sustains itself: ${chance(robustness.sustainChance, robustness.draws)}`,
  ];
}

function reasonLine(result: ArchitectureResult): string {
  const freedBy = result.freedBy ? ` ${plainLine(result.freedBy)}` : '';
  return `${plainLine(result.architecture.label)}: ${plainLine(result.reason)}${freedBy}`;
}
