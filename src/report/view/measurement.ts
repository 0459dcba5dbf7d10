/** The measurement sheet: what to measure, with the expected value and band beside each blank. */
import type { Band } from '../../../shared/checks/check.ts';
import type { Candidate } from '../../ranking/results.ts';
import { anchor } from '../format/escape.ts';
import { fixed } from '../format/number.ts';
import { displayUnits, distance, metric } from '../format/quantity.ts';
import { sentenceCase } from '../format/sentence-case.ts';
import { bandFigure, frequencyBand, fuelFlowBand, lifeBand, thrustBand, tsfcBand } from './key-figures.ts';

export interface MeasurementRow {
  quantity: string;
  where: string;
  how: string;
  /** Scale of the instrument, "0 to 5 bar". */
  range: string;
  expected: string;
  expectedImperial: string;
  unit: string;
}

export interface MeasurementSheet {
  candidate: string;
  anchor: string;
  architecture: string;
  rows: MeasurementRow[];
}

/** Next of 1, 1.5, 2, 3, 5, 8 × 10ⁿ above a value: scales as instruments have them. */
export function scaleAbove(value: number): number {
  if (!(value > 0)) return 1;
  const decade = 10 ** Math.floor(Math.log10(value));
  return ([1, 1.5, 2, 3, 5, 8, 10].find((step) => step * decade >= value) ?? 10) * decade;
}

/** Instrument scale that reaches half again above the expected value (common practice, no source). */
function instrument(value: number | null, si: string): string {
  if (value === null) return '';
  const { metric: to } = displayUnits(si, value);
  const top = scaleAbove(value * to.factor * 1.5);
  return `0 to ${fixed(top, top < 1 ? 2 : top < 10 && !Number.isInteger(top) ? 1 : 0)}\u00a0${to.symbol}`;
}

function bandRow(quantity: string, where: string, how: string, band: Band | null, si: string): MeasurementRow {
  const figure = bandFigure(band, si);
  return {
    quantity,
    where,
    how,
    range: instrument(band?.high ?? null, si),
    expected: figure.metric,
    expectedImperial: figure.imperial,
    unit: band ? displayUnits(si, band.median).metric.symbol : '',
  };
}

function point(value: number | undefined): Band | null {
  return value === undefined ? null : { low: value, median: value, high: value };
}

export function measurementSheet(c: Candidate): MeasurementSheet {
  const { running } = c.performance;
  const { engine, assessment } = c;
  const walls = running?.profile.wallTemperature ?? [];
  const hottest = walls.length > 0 ? Math.max(...walls) : null;
  const hottestAt = hottest === null || !running ? null : running.profile.position[walls.indexOf(hottest)];
  const valveless = engine.intake.kind === 'valveless';
  const head = valveless ? 'chamber wall, short tube' : 'chamber wall behind the valve plate, short tube';
  const rows: MeasurementRow[] = [
    bandRow(
      'Frequency',
      'beside the engine',
      'microphone and recorder; count cycles over a second',
      frequencyBand(c),
      'Hz',
    ),
    bandRow('Thrust', 'thrust stand', 'load cell or spring scale, damped', thrustBand(c), 'N'),
    bandRow('Fuel flow', 'fuel supply', 'weigh the supply before and after a timed run', fuelFlowBand(c), 'kg/s'),
    bandRow('TSFC', '', 'fuel flow over thrust', tsfcBand(c), 'kg/(N s)'),
    bandRow(
      'Peak chamber pressure, gauge',
      head,
      'fast transducer with cooled line',
      running ? point(running.peakPressure - engine.site.pressure) : null,
      'Pa',
    ),
    bandRow(
      'Lowest chamber pressure, below outside air',
      head,
      'same transducer',
      running ? point(engine.site.pressure - running.lowestPressure) : null,
      'Pa',
    ),
    {
      ...bandRow(
        'Hottest wall',
        hottestAt === null ? 'chamber' : `${metric(hottestAt, 'm')} from the head`,
        'welded thermocouple or infrared thermometer',
        point(hottest ?? undefined),
        'K',
      ),
      range: '0 to 1,200\u00a0°C',
    },
    {
      ...bandRow(
        'Sound level',
        assessment.noise ? `${distance(assessment.noise.distance)} away` : '',
        'sound level meter, A-weighted, slow',
        null,
        'dB(A)',
      ),
      range: '60 to 140\u00a0dB(A)',
      expected: assessment.noise
        ? `${fixed(assessment.noise.level, 0)} ± ${fixed(assessment.noise.uncertainty, 0)}\u00a0dB(A)`
        : '–',
      unit: 'dB(A)',
    },
    {
      ...bandRow(
        valveless ? 'Running time of the shell so far' : 'Running time of the valves so far',
        '',
        `stop watch; look at the ${valveless ? 'shell' : 'valves'} after each run`,
        lifeBand(c),
        's',
      ),
      range: 'stop watch',
    },
  ];
  return { candidate: c.id, anchor: `measure-${anchor(c.id)}`, architecture: sentenceCase(c.architecture.label), rows };
}
