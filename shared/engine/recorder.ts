/** Records one cycle step by step and resamples it at equal times; keeps the mean state along the duct and the x–t field. */
import type { Machine } from './machine.ts';
import type { AxialProfile, CycleTraces, PressureField } from './performance.ts';
import type { Run } from './run.ts';

/** Points of a trace, and of the x–t field in time and along the duct. */
const TRACE_POINTS = 180;
const FIELD_TIMES = 72;
const FIELD_POSITIONS = 48;

type Series = Exclude<keyof CycleTraces, 'time'>;

/** Watches a run for one cycle. */
export class Recorder {
  private readonly times: number[] = [];
  private readonly dts: number[] = [];
  private readonly series: Record<Series, number[]> = {
    headPressure: [],
    exitPressure: [],
    valveLift: [],
    intakeFlow: [],
    exitFlow: [],
    heatRelease: [],
    thrust: [],
  };
  private readonly fieldRows: { time: number; pressure: Float64Array }[] = [];
  private readonly meanTemperature: Float64Array;
  private readonly peak: Float64Array;
  private readonly lowest: Float64Array;
  private readonly film: Float64Array;
  private readonly filmHeat: Float64Array;
  private readonly begin: number;
  private span = 0;
  private readonly run: Run;
  private readonly machine: Machine;
  private readonly fieldEvery: number;

  /** `period` is the expected length of the cycle, s. */
  constructor(run: Run, machine: Machine, period: number) {
    this.run = run;
    this.machine = machine;
    this.begin = run.time;
    this.fieldEvery = period / FIELD_TIMES;
    const n = machine.flow.grid.cells;
    this.meanTemperature = new Float64Array(n);
    this.peak = new Float64Array(n);
    this.lowest = new Float64Array(n).fill(Number.POSITIVE_INFINITY);
    this.film = new Float64Array(n);
    this.filmHeat = new Float64Array(n);
  }

  /** Notes the step just taken. */
  note(): void {
    const r = this.run.report;
    const { flow, sources } = this.machine;
    const n = flow.grid.cells;
    this.times.push(r.time - this.begin);
    this.dts.push(r.dt);
    this.series.headPressure.push(r.chamberPressure);
    this.series.exitPressure.push(r.exitPressure);
    this.series.valveLift.push(r.lift);
    this.series.intakeFlow.push(r.intakeFlow);
    this.series.exitFlow.push(r.exitFlow);
    this.series.heatRelease.push(r.heatRelease);
    this.series.thrust.push(r.thrust);
    this.span += r.dt;
    for (let i = 0; i < n; i++) {
      this.meanTemperature[i] += flow.temperature[i] * r.dt;
      const p = flow.pressure[i];
      if (p > this.peak[i]) this.peak[i] = p;
      if (p < this.lowest[i]) this.lowest[i] = p;
    }
    // The walls' own books are cleared at the end of the cycle; keep their last content.
    if (sources.filmTime[0] > 0) {
      this.film.set(sources.filmTime);
      this.filmHeat.set(sources.filmHeat);
    }
    const last = this.fieldRows[this.fieldRows.length - 1];
    if (!last || r.time - this.begin - last.time >= this.fieldEvery) {
      this.fieldRows.push({ time: r.time - this.begin, pressure: Float64Array.from(flow.pressure) });
    }
  }

  traces(): CycleTraces {
    const end = this.times[this.times.length - 1];
    const time = Array.from({ length: TRACE_POINTS }, (_, n) => (end * n) / (TRACE_POINTS - 1));
    const at = (values: number[]) => binned(this.times, values, this.dts, time);
    const s = this.series;
    return {
      time,
      headPressure: at(s.headPressure),
      exitPressure: at(s.exitPressure),
      valveLift: at(s.valveLift),
      intakeFlow: at(s.intakeFlow),
      exitFlow: at(s.exitFlow),
      heatRelease: at(s.heatRelease),
      thrust: at(s.thrust),
    };
  }

  /** Mean state per cell inside the metal (cells of the end corrections are left out). */
  profile(): AxialProfile {
    const { flow, sources } = this.machine;
    const { grid } = flow;
    const keep = Array.from({ length: grid.cells }, (_, i) => i).filter((i) => grid.wallArea[i] > 0);
    const pick = (f: (i: number) => number) => keep.map(f);
    return {
      position: pick((i) => grid.position[i]),
      diameter: pick((i) => grid.diameter[i]),
      gasTemperature: pick((i) => this.meanTemperature[i] / this.span),
      effectiveGasTemperature: pick((i) => (this.film[i] > 0 ? this.filmHeat[i] / this.film[i] : flow.temperature[i])),
      filmCoefficient: pick((i) => this.film[i] / this.span),
      wallTemperature: pick((i) => sources.wallTemperature[i]),
      peakPressure: pick((i) => this.peak[i]),
      lowestPressure: pick((i) => this.lowest[i]),
    };
  }

  field(): PressureField {
    const { grid } = this.machine.flow;
    const every = Math.max(1, Math.round(grid.cells / FIELD_POSITIONS));
    const keep: number[] = [];
    for (let i = 0; i < grid.cells; i += every) keep.push(i);
    return {
      position: keep.map((i) => grid.position[i]),
      time: this.fieldRows.map((r) => r.time),
      pressure: this.fieldRows.map((r) => keep.map((i) => r.pressure[i])),
    };
  }
}

/** Time-weighted mean of the samples around each wanted time; keeps impulses such as thrust honest. */
function binned(times: number[], values: number[], dts: number[], wanted: number[]): number[] {
  const half = (wanted[1] - wanted[0]) / 2;
  const out: number[] = [];
  let n = 0;
  let held = values[0];
  for (const t of wanted) {
    let sum = 0;
    let weight = 0;
    while (n < times.length && times[n] <= t + half) {
      sum += values[n] * dts[n];
      weight += dts[n];
      n++;
    }
    if (weight > 0) held = sum / weight;
    out.push(held);
  }
  return out;
}

/** From the start of suction to a tenth of full lift, s; null when the valve never gets there. */
export function openingDelay(traces: CycleTraces, ambient: number, fullLift: number): number | null {
  const n = traces.time.length;
  let start = -1;
  for (let i = 1; i < n && start < 0; i++) {
    if (traces.headPressure[i - 1] >= ambient && traces.headPressure[i] < ambient) start = i;
  }
  if (start < 0) return null;
  for (let j = 0; j < n; j++) {
    const i = (start + j) % n;
    if (traces.valveLift[i] >= 0.1 * fullLift) return (j * traces.time[n - 1]) / (n - 1);
  }
  return null;
}

/** Phase of the heat release's centre after the pressure peak, degrees in −180 … 180. */
export function heatReleasePhase(traces: CycleTraces): number {
  const n = traces.time.length;
  let x = 0;
  let y = 0;
  let peak = 0;
  for (let i = 0; i < n; i++) {
    const a = (2 * Math.PI * i) / n;
    x += traces.heatRelease[i] * Math.cos(a);
    y += traces.heatRelease[i] * Math.sin(a);
    if (traces.headPressure[i] > traces.headPressure[peak]) peak = i;
  }
  const phase = (Math.atan2(y, x) * 180) / Math.PI - (360 * peak) / n;
  return ((((phase + 180) % 360) + 360) % 360) - 180;
}
