/** Flags as the report words them: counts for tables, full rows for the sheets. */
import type { Check, CheckVerdict } from '../../../shared/checks/check.ts';
import { count, MISSING, percent, significant } from '../format/number.ts';
import { displayUnits, figure, imperial, metric, STRESS } from '../format/quantity.ts';

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

/** The rows that pass, in a few words each, and the rest, which need their sentence. */
export function splitFlags(rows: readonly FlagRow[]): { open: FlagRow[]; passed: string[] } {
  const open = rows.filter((row) => row.verdict !== 'pass');
  const passed = rows
    .filter((row) => row.verdict === 'pass')
    .map((row) => {
      if (row.value === MISSING) return row.title;
      const limit = row.limit === MISSING ? '' : `, limit ${row.limit}`;
      return `${row.title}: ${row.value}${limit}${row.margin === MISSING ? '' : `, ${row.margin}`}`;
    });
  return { open, passed };
}

/** "speed at the stop (12.4 m/s, limit 10.0 m/s)" for running text. */
export function flagWords({ title, value, limit }: Pick<FlagRow, 'title' | 'value' | 'limit'>): string {
  const figures = [...(value === MISSING ? [] : [value]), ...(limit === MISSING ? [] : [`limit ${limit}`])].join(', ');
  return `${title.charAt(0).toLowerCase()}${title.slice(1)}${figures === '' ? '' : ` (${figures})`}`;
}

const ORDER: CheckVerdict[] = ['fail', 'caution', 'not computed', 'pass', 'not applicable'];

/** Fails first, then cautions; otherwise as the checks come. */
export function flagRows(checks: readonly Check[]): FlagRow[] {
  return checks
    .filter((c) => c.verdict !== 'not applicable')
    .map((check, i) => ({ check, i }))
    .sort((a, b) => ORDER.indexOf(a.check.verdict) - ORDER.indexOf(b.check.verdict) || a.i - b.i)
    .map(({ check }) => ({ check, unit: shownUnit(check) }))
    .map(({ check, unit }) => ({
      id: check.id,
      title: check.title,
      verdict: check.verdict,
      css: check.verdict.replaceAll(' ', '-'),
      value: metric(check.value, unit),
      valueImperial: imperial(check.value, unit),
      limit: limitText({ ...check, unit }),
      limitImperial: imperial(check.limit, unit),
      margin: marginText(check.margin),
      sentence: check.sentence,
      source: check.source,
      binding: check.binding && check.verdict === 'fail',
    }));
}

/** The unit to show: pascals of a stress are told apart from those of a pressure. */
export function shownUnit({ id, unit }: Check): string {
  return unit === 'Pa' && id.includes('stress') ? STRESS : unit;
}

/** Beyond the limit itself a percentage says little, and beyond tenfold no more than "far". */
function marginText(margin: number | null): string {
  if (margin === null || Math.abs(margin) < 1.995) return percent(margin, { signed: true });
  const size = Math.abs(margin) < 10 ? `${significant(Math.abs(margin), 2)} times` : 'over 10 times';
  return `${size} ${margin < 0 ? 'short' : 'clear'}`;
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
  /** Titles of the fails; cautions stand on the candidate's sheet. */
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
    titles: fails.map((c) => c.title).join('; '),
    sort: String(fails.length * 100 + cautions.length),
  };
}
