/** Computes every figure of the measured-values file with the model, for calibration and validation. */
import { augmentation } from '../../shared/augmenter/augmentation.ts';
import {
  ASSUMED,
  droneEngine,
  engine22Inch,
  engine50Cm,
  oneLargePoppet,
  scaled,
  valvelessUTube,
} from '../../shared/calibration/reference-engines.ts';
import type { ModelConstants } from '../../shared/engine/constants.ts';
import type { Engine } from '../../shared/engine/engine.ts';
import type { RunningPerformance } from '../../shared/engine/performance.ts';
import { type ModelFidelity, simulate } from '../../shared/engine/simulate.ts';

export interface MeasuredValue {
  id: string;
  engine: string;
  quantity: string;
  unit: string;
  low: number;
  high: number;
  acceptLow: number;
  acceptHigh: number;
  role: 'fitted' | 'checked';
  source: string;
}

const ATMOSPHERE = 101325;
const STANDARD_GRAVITY = 9.80665;
/** kg/(N s) to lb/(lbf h). */
export const TSFC_IN_POUNDS = 35303.94;

const ENGINES: Record<string, () => Engine> = {
  drone: () => droneEngine(),
  '22-inch': () => engine22Inch(),
  '50-cm': () => engine50Cm(),
  valveless: () => valvelessUTube(),
  'drone × 0.4': () => scaled(droneEngine(), 0.4),
  'drone × 2': () => scaled(droneEngine(), 2),
  'one large poppet': () => oneLargePoppet(),
};

/** The figures of the wanted rows; null where the engine does not run. Each engine is simulated once. */
export function referenceFigures(
  wanted: readonly MeasuredValue[],
  constants: ModelConstants,
  fidelity: ModelFidelity,
): (number | null)[] {
  const cache = new Map<string, RunningPerformance | null>();
  const run = (key: string, make: () => Engine): RunningPerformance | null => {
    if (!cache.has(key)) cache.set(key, simulate(make(), { fidelity, constants }).running);
    return cache.get(key) ?? null;
  };
  return wanted.map((row) => {
    if (row.quantity === 'augmentation') return augmentationFigure(row.engine);
    const lean = /^runs at φ ([\d.]+)$/.exec(row.quantity);
    if (lean) {
      const phi = Number(lean[1]);
      return run(`drone ${phi}`, () => droneEngine({ ...ASSUMED.drone, equivalenceRatio: phi })) ? 1 : 0;
    }
    const r = run(row.engine, ENGINES[row.engine]);
    if (row.quantity === 'runs') return r ? 1 : 0;
    if (!r) return null;
    switch (row.quantity) {
      case 'thrust':
        return r.thrust;
      case 'frequency':
        return r.frequency;
      case 'TSFC':
        return r.tsfc * TSFC_IN_POUNDS;
      case 'fuel specific impulse':
        return r.thrust / (r.fuelFlow * STANDARD_GRAVITY);
      case 'peak gauge pressure':
        return (r.peakPressure - ATMOSPHERE) / 1e5;
      case 'peak pressure':
        return r.peakPressure / ATMOSPHERE;
      case 'lowest pressure':
        return r.lowestPressure / ATMOSPHERE;
      case 'intake share of thrust':
        return r.thrustSplit.intake / r.bareThrust;
      case 'peak pressure change': {
        const base = run('drone', ENGINES.drone);
        return base ? (r.peakPressure - base.peakPressure) / 1e5 : null;
      }
      default:
        throw new RangeError(`the measured-values file asks for '${row.quantity}', which no rule computes`);
    }
  });
}

/** The published size: D = 2.46 d, L = 10 d, gap 1 d, hot jet of a third of the air's density. */
function augmentationFigure(engine: string): number {
  const d = 0.165;
  const taper = engine.startsWith('tapered') ? 1.2 : 1;
  return augmentation({ diameter: 2.46 * d, length: 10 * d, gap: d, taper }, d, 0.3).ratio;
}
