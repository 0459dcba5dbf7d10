/** One limit cycle as CSV: a column a quantity, its SI unit in the name. */
import type { CycleTraces } from '../../shared/engine/performance.ts';

const COLUMNS: readonly [keyof CycleTraces, string][] = [
  ['time', 'time_s'],
  ['headPressure', 'head_pressure_Pa'],
  ['exitPressure', 'exit_pressure_Pa'],
  ['valveLift', 'valve_lift_m'],
  ['intakeFlow', 'intake_flow_kg_per_s'],
  ['exitFlow', 'exit_flow_kg_per_s'],
  ['heatRelease', 'heat_release_W'],
  ['thrust', 'thrust_N'],
];

export function traceCsv(traces: CycleTraces): string {
  const rows = traces.time.map((_, i) => COLUMNS.map(([name]) => String(traces[name][i])).join(','));
  return `${[COLUMNS.map(([, header]) => header).join(','), ...rows].join('\n')}\n`;
}
