/** What the model found about a running engine, as a table of figures. */
import type { Performance, RunningPerformance } from '../../../shared/engine/performance.ts';
import { fixed, percent, significant } from '../format/number.ts';
import { imperial, metric } from '../format/quantity.ts';
import type { DimensionRow } from './dimensions.ts';

function row(name: string, value: number | null, unit: string): DimensionRow {
  return { name, metric: metric(value, unit), imperial: imperial(value, unit) };
}

function text(name: string, value: string): DimensionRow {
  return { name, metric: value, imperial: '' };
}

export function performanceRows(running: RunningPerformance): DimensionRow[] {
  const { valve, thrustSplit } = running;
  return [
    row('Air flow', running.airFlow, 'kg/s'),
    row('Fuel flow', running.fuelFlow, 'kg/s'),
    text('Equivalence ratio', significant(running.equivalenceRatio, 2)),
    text('Combustion efficiency', percent(running.combustionEfficiency)),
    row('Peak chamber pressure, absolute', running.peakPressure, 'Pa'),
    row('Mean chamber pressure, absolute', running.meanPressure, 'Pa'),
    row('Lowest chamber pressure, absolute', running.lowestPressure, 'Pa'),
    text('Cycle-to-cycle variation of peak pressure', percent(running.cycleVariation)),
    row('Specific thrust', running.specificThrust, 'N s/kg'),
    ...(thrustSplit.intake === 0
      ? []
      : [row('Thrust at the intake', thrustSplit.intake, 'N'), row('Thrust at the exhaust', thrustSplit.exhaust, 'N')]),
    ...(running.augmentation === 1
      ? []
      : [
          row('Thrust without augmenter', running.bareThrust, 'N'),
          text('Augmentation', fixed(running.augmentation, 2)),
        ]),
    text('Heat release against pressure peak', `${fixed(running.heatReleasePhase, 0)}°`),
    ...(valve
      ? [
          row('Greatest lift', valve.peakLift, 'm'),
          row('Suction lasts', valve.suctionWindow, 's'),
          text('Mean opening during suction', percent(valve.openFraction)),
          row('Impact at the seat', valve.seatImpactSpeed, 'm/s'),
          row('Impact at the stop', valve.stopImpactSpeed, 'm/s'),
          row('Natural frequency of the valve', valve.naturalFrequency, 'Hz'),
          row('Pressure on the shut valve, at most', valve.peakSeatPressure, 'Pa'),
        ]
      : []),
  ];
}

/** Whether the books of the model balance, in one sentence. */
export function auditSentence(running: RunningPerformance): string {
  const { audits } = running;
  return (
    `Audit over the averaged cycles: mass closes to ${percent(audits.massError)}, energy to ${percent(audits.energyError)}, ` +
    `thrust by two ways to ${percent(audits.thrustError)}; ${audits.closed ? 'the audit is passed' : 'the audit is NOT passed, so treat these figures with care'}` +
    `${audits.limitCycleReached ? '.' : '; no steady cycle was reached.'}`
  );
}

/** The starts that were tried, for people. */
export function startSentences(performance: Performance): string[] {
  return performance.starts.map((s) => {
    const what = `${metric(s.airPressure, 'Pa')} gauge for ${metric(s.duration, 's')}`;
    return s.outcome === 'self-sustaining' ? `${what}: runs by itself` : `${what}: ${s.cause ?? s.outcome}`;
  });
}
