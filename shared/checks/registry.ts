/** Every check, in the order of the report. A new check is a file beside this one and a line here. */
import { bendRadius } from './bend-radius.ts';
import { booksBalance } from './books-balance.ts';
import { budget } from './budget.ts';
import { carbonMonoxide } from './carbon-monoxide.ts';
import { carburettorLoss } from './carburettor-loss.ts';
import { carburettorRating } from './carburettor-rating.ts';
import { coneAngle } from './cone-angle.ts';
import { cylinderEvaporation } from './cylinder-evaporation.ts';
import { engineRuns } from './engine-runs.ts';
import { fuelJet } from './fuel-jet.ts';
import { fuelMatch } from './fuel-match.ts';
import { fuelPressure } from './fuel-pressure.ts';
import { fuelRegulator } from './fuel-regulator.ts';
import { hotSurface } from './hot-surface.ts';
import { liquidDraw } from './liquid-draw.ts';
import { mass } from './mass.ts';
import { mixture } from './mixture.ts';
import { noiseExposure } from './noise-exposure.ts';
import { noiseStandOff } from './noise-stand-off.ts';
import { overallDiameter } from './overall-diameter.ts';
import { overallLength } from './overall-length.ts';
import { partCount } from './part-count.ts';
import { poppetFiringStress } from './poppet-firing-stress.ts';
import { poppetGuideWear } from './poppet-guide-wear.ts';
import { poppetHeadStress } from './poppet-head-stress.ts';
import { poppetStemStress } from './poppet-stem-stress.ts';
import { poppetWeld } from './poppet-weld.ts';
import { radiantHeat } from './radiant-heat.ts';
import { reedPortStress } from './reed-port-stress.ts';
import { reedRootStress } from './reed-root-stress.ts';
import { reedSeatStress } from './reed-seat-stress.ts';
import { reedStopStress } from './reed-stop-stress.ts';
import type { CheckRule } from './rule.ts';
import { runTime } from './run-time.ts';
import { seatImpact } from './seat-impact.ts';
import { shellCreep } from './shell-creep.ts';
import { shellExternalPressure } from './shell-external-pressure.ts';
import { shellHotYield } from './shell-hot-yield.ts';
import { shellOxidation } from './shell-oxidation.ts';
import { shellWastage } from './shell-wastage.ts';
import { smallestRoll } from './smallest-roll.ts';
import { startingFlow } from './starting-flow.ts';
import { startingPressure } from './starting-pressure.ts';
import { startingTank } from './starting-tank.ts';
import { steadyRunning } from './steady-running.ts';
import { stockSheet } from './stock-sheet.ts';
import { stockStrip } from './stock-strip.ts';
import { stopImpact } from './stop-impact.ts';
import { thermalGrowthCheck } from './thermal-growth.ts';
import { thickestCut } from './thickest-cut.ts';
import { thrust } from './thrust.ts';
import { tsfc } from './tsfc.ts';
import { valveFollows } from './valve-follows.ts';
import { valveLifeCheck } from './valve-life.ts';
import { valveTemperatureCheck } from './valve-temperature.ts';
import { weldability } from './weldability.ts';
import { widestSheet } from './widest-sheet.ts';

export interface CheckGroup {
  title: string;
  rules: readonly CheckRule[];
}

export const CHECK_GROUPS: readonly CheckGroup[] = [
  { title: 'Running', rules: [engineRuns, valveFollows, steadyRunning, mixture, booksBalance] },
  {
    title: 'Valve life',
    rules: [
      valveLifeCheck,
      seatImpact,
      stopImpact,
      valveTemperatureCheck,
      reedRootStress,
      reedStopStress,
      reedPortStress,
      reedSeatStress,
      poppetStemStress,
      poppetHeadStress,
      poppetFiringStress,
      poppetWeld,
      poppetGuideWear,
    ],
  },
  {
    title: 'Shell',
    rules: [shellHotYield, shellExternalPressure, shellCreep, shellOxidation, shellWastage, thermalGrowthCheck],
  },
  {
    title: 'Fuel supply',
    rules: [
      fuelMatch,
      cylinderEvaporation,
      liquidDraw,
      fuelRegulator,
      fuelPressure,
      fuelJet,
      runTime,
      carburettorRating,
      carburettorLoss,
    ],
  },
  { title: 'Starting air', rules: [startingPressure, startingFlow, startingTank] },
  {
    title: 'Fabrication',
    rules: [
      smallestRoll,
      widestSheet,
      thickestCut,
      coneAngle,
      bendRadius,
      weldability,
      stockSheet,
      stockStrip,
      partCount,
    ],
  },
  { title: 'Noise and people', rules: [noiseExposure, noiseStandOff, radiantHeat, hotSurface, carbonMonoxide] },
  { title: 'Envelope and brief', rules: [thrust, tsfc, overallLength, overallDiameter, mass, budget] },
];

export const CHECK_RULES: readonly CheckRule[] = CHECK_GROUPS.flatMap((group) => group.rules);
