/** The charts of a candidate sheet, each with its caption; those without data are left out. */
import type { Candidate } from '../../ranking/results.ts';
import { cycleTraces } from '../charts/cycle-traces.ts';
import { type ForceRow, forceBars } from '../charts/force-bars.ts';
import { pressureField } from '../charts/pressure-field.ts';
import { tornado } from '../charts/tornado.ts';
import { type TemperatureLimit, wallTemperature } from '../charts/wall-temperature.ts';
import { anchor } from '../format/escape.ts';
import { type FigureView, figureView } from './figure.ts';

export interface CandidateCharts {
  traces: FigureView | null;
  field: FigureView | null;
  wall: FigureView | null;
  valve: FigureView | null;
  tornado: FigureView | null;
}

/** Limits of temperature among the checks of the shell. */
export function temperatureLimits(candidate: Candidate): TemperatureLimit[] {
  return candidate.assessment.checks.flatMap((check) =>
    check.unit === 'K' && check.limit !== null && check.id.startsWith('shell-')
      ? [{ name: check.title, limit: check.limit }]
      : [],
  );
}

function valveRows(candidate: Candidate): ForceRow[] {
  const valve = candidate.performance.running?.valve;
  if (!valve) return [];
  const rows: ForceRow[] = [
    {
      name: 'Force on one valve, mean over suction',
      offered: valve.forceOffered,
      needed: valve.forceNeeded,
      unit: 'N',
      offeredName: 'suction offers',
      neededName: 'valve needs',
    },
  ];
  if (valve.openingDelay !== null)
    rows.push({
      name: 'Time to a tenth of full lift',
      offered: valve.suctionWindow,
      needed: valve.openingDelay,
      unit: 's',
      offeredName: 'suction lasts',
      neededName: 'valve takes',
    });
  return rows;
}

export function candidateCharts(candidate: Candidate): CandidateCharts {
  const { running } = candidate.performance;
  const id = anchor(candidate.id);
  const intake = candidate.engine.intake;
  const stop = intake.kind === 'reed' ? intake.stopLift : intake.kind === 'poppet' ? intake.lift : null;
  return {
    traces: running
      ? figureView(
          `figure-${id}-cycle`,
          cycleTraces(`${id}-cycle`, running.traces, candidate.engine.site.pressure, stop),
          `${candidate.id}: one cycle of the running engine. Full line and dashed line are named at their right ends.`,
        )
      : null,
    field: running?.field
      ? figureView(
          `figure-${id}-field`,
          pressureField(`${id}-field`, running.field, running.profile.position, running.profile.diameter),
          `${candidate.id}: pressure over position and time, with the duct above to the same length. Darker is higher.`,
        )
      : null,
    wall: running
      ? figureView(
          `figure-${id}-wall`,
          wallTemperature(`${id}-wall`, running.profile, temperatureLimits(candidate)),
          `${candidate.id}: steady wall temperature against the limits of the sheet.`,
        )
      : null,
    valve: figureView(
      `figure-${id}-valve`,
      forceBars(`${id}-valve`, 'What the valve is offered and what it needs', valveRows(candidate)),
      `${candidate.id}: what suction offers one valve and what the valve needs. Each pair of bars has its own scale.`,
    ),
    tornado: figureView(
      `figure-${id}-moves`,
      tornado(`${id}-moves`, candidate.sensitivities),
      `${candidate.id}: what one step of each variable changes, strongest first. Filled bars to the right say more, hollow bars to the left less.`,
    ),
  };
}
