/** Flags as the report words them: counts for tables, full rows for the sheets. */
import type { Check, CheckVerdict } from '../../../shared/checks/check.ts';
import { count, MISSING, percent } from '../format/number.ts';
import { displayUnits, figure, imperial, metric } from '../format/quantity.ts';

export interface FlagRow {
  id: string;
  title: string;
  verdict: string;
  /** CSS class of the verdict. */
  css: string;
  value: string;
  valueImperial: string;
  limit: string;
  limitImperial: string;
  margin: string;
  sentence: string;
  source: string;
  binding: boolean;
}

const ORDER: CheckVerdict[] = ['fail', 'caution', 'not computed', 'pass', 'not applicable'];

/** Fails first, then cautions; otherwise as the checks come. */
export function flagRows(checks: readonly Check[]): FlagRow[] {
  return checks
    .filter((c) => c.verdict !== 'not applicable')
    .map((check, i) => ({ check, i }))
    .sort((a, b) => ORDER.indexOf(a.check.verdict) - ORDER.indexOf(b.check.verdict) || a.i - b.i)
    .map(({ check }) => ({
      id: check.id,
      title: check.title,
      verdict: check.verdict,
      css: check.verdict.replaceAll(' ', '-'),
      value: metric(check.value, check.unit),
      valueImperial: imperial(check.value, check.unit),
      limit: limitText(check),
      limitImperial: imperial(check.limit, check.unit),
      // Beyond tenfold the figure says no more than "far".
      margin: check.margin !== null && check.margin > 9.99 ? 'over 999 %' : percent(check.margin, { signed: true }),
      sentence: check.sentence,
      source: check.source,
      binding: check.binding && check.verdict === 'fail',
    }));
}

/** In the same unit as the value, so that 980 g does not stand beside a limit of 1.2 kg. */
function limitText(check: Check): string {
  if (check.limit === null) return MISSING;
  if (check.value === null || check.unit === 's') return metric(check.limit, check.unit);
  const { metric: to } = displayUnits(check.unit, check.value);
  const own = displayUnits(check.unit, check.limit).metric;
  if (own.symbol === to.symbol) return metric(check.limit, check.unit);
  return `${figure(check.limit, to)}${to.symbol ? `\u00a0${to.symbol}` : ''}`;
}

export interface FlagSummary {
  /** "1 fail, 2 cautions" or "none". */
  text: string;
  /** Titles of the fails, then of the cautions. */
  titles: string;
  /** Fails count a hundredfold, so that sorting puts the worst last. */
  sort: string;
}

export function flagSummary(checks: readonly Check[]): FlagSummary {
  const fails = checks.filter((c) => c.verdict === 'fail');
  const cautions = checks.filter((c) => c.verdict === 'caution');
  const parts = [
    ...(fails.length > 0 ? [count(fails.length, 'fail')] : []),
    ...(cautions.length > 0 ? [count(cautions.length, 'caution')] : []),
  ];
  return {
    text: parts.length > 0 ? parts.join(', ') : 'none',
    titles: [...fails, ...cautions].map((c) => c.title).join('; '),
    sort: String(fails.length * 100 + cautions.length),
  };
}
