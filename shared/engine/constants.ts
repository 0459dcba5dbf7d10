/**
 * The model constants: one set for every engine and every architecture.
 *
 * Values and standard errors come from the calibration file; names, meanings and sources stand here. A standard-normal draw
 * per constant moves it by its standard error (log-normally, so that signs never change).
 */
import calibrated from '../calibration/constants.json' with { type: 'json' };

export interface ModelConstants {
  /** Eddy size over local bore, ℓ = c D. */
  eddySize: number;
  /** Axial turbulent mixing D_t = C √k ℓ. */
  axialMixing: number;
  /** Decay of turbulence ε = C k^1.5/ℓ. */
  turbulenceDecay: number;
  /** Share of the kinetic energy of inflow jets that becomes k. */
  jetTurbulence: number;
  /** Length over which inflow jets end, chamber diameters. */
  jetReach: number;
  /** Ignition delay by mixing τ = C ℓ/√k. */
  ignitionMixing: number;
  /** Chemical part of the delay τ = τ₁ exp(T_a/T − T_a/1000 K): s and K. */
  chemicalTime: number;
  activationTemperature: number;
  /** Jet speed at which stretch halves the growth of ignition progress, m/s. */
  quenchSpeed: number;
  /** Burning rate C √k/ℓ. */
  burnRate: number;
  /** How much burnt gas burning needs: B · products. */
  productNeed: number;
  /** Fanning friction factor. */
  friction: number;
  /** Weight of k beside u² in the speed that makes friction and wall heat flux. */
  wallTurbulence: number;
  /** Discharge coefficient of reed ports. */
  reedDischarge: number;
  /** Dynamic heads lost by inflow at a thin lip. */
  thinLipLoss: number;
}

export type ConstantName = keyof ModelConstants;

interface ConstantNote {
  meaning: string;
  source: string;
}

/** What each constant is and where it comes from. Order is the order of draws. */
export const CONSTANT_NOTES: Record<ConstantName, ConstantNote> = {
  eddySize: { meaning: 'eddy size over local bore', source: 'mixing length of pipe flow near 0.1 D; turbulence textbooks' },
  axialMixing: { meaning: 'axial turbulent mixing, D_t = C √k ℓ', source: 'fitted' },
  turbulenceDecay: { meaning: 'decay of turbulence energy, C k^1.5/ℓ', source: 'order of one for decaying turbulence; textbooks' },
  jetTurbulence: { meaning: 'share of jet kinetic energy that becomes turbulence', source: 'fitted' },
  jetReach: { meaning: 'reach of inflow jets, chamber diameters', source: 'common practice, no source' },
  ignitionMixing: { meaning: 'ignition delay by mixing, C ℓ/√k', source: 'fitted' },
  chemicalTime: { meaning: 'chemical delay at 1000 K, s', source: 'fitted' },
  activationTemperature: { meaning: 'activation temperature of the chemical delay, K', source: 'fitted; below that of pure mixtures, since fresh gas lights where it touches gas hotter than the mean of its cell' },
  quenchSpeed: { meaning: 'jet speed that halves ignition, m/s', source: 'fitted' },
  burnRate: { meaning: 'burning rate, C √k/ℓ', source: 'fitted; eddy-dissipation models use about 4' },
  productNeed: { meaning: 'burnt gas that burning needs', source: 'eddy-dissipation models use 0.5 of products over (1 + AFR); textbooks' },
  friction: { meaning: 'Fanning friction factor', source: 'smooth to slightly rough pipe at Re 1e5; textbooks' },
  wallTurbulence: { meaning: 'weight of k in wall friction and heat flux', source: 'fitted; pulsating flow raises the Nusselt number up to 2.5 times, Combust. Flame 77 (1989) 359' },
  reedDischarge: { meaning: 'discharge coefficient of reed ports', source: 'reed-valve ports 0.55–0.75; from memory, medium confidence' },
  thinLipLoss: { meaning: 'entry loss of a thin lip, dynamic heads', source: 'thin lip 0.5–1; hydraulics handbooks' },
};

export const MODEL_CONSTANT_NAMES = Object.keys(CONSTANT_NOTES) as ConstantName[];

interface CalibratedConstant {
  value: number;
  /** Standard error of the natural logarithm. */
  logError: number;
}

/** The calibrated values. */
export function calibratedConstants(): ModelConstants {
  return drawConstants(MODEL_CONSTANT_NAMES.map(() => 0));
}

/**
 * Constants moved by standard-normal draws, one each in the order of MODEL_CONSTANT_NAMES: value · exp(logError · draw).
 * @throws RangeError when the number of draws is wrong.
 */
export function drawConstants(normals: readonly number[]): ModelConstants {
  if (normals.length !== MODEL_CONSTANT_NAMES.length) {
    throw new RangeError(`expected ${MODEL_CONSTANT_NAMES.length} draws, one a model constant, but got ${normals.length}`);
  }
  const table = calibrated as Record<ConstantName, CalibratedConstant>;
  const constants = {} as ModelConstants;
  MODEL_CONSTANT_NAMES.forEach((name, n) => {
    constants[name] = table[name].value * Math.exp(table[name].logError * normals[n]);
  });
  return constants;
}

/** Each constant with its value, standard error and source, for reports. */
export function constantsTable(): { name: ConstantName; value: number; standardError: number; meaning: string; source: string }[] {
  const table = calibrated as Record<ConstantName, CalibratedConstant>;
  return MODEL_CONSTANT_NAMES.map((name) => ({
    name,
    value: table[name].value,
    standardError: table[name].value * table[name].logError,
    ...CONSTANT_NOTES[name],
  }));
}
