/** One evaluated engine as plain text for a terminal. */
import type { Engine } from '../../shared/engine/engine.ts';
import type { EvaluationResult } from '../evaluation/evaluation.ts';
import { bandImperial, bandMetric, bandPhrase } from '../report/format/band.ts';
import { both } from '../report/format/quantity.ts';
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

const ORDER = ['fail', 'caution', 'not computed', 'pass', 'not applicable'] as const;

/** Failures first; a check that passes is one line, any other says why. */
function checkLines({ assessment }: EvaluationResult): string[] {
  return ORDER.flatMap((verdict) =>
    assessment.checks
      .filter((check) => check.verdict === verdict)
      .flatMap((check) => {
        const figures =
          check.value === null
            ? ''
            : `: ${both(check.value, check.unit)}${check.limit === null ? '' : `, limit ${both(check.limit, check.unit)}`}`;
        const head = `  ${verdict.toUpperCase().padEnd(15)}${check.id}${figures}`;
        return verdict === 'pass' || verdict === 'not applicable'
          ? [head]
          : [head, `${' '.repeat(17)}${check.sentence}`];
      }),
  );
}

function table(rows: readonly Row[]): string[] {
  const width = Math.max(...rows.map(([name]) => name.length));
  return rows.map(([name, value]) => `  ${name.padEnd(width + 2)}${value}`);
}
