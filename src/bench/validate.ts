/**
 * Recomputes the table of computed against measured values with the shipped constants: `npm run validate`.
 *
 * Writes shared/calibration/validation.json, which every report carries, and the table between the markers of the README.
 * `--check` writes nothing and fails when either is stale.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  ASSUMED,
  droneEngine,
  engine22Inch,
  engine50Cm,
  type SweptDetails,
} from '../../shared/calibration/reference-engines.ts';
import { calibratedConstants } from '../../shared/engine/constants.ts';
import type { Engine } from '../../shared/engine/engine.ts';
import { simulate } from '../../shared/engine/simulate.ts';
import type { ValidationRow } from '../ranking/results.ts';
import { packageFolder } from '../report/package-folder.ts';
import { GRID_BAR, type GridRow, gridRows } from './grid-rows.ts';
import { type MeasuredValue, referenceFigures, TSFC_IN_POUNDS } from './reference-figures.ts';

const START = '<!-- validation:start -->';
const END = '<!-- validation:end -->';

/** What no source gives is moved by these shares, one at a time, to show the spread that it causes. */
const SWEEP: { detail: keyof SweptDetails; label: string; factors: number[] }[] = [
  { detail: 'portRatio', label: 'port area ± 25 %', factors: [0.75, 1.25] },
  { detail: 'stopRatio', label: 'stop lift ± 25 %', factors: [0.75, 1.25] },
  { detail: 'equivalenceRatio', label: 'φ ± 10 %', factors: [0.9, 1.1] },
];

interface SweepRow {
  engine: string;
  detail: string;
  /** Lowest and highest of each over the sweep, and how many of the runs sustain themselves. */
  thrust: [number, number] | null;
  frequency: [number, number] | null;
  tsfc: [number, number] | null;
  running: string;
}

function digits(value: number): string {
  return Math.abs(value) >= 100 ? value.toFixed(0) : Math.abs(value) >= 10 ? value.toFixed(1) : value.toFixed(2);
}

/** The rows of the validation table; an engine that does not run has no computed figure. */
export function validationRows(measured: readonly MeasuredValue[]): ValidationRow[] {
  const figures = referenceFigures(measured, calibratedConstants(), 'full');
  return measured.map((m, i) => {
    const computed = figures[i];
    return {
      engine: m.engine,
      quantity: m.quantity,
      unit: m.unit,
      measuredLow: m.low,
      measuredHigh: m.high,
      computed: computed === null ? null : Number(computed.toPrecision(4)),
      acceptLow: m.acceptLow,
      acceptHigh: m.acceptHigh,
      within: computed !== null && computed >= m.acceptLow && computed <= m.acceptHigh,
      role: m.role,
      source: m.source,
    };
  });
}

function sweepRows(): SweepRow[] {
  const engines: { make: (s?: SweptDetails) => Engine; base: SweptDetails }[] = [
    { make: droneEngine, base: ASSUMED.drone },
    { make: engine22Inch, base: ASSUMED.inch22 },
    { make: engine50Cm, base: ASSUMED.cm50 },
  ];
  return engines.flatMap(({ make, base }) =>
    SWEEP.map(({ detail, label, factors }) => {
      const runs = factors.map((f) => simulate(make({ ...base, [detail]: base[detail] * f })).running);
      const alive = runs.filter((r) => r !== null);
      const span = (f: (r: NonNullable<(typeof runs)[number]>) => number): [number, number] | null =>
        alive.length === 0 ? null : [Math.min(...alive.map(f)), Math.max(...alive.map(f))];
      return {
        engine: make().name,
        detail: label,
        thrust: span((r) => r.thrust),
        frequency: span((r) => r.frequency),
        tsfc: span((r) => r.tsfc * TSFC_IN_POUNDS),
        running: `${alive.length} of ${runs.length}`,
      };
    }),
  );
}

function markdown(rows: readonly ValidationRow[], sweeps: readonly SweepRow[], grids: readonly GridRow[]): string {
  const percent = (v: number) => `${v > 0 ? '+' : ''}${v.toFixed(1)}${Math.abs(v) > GRID_BAR ? ' **beyond**' : ''}`;
  const range = (a: number, b: number) => (a === b ? digits(a) : `${digits(a)}–${digits(b)}`);
  const span = (s: [number, number] | null) => (s ? range(s[0], s[1]) : '—');
  return [
    '| engine | quantity | measured | computed | accepted | inside | role | source |',
    '|---|---|---|---|---|---|---|---|',
    ...rows.map(
      (r) =>
        `| ${r.engine} | ${r.quantity}${r.unit && r.unit !== '1 = yes' ? `, ${r.unit}` : ''} | ${range(r.measuredLow, r.measuredHigh)} | ${r.computed === null ? 'does not run' : digits(r.computed)} | ${range(r.acceptLow, r.acceptHigh)} | ${r.within ? 'yes' : '**no**'} | ${r.role} | ${r.source} |`,
    ),
    '',
    'What no source gives was swept, not tuned; the spread that it causes:',
    '',
    '| engine | detail | thrust, N | frequency, Hz | TSFC, lb/(lbf h) | running |',
    '|---|---|---|---|---|---|',
    ...sweeps.map(
      (s) =>
        `| ${s.engine} | ${s.detail} | ${span(s.thrust)} | ${span(s.frequency)} | ${span(s.tsfc)} | ${s.running} |`,
    ),
    '',
    `What twice as many cells change; the bar is ${GRID_BAR} %:`,
    '',
    '| engine | cells | thrust, % | frequency, % | TSFC, % |',
    '|---|---|---|---|---|',
    ...grids.map(
      (g) => `| ${g.engine} | ${g.cells} | ${percent(g.thrust)} | ${percent(g.frequency)} | ${percent(g.tsfc)} |`,
    ),
  ].join('\n');
}

async function main(args: string[]): Promise<number> {
  const folder = packageFolder();
  const file = join(folder, 'shared', 'calibration', 'validation.json');
  const readme = join(folder, 'README.md');
  const measured = JSON.parse(
    readFileSync(join(folder, 'shared', 'calibration', 'measured.json'), 'utf8'),
  ) as MeasuredValue[];
  const rows = validationRows(measured);
  const json = `${JSON.stringify(rows, null, 2)}\n`;
  const text = readFileSync(readme, 'utf8');
  const [head, rest] = text.split(START);
  const tail = rest?.split(END)[1];
  if (tail === undefined) throw new Error(`README.md: the markers ${START} and ${END} are missing; put them back.`);
  const written = `${head}${START}\n${markdown(rows, sweepRows(), gridRows())}\n${END}${tail}`;
  if (args.includes('--check')) {
    const stale = [readFileSync(file, 'utf8') !== json && 'validation.json', text !== written && 'README.md'].filter(
      Boolean,
    );
    const say =
      stale.length > 0 ? `stale: ${stale.join(', ')}; run npm run validate` : 'computed against measured is current';
    process.stdout.write(`${say}\n`);
    return stale.length > 0 ? 1 : 0;
  }
  writeFileSync(file, json);
  writeFileSync(readme, written);
  const inside = rows.filter((r) => r.within).length;
  process.stdout.write(`${inside} of ${rows.length} figures lie inside what is accepted.\n`);
  return 0;
}

process.exitCode = await main(process.argv.slice(2));
