/** Performance of a running engine: one recorded cycle for the curves, averages over the last groups of cycles for the figures. */
import { augmentation } from '../augmenter/augmentation.ts';
import type { Attempt } from './attempt.ts';
import { audit } from './cycle-audit.ts';
import type { Engine } from './engine.ts';
import type { RunningPerformance } from './performance.ts';
import { drift } from './periodicity.ts';
import { heatReleasePhase, openingDelay, Recorder } from './recorder.ts';
import type { RunSettings } from './run.ts';
import { valveMotion } from './valve-motion.ts';

/** Runs one more cycle with a recorder and averages the last groups; null when the engine dies meanwhile. */
export function measure(
  { run, machine, end }: Attempt,
  settings: RunSettings,
  withField: boolean,
): RunningPerformance | null {
  const l = run.ledger;
  // The recorded cycle completes the last group: an even number, so that of two alternating kinds of cycle neither counts twice.
  const from = Math.max(0, l.count - settings.group * (end === 'limit cycle' ? 1 : 2));
  const meanPeriod = l.between(from, l.count - 1, 'time') / (l.count - 1 - from);
  const recorder = new Recorder(run, machine, meanPeriod);
  run.measured = true;
  const before = l.count;
  while (l.count === before) {
    const state = run.step();
    if (state === 'died' || state === 'not finite') return null;
    recorder.note();
    if (l.full) break;
  }
  const to = l.count - 1;
  const span = l.between(from, to, 'time');
  const cycles = to - from;
  const { engine, fuel } = machine;
  const rate = (c: Parameters<typeof l.between>[2]) => l.between(from, to, c) / span;
  const exhaust = rate('exhaustImpulse');
  const intake = rate('intakeImpulse');
  const bareThrust = exhaust + intake;
  const fuelFlow = rate('fuelIn');
  const airFlow = rate('airIn');
  if (!(bareThrust > 0 && fuelFlow > 0 && airFlow > 0)) return null;
  const exitDiameter = engine.sections[engine.sections.length - 1].endDiameter;
  const density = jetDensityRatio(l.between(from, to, 'energyOut') / l.between(from, to, 'massOut'), engine);
  const augmented = engine.augmenter ? augmentation(engine.augmenter, exitDiameter, density) : null;
  const gain = augmented?.ratio ?? 1;
  // Only what leaves the exhaust passes the augmenter.
  const thrust = intake + exhaust * gain;
  const peaks = Array.from({ length: cycles }, (_, n) => l.at(from + 1 + n, 'peakPressure'));
  const meanPeak = peaks.reduce((a, b) => a + b, 0) / cycles;
  const spread = Math.sqrt(peaks.reduce((a, b) => a + (b - meanPeak) ** 2, 0) / cycles);
  const traces = recorder.traces();
  const ambient = engine.site.pressure;
  const delay = machine.valve ? openingDelay(traces, ambient, machine.valve.stopLift) : null;
  let lowest = Number.POSITIVE_INFINITY;
  let peakAir = 0;
  for (let n = from + 1; n <= to; n++) {
    lowest = Math.min(lowest, l.at(n, 'lowestPressure'));
    peakAir = Math.max(peakAir, l.at(n, 'peakAirFlow'));
  }
  const suctionTime = l.between(from, to, 'suctionTime');
  return {
    frequency: cycles / span,
    bareThrust,
    thrust,
    augmentation: thrust / bareThrust,
    augmenterNote: augmented?.note ?? null,
    airFlow,
    fuelFlow,
    tsfc: fuelFlow / thrust,
    combustionEfficiency: rate('heatReleased') / (fuelFlow * fuel.lowerHeatingValue),
    equivalenceRatio: (fuelFlow * fuel.stoichiometricAirFuelRatio) / airFlow,
    peakPressure: meanPeak,
    meanPressure: rate('pressureIntegral'),
    lowestPressure: lowest,
    cycleVariation: spread / Math.max(1e-9, meanPeak - ambient),
    specificThrust: thrust / airFlow,
    thrustSplit: { intake, exhaust },
    heatReleasePhase: heatReleasePhase(traces),
    peakAirFlow: peakAir,
    meanSuction: suctionTime > 0 ? l.between(from, to, 'suctionIntegral') / suctionTime : 0,
    valve: valveMotion(run, machine, from, to, delay),
    traces,
    profile: recorder.profile(),
    field: withField ? recorder.field() : null,
    audits: audit(
      run,
      from,
      to,
      bareThrust,
      drift(l, run.cyclesWhenLeftAlone, settings.group, engine.site.pressure),
      settings,
      end,
    ),
  };
}

/** Mean heat capacity of exhaust gas between 25 °C and its temperature, J/(kg K), and its gas constant over that of air. */
const EXHAUST_HEAT_CAPACITY = 1250;
const EXHAUST_GAS_CONSTANT = 1.015;

/** Density of the exhaust jet over that of the outside air, from the mean total enthalpy (zero at 25 °C) of what leaves, J/kg. */
function jetDensityRatio(enthalpy: number, engine: Engine): number {
  const temperature = Math.max(engine.site.temperature, 298.15 + enthalpy / EXHAUST_HEAT_CAPACITY);
  return engine.site.temperature / (EXHAUST_GAS_CONSTANT * temperature);
}
