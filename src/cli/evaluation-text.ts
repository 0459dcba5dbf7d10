/** One evaluated engine as plain text for a terminal. */
import type { Engine } from '../../shared/engine/engine.ts';
import type { EvaluationResult } from '../evaluation/evaluation.ts';
import { bandImperial, bandMetric, bandPhrase } from '../report/format/band.ts';
import { both } from '../report/format/quantity.ts';
import { shownUnit } from '../report/view/flags.ts';
import { auditSentence, performanceRows, startSentences } from '../report/view/performance-rows.ts';

type Row = [name: string, value: string];

/** Lines for people; figures in SI and in inch units. */
export function evaluationText(engine: Engine, result: EvaluationResult): string {
  const { performance, assessment } = result;
  const { running, verdict } = performance;
  const lines = [engine.name, '', `Verdict: ${verdict.kind}. ${verdict.message}`];
  if (performance.starts.length > 0)
    lines.push('', 'Starts tried', ...startSentences(performance).map((sentence) => `  ${sentence}`));
  if (running) {
    const life = bandMetric(assessment.valveLife, 's');
    const lifeTwin = bandImperial(assessment.valveLife, 's');
    const rows: Row[] = [
      ['Frequency', both(running.frequency, 'Hz')],
      ['Thrust', both(running.thrust, 'N')],
      ['Specific fuel consumption', both(running.tsfc, 'kg/(N s)')],
      ...performanceRows(running).map(
        ({ name, metric, imperial }): Row => [name, imperial ? `${metric} (${imperial})` : metric],
      ),
      ['Life, 5–50–95 %', [bandPhrase(life), lifeTwin ? `(${bandPhrase(lifeTwin)})` : ''].join(' ').trim()],
      ['Life is limited by', assessment.lifeLimiter],
      ...(running.augmenterNote === null ? [] : [['Augmenter', running.augmenterNote] satisfies Row]),
    ];
    lines.push('', 'Running', ...table(rows), '', auditSentence(running));
  }
  const valve = running?.valve ?? performance.failedValve;
  if (valve) {
    const rows: Row[] = [
      ['Force that suction offers one valve', both(valve.forceOffered, 'N')],
      ['Force that its mass needs', both(valve.forceNeeded, 'N')],
      ['Offered over needed', valve.followRatio.toFixed(2)],
    ];
    lines.push('', valve.followRatio < 1 ? 'The valve does not follow' : 'The valve follows', ...table(rows));
  }
  if (verdict.kind !== 'model failure') {
    const rows: Row[] = [
      ['Overall length', both(assessment.overallLength, 'm')],
      ['Overall diameter', both(assessment.overallDiameter, 'm')],
      ['Mass', both(assessment.mass, 'kg')],
    ];
    lines.push('', 'Build', ...table(rows));
  }
  if (assessment.checks.length > 0) lines.push('', 'Checks', ...checkLines(result));
  return `${lines.join('\n')}\n`;
}

const ORDER = ['fail', 'caution', 'not computed', 'pass'] as const;

/** Failures first; a check that passes is one line, any other says why; those that do not apply are counted. */
function checkLines({ assessment }: EvaluationResult): string[] {
  const shown = ORDER.flatMap((verdict) => assessment.checks.filter((check) => check.verdict === verdict));
  const lines = shown.flatMap((check) => {
    const { verdict, id, value, limit, sentence } = check;
    const unit = shownUnit(check);
    const against = limit === null ? '' : `, limit ${both(limit, unit)}`;
    const head = `  ${verdict.toUpperCase().padEnd(14)}${id}${value === null ? '' : `: ${both(value, unit)}${against}`}`;
    return verdict === 'pass' ? [head] : [head, `${' '.repeat(16)}${sentence}`];
  });
  const rest = assessment.checks.length - shown.length;
  return rest === 0 ? lines : [...lines, `  ${rest} more do not apply.`];
}

function table(rows: readonly Row[]): string[] {
  const width = Math.max(...rows.map(([name]) => name.length));
  return rows.map(([name, value]) => `  ${name.padEnd(width + 2)}${value}`);
}
