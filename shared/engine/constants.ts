/**
 * The model constants: one set for every engine and every architecture.
 *
 * Values and their joint uncertainty come from the calibration file; names, meanings, priors and sources stand here. Draws
 * are log-normal, so that signs never change.
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
  /** Value before fitting, and the standard error of its natural logarithm: what literature and judgement allow. */
  prior: number;
  priorLogError: number;
  meaning: string;
  source: string;
}

/** What each constant is and where it comes from. Order is the order of draws. */
export const CONSTANT_NOTES: Record<ConstantName, ConstantNote> = {
  eddySize: {
    prior: 0.1,
    priorLogError: 0.1,
    meaning: 'eddy size over local bore',
    source: 'mixing length of pipe flow near 0.1 D; turbulence textbooks',
  },
  axialMixing: { prior: 2, priorLogError: 0.4, meaning: 'axial turbulent mixing, D_t = C √k ℓ', source: 'fitted' },
  turbulenceDecay: {
    prior: 0.2,
    priorLogError: 0.4,
    meaning: 'decay of turbulence energy, C k^1.5/ℓ',
    source: 'order of one for decaying turbulence; textbooks',
  },
  jetTurbulence: {
    prior: 0.2,
    priorLogError: 0.4,
    meaning: 'share of jet kinetic energy that becomes turbulence',
    source: 'fitted',
  },
  jetReach: {
    prior: 0.9,
    priorLogError: 0.25,
    meaning: 'reach of inflow jets, chamber diameters',
    source: 'common practice, no source',
  },
  ignitionMixing: { prior: 2.2, priorLogError: 0.3, meaning: 'ignition delay by mixing, C ℓ/√k', source: 'fitted' },
  chemicalTime: { prior: 6e-5, priorLogError: 0.5, meaning: 'chemical delay at 1000 K, s', source: 'fitted' },
  activationTemperature: {
    prior: 1500,
    priorLogError: 0.25,
    meaning: 'activation temperature of the chemical delay, K',
    source:
      'fitted; below that of pure mixtures, since fresh gas lights where it touches gas hotter than the mean of its cell',
  },
  quenchSpeed: { prior: 35, priorLogError: 0.3, meaning: 'jet speed that halves ignition, m/s', source: 'fitted' },
  burnRate: {
    prior: 2.2,
    priorLogError: 0.3,
    meaning: 'burning rate, C √k/ℓ',
    source: 'fitted; eddy-dissipation models use about 4',
  },
  productNeed: {
    prior: 0.8,
    priorLogError: 0.4,
    meaning: 'burnt gas that burning needs',
    source: 'eddy-dissipation models use 0.5 of products over (1 + AFR); textbooks',
  },
  friction: {
    prior: 0.005,
    priorLogError: 0.15,
    meaning: 'Fanning friction factor',
    source: 'smooth to slightly rough pipe at Re 1e5; textbooks',
  },
  wallTurbulence: {
    prior: 2,
    priorLogError: 0.4,
    meaning: 'weight of k in wall friction and heat flux',
    source: 'fitted; pulsating flow raises the Nusselt number up to 2.5 times, Combust. Flame 77 (1989) 359',
  },
  reedDischarge: {
    prior: 0.6,
    priorLogError: 0.07,
    meaning: 'discharge coefficient of reed ports',
    source: 'reed-valve ports 0.55–0.75; from memory, medium confidence',
  },
  thinLipLoss: {
    prior: 0.8,
    priorLogError: 0.15,
    meaning: 'entry loss of a thin lip, dynamic heads',
    source: 'thin lip 0.5–1; hydraulics handbooks',
  },
};

export const MODEL_CONSTANT_NAMES = Object.keys(CONSTANT_NOTES) as ConstantName[];

interface CalibratedConstant {
  value: number;
  /** Row of the lower-triangular factor of the joint covariance of the logarithms: ln x = ln value + Σ logFactor · draws. */
  logFactor: number[];
}

/** The calibrated values. */
export function calibratedConstants(): ModelConstants {
  return drawConstants(MODEL_CONSTANT_NAMES.map(() => 0));
}

/**
 * Constants moved by standard-normal draws, one each in the order of MODEL_CONSTANT_NAMES: value · exp(Σ logFactor · draws),
 * so that constants which the measurements tie together move together.
 * @throws RangeError when the number of draws is wrong.
 */
export function drawConstants(normals: readonly number[]): ModelConstants {
  if (normals.length !== MODEL_CONSTANT_NAMES.length) {
    throw new RangeError(
      `expected ${MODEL_CONSTANT_NAMES.length} draws, one a model constant, but got ${normals.length}`,
    );
  }
  const table = calibrated as Record<ConstantName, CalibratedConstant>;
  const constants = {} as ModelConstants;
  MODEL_CONSTANT_NAMES.forEach((name) => {
    constants[name] =
      table[name].value * Math.exp(table[name].logFactor.reduce((sum, f, j) => sum + f * normals[j], 0));
  });
  return constants;
}

/** Each constant with its value, standard error and source, for reports. */
export function constantsTable(): {
  name: ConstantName;
  value: number;
  standardError: number;
  meaning: string;
  source: string;
}[] {
  const table = calibrated as Record<ConstantName, CalibratedConstant>;
  return MODEL_CONSTANT_NAMES.map((name) => ({
    name,
    value: table[name].value,
    standardError: table[name].value * Math.hypot(...table[name].logFactor),
    meaning: CONSTANT_NOTES[name].meaning,
    source: CONSTANT_NOTES[name].source,
  }));
}
