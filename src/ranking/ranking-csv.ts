/** The ranking as a table for spreadsheets (RFC 4180), one row a candidate. */
import type { Band } from '../../shared/checks/check.ts';
import type { Candidate, StudyResults } from './results.ts';

/** kg/(N s) → kg/(N h) and lb/(lbf h). */
const PER_HOUR = 3600;
const POUND_PER_POUND_FORCE_HOUR = 35303.94;
const POUND_FORCE = 4.4482216152605;

type Cell = string | number | boolean | null;

const COLUMNS: [string, (candidate: Candidate) => Cell][] = [
  ['rank', (c) => c.rank],
  ['id', (c) => c.id],
  ['architecture', (c) => c.architecture.label],
  ['meets every wish', (c) => c.feasible],
  ['on the front', (c) => c.nonDominated],
  ['score', (c) => c.score],
  ['thrust N', (c) => c.performance.running?.thrust ?? null],
  ['thrust lbf', (c) => over(c.performance.running?.thrust, 1 / POUND_FORCE)],
  ...band('thrust N', (c) => c.robustness.thrust, 1),
  ['TSFC kg/(N h)', (c) => over(c.performance.running?.tsfc, PER_HOUR)],
  ['TSFC lb/(lbf h)', (c) => over(c.performance.running?.tsfc, POUND_PER_POUND_FORCE_HOUR)],
  ...band('TSFC kg/(N h)', (c) => c.robustness.tsfc, PER_HOUR),
  ...band('life s', (c) => c.robustness.valveLife, 1),
  ['frequency Hz', (c) => c.performance.running?.frequency ?? null],
  ['mass kg', (c) => c.assessment.mass],
  ['cost', (c) => c.assessment.cost],
  ['length m', (c) => c.assessment.overallLength],
  ['diameter m', (c) => c.assessment.overallDiameter],
  ['draws', (c) => c.robustness.draws],
  ['chance to run', (c) => c.robustness.sustainChance],
  ['chance to meet every wish', (c) => c.robustness.feasibleChance],
  [
    'cautions and fails',
    (c) =>
      c.assessment.checks
        .filter((check) => check.verdict === 'caution' || check.verdict === 'fail')
        .map((check) => check.id)
        .join(' '),
  ],
  ['why', (c) => c.why],
];

/** Text of ranking.csv with its heading; lines end with CR LF. */
export function rankingCsv(results: StudyResults): string {
  const rows = [
    COLUMNS.map(([heading]) => heading),
    ...results.candidates.map((candidate) => COLUMNS.map(([, cell]) => cell(candidate))),
  ];
  return rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

function band(
  name: string,
  of: (candidate: Candidate) => Band | null,
  factor: number,
): [string, (candidate: Candidate) => Cell][] {
  return [
    [`${name} 5 %`, (c) => over(of(c)?.low, factor)],
    [`${name} 50 %`, (c) => over(of(c)?.median, factor)],
    [`${name} 95 %`, (c) => over(of(c)?.high, factor)],
  ];
}

function over(value: number | null | undefined, factor: number): number | null {
  return value === null || value === undefined ? null : value * factor;
}

function field(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(Number(cell.toPrecision(6)));
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  // A leading formula sign would be run by a spreadsheet.
  const text = /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
