/**
 * How cost grows: processor time of designs, of cells along the duct, and of adding to a log that holds more and more.
 * `node src/cli/launch.mjs --entry bench-growth [--write]` prints the figures; with --write it draws them into
 * src/bench/growth.svg.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  droneEngine,
  engine50Cm,
  twelveSmallPoppets,
  valvelessUTube,
} from '../../shared/calibration/reference-engines.ts';
import { calibratedConstants } from '../../shared/engine/constants.ts';
import { makeMachine } from '../../shared/engine/machine.ts';
import { Run } from '../../shared/engine/run.ts';
import { simulate } from '../../shared/engine/simulate.ts';
import { startAttempts } from '../../shared/engine/start.ts';
import { packageFolder } from '../report/package-folder.ts';
import { RecordLog } from '../store/record-log.ts';
import { drawGrowth, type Growth } from './growth-chart.ts';

const REPEATS = 3;

/** Least user processor time of a few repeats, s. */
function cost(work: () => void): number {
  let least = Number.POSITIVE_INFINITY;
  for (let n = 0; n < REPEATS; n++) {
    const before = process.cpuUsage().user;
    work();
    least = Math.min(least, (process.cpuUsage().user - before) / 1e6);
  }
  return least;
}

/** A tenth of a second of one engine, eight cycles or so, run on and on. */
function ofCells(cells: number): number {
  const engine = droneEngine();
  const [start] = startAttempts(engine.sections, true);
  const machine = makeMachine(engine, calibratedConstants(), cells);
  const run = new Run(machine, start, { group: 4, tolerance: 0, minCycles: 1e6, maxCycles: 4000 });
  const until = (seconds: number) => {
    while (run.time < seconds) {
      const end = run.step();
      if (end) throw new Error(`the engine to be measured ended with "${end}"`);
    }
  };
  until(start.duration);
  let from = run.time;
  return cost(() => {
    until(from + 0.1);
    from += 0.1;
  });
}

function ofDesigns(count: number): number {
  const engines = [droneEngine(), engine50Cm(), valvelessUTube(), twelveSmallPoppets()];
  return cost(() => {
    for (let n = 0; n < count; n++) simulate(engines[n % engines.length], { fidelity: 'screen' });
  });
}

/** Adding 20,000 records, in batches of 200, to logs of growing size: s for each size. */
async function ofRecords(sizes: readonly number[]): Promise<Growth['points']> {
  const folder = mkdtempSync(join(tmpdir(), 'growth-'));
  try {
    const log = await RecordLog.open(join(folder, 'records.ndjson'));
    const record = (n: number) => ({ key: n.toString(16).padStart(64, '0'), value: { filler: 'x'.repeat(700), n } });
    let written = 0;
    const add = async (count: number, batch: number) => {
      for (const end = written + count; written < end; ) {
        const size = Math.min(batch, end - written);
        await log.append(Array.from({ length: size }, (_, i) => record(written + i)));
        written += size;
      }
    };
    const points: Growth['points'] = [];
    for (const size of sizes) {
      await add(size - written, 2000);
      const before = process.cpuUsage();
      await add(20_000, 200);
      const spent = process.cpuUsage(before);
      points.push({ x: size, seconds: (spent.user + spent.system) / 1e6 });
    }
    await log.close();
    return points;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

for (let n = 0; n < 2; n++) ofDesigns(4);
const growths: Growth[] = [
  {
    title: 'designs, coarse grid',
    power: 1,
    points: [4, 8, 16, 32, 64].map((x) => ({ x, seconds: ofDesigns(x) })),
  },
  {
    title: 'cells, a tenth of a second of one engine',
    power: 2,
    points: [32, 48, 96, 192, 384].map((x) => ({ x, seconds: ofCells(x) })),
  },
  {
    title: 'records stored, adding 20,000 more',
    power: 0,
    points: await ofRecords([30_000, 60_000, 120_000, 250_000, 500_000]),
  },
];
for (const { title, points } of growths) {
  const span = points[points.length - 1];
  const slope = Math.log(span.seconds / points[0].seconds) / Math.log(span.x / points[0].x);
  process.stdout.write(
    `${title}: ${points.map((p) => `${p.x}: ${p.seconds.toPrecision(3)} s`).join(', ')}; grows as the power ${slope.toFixed(2)}\n`,
  );
}
if (process.argv.includes('--write')) {
  const when = `${new Date().toISOString().slice(0, 10)}, ${cpus()[0]?.model.trim() ?? 'unknown processor'}, Node ${process.version}`;
  writeFileSync(join(packageFolder(), 'src', 'bench', 'growth.svg'), drawGrowth(growths, when));
}
