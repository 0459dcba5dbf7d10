/**
 * What happens inside each cell during one step, besides flow: wall friction and heat, loss in widenings, turbulence made and
 * decayed, ignition progress, burning.
 *
 *   friction    F = f ρ u √(u² + C_w k)/2 · S                      S: wall area of the cell
 *   wall heat   q = h S (T − T_w),  h = f ρ c_p √(u² + C_w k)/2 · Pr^{−2/3}        (Reynolds–Colburn analogy)
 *   turbulence  dk/dt = (friction + widening power)/m − C_ε k^{3/2}/ℓ,  ℓ = c D
 *   burning     ω = C_R √k/ℓ · min(Y_fuel, Y_air/AFR, B Y_products/(1 + AFR)) · S(χ)       (eddy dissipation; Magnussen &
 *               Hjertager, Proc. Combust. Inst. 16 (1977) 719)
 *
 * Sources follow the flow step and see the gas as that step leaves it: its velocity, and its temperature to first order in what
 * the step changed of energy and composition. (With the gas from before the step, the splitting lags by a step, which costs
 * a valveless engine on 144 cells 3 % of thrust.)
 */
import type { Flow } from '../duct/flow.ts';
import type { ModelConstants } from '../engine/constants.ts';
import type { Fuel } from '../gas/fuels.ts';
import { adoptSources, applySourcesByKernel } from '../kernel/sources-kernel.ts';
import { chemicalDelayTable, PROGRESS_FULL, PROGRESS_ONSET, stretchQuench } from './ignition.ts';

/** Prandtl number of combustion gases to the power −2/3: 0.72^(−2/3). */
const COLBURN = 1.245;
/** Smallest k, J/kg: keeps delay and burning rates finite in still gas. */
const TURBULENCE_FLOOR = 0.01;
/** Products that a spark counts as present, mass fraction. */
const SPARK_PRODUCTS = 0.08;

export interface CellSources {
  constants: ModelConstants;
  fuel: Fuel;
  /** Temperature of the inside wall, K, per cell. */
  wallTemperature: Float64Array;
  /** First cell beyond the chamber: jets quench ignition and sparks act only before it. */
  chamberStart: number;
  chamberEnd: number;
  sparkEnd: number;
  chemicalDelay: Float64Array;
  /** ∫h dt and ∫h T dt per cell since last cleared, J/(m² K) and J/m². */
  filmTime: Float64Array;
  filmHeat: Float64Array;
  /** Totals of the last call: J released, J to the wall, N s of friction on the gas (−x positive), N s lost in widenings. */
  heatReleased: number;
  wallHeat: number;
  frictionImpulse: number;
  wideningImpulse: number;
}

export function makeCellSources(flow: Flow, constants: ModelConstants, fuel: Fuel, wallStart: number): CellSources {
  const n = flow.grid.cells;
  const sources: CellSources = {
    constants,
    fuel,
    wallTemperature: new Float64Array(n).fill(wallStart),
    chamberStart: 0,
    chamberEnd: n,
    sparkEnd: n,
    chemicalDelay: chemicalDelayTable(
      flow.gas.temperatureMin,
      flow.gas.temperatureStep,
      flow.gas.intervals + 1,
      constants.chemicalTime,
      constants.activationTemperature,
    ),
    filmTime: new Float64Array(n),
    filmHeat: new Float64Array(n),
    heatReleased: 0,
    wallHeat: 0,
    frictionImpulse: 0,
    wideningImpulse: 0,
  };
  if (flow.kernel) adoptSources(flow.kernel, sources);
  return sources;
}

/**
 * Applies the sources of one step of dt seconds to the conserved variables; the primitives must be those from before the flow step.
 * `jet` is the present speed of inflow jets, m/s; `spark` is true while the plug fires.
 */
export function applyCellSources(flow: Flow, src: CellSources, dt: number, jet: number, spark: boolean): void {
  if (flow.kernel && flow.kernel.sources === src) {
    applySourcesByKernel(flow, flow.kernel, src, dt, jet, spark);
    return;
  }
  applyByLoop(flow, src, dt, jet, spark);
}

/** Apart, so that the choice above is small enough to be inlined where it is called: else each call boxes its numbers. */
function applyByLoop(flow: Flow, src: CellSources, dt: number, jet: number, spark: boolean): void {
  const c = src.constants;
  const { momentum, energy, fuelMass, productMass, turbulence, progress, mass } = flow;
  const { temperature, heatCapacity, internalEnergy, fuel, product, fuelEnergy, productEnergy, mixing } = flow;
  const { volume, wallArea, diameter, lossForward, lossBackward, faceArea, width } = flow.grid;
  const { wallTemperature, filmTime, filmHeat, chemicalDelay } = src;
  const n = flow.grid.cells;
  const gasT0 = flow.gas.temperatureMin;
  const perStep = 1 / flow.gas.temperatureStep;
  const lastKnot = flow.gas.intervals;
  const afr = src.fuel.stoichiometricAirFuelRatio;
  const perAfr = 1 / afr;
  const lhv = src.fuel.lowerHeatingValue;
  const productShare = c.productNeed / (1 + afr);
  const halfFriction = 0.5 * c.friction;
  const wallTurbulence = c.wallTurbulence;
  const quenched = stretchQuench(jet, c.quenchSpeed);
  const perRange = 1 / (PROGRESS_FULL - PROGRESS_ONSET);
  let heatReleased = 0;
  let wallHeat = 0;
  let frictionImpulse = 0;
  let wideningImpulse = 0;
  let mixingRate = 0;
  for (let i = 0; i < n; i++) {
    const rho = mass[i];
    const inv = 1 / rho;
    const v = volume[i];
    const perV = 1 / v;
    const u = momentum[i] * inv;
    const yf = fuelMass[i] * inv;
    const yp = productMass[i] * inv;
    const gained = energy[i] * inv - 0.5 * (u * u) - internalEnergy[i];
    const remixed = (yf - fuel[i]) * fuelEnergy[i] + (yp - product[i]) * productEnergy[i];
    const T = temperature[i] + (gained - remixed) / heatCapacity[i];
    let k = turbulence[i] * inv;
    if (k < TURBULENCE_FLOOR) k = TURBULENCE_FLOOR;
    const rootK = Math.sqrt(k);
    const eddy = c.eddySize * diameter[i];
    const turnover = rootK * (1 / eddy);
    const diffusion = c.axialMixing * rootK * eddy;
    mixing[i] = rho * diffusion;
    const perWidth = 1 / width[i];
    const spreading = diffusion * perWidth * perWidth;
    if (spreading > mixingRate) mixingRate = spreading;

    // Walls.
    const speed = Math.sqrt(u * u + wallTurbulence * k);
    const drag = halfFriction * rho * speed * wallArea[i];
    const friction = drag * u * dt;
    const film = halfFriction * rho * speed * (heatCapacity[i] + 287) * COLBURN;
    const heat = film * wallArea[i] * (T - wallTemperature[i]) * dt;
    filmTime[i] += film * dt;
    filmHeat[i] += film * T * dt;
    const share = u > 0 ? lossForward[i] : lossBackward[i];
    const step = faceArea[i + 1] - faceArea[i];
    const widening = share > 0 ? share * rho * u * Math.abs(u * step) * dt : 0;
    momentum[i] -= (friction + widening) * perV;
    frictionImpulse += friction;
    wideningImpulse += widening;
    wallHeat += heat;

    // Turbulence: what friction and widening take from the mean flow, less decay (implicit).
    const made = (friction + widening) * u * perV * inv;
    const kNew = (k + made) / (1 + c.turbulenceDecay * turnover * dt);
    turbulence[i] = rho * kNew;

    // Ignition progress and burning.
    const ya = 1 - yf - yp;
    let released = 0;
    if (ya > 1e-4) {
      const inChamber = i >= src.chamberStart && i < src.chamberEnd;
      const sparked = spark && i >= src.chamberStart && i < src.sparkEnd;
      let chi = progress[i] / (rho * ya);
      if (chi < 0) chi = 0;
      let delay = c.ignitionMixing / turnover;
      if (!sparked) {
        const x = (T - gasT0) * perStep;
        let j = x | 0;
        if (j >= lastKnot) j = lastKnot - 1;
        if (j < 0) j = 0;
        const w = x - j;
        delay += chemicalDelay[j] + w * (chemicalDelay[j + 1] - chemicalDelay[j]);
      }
      chi += (dt * (inChamber ? quenched : 1)) / delay;
      if (chi > 1) chi = 1;
      let burnt = 0;
      if (chi > PROGRESS_ONSET && yf > 1e-9) {
        let s = (chi - PROGRESS_ONSET) * perRange;
        s = s >= 1 ? 1 : s * s * (3 - 2 * s);
        const air = ya * perAfr;
        const hot = productShare * (sparked && yp < SPARK_PRODUCTS ? SPARK_PRODUCTS : yp);
        let least = yf < air ? yf : air;
        if (hot < least) least = hot;
        // Exact decay over the step keeps fuel and air from going negative.
        const rate = c.burnRate * turnover * s * dt;
        burnt = rho * least * (rate < 0.05 ? rate : 1 - Math.exp(-rate));
        fuelMass[i] -= burnt;
        productMass[i] += burnt * (1 + afr);
        released = burnt * lhv;
      }
      progress[i] = chi * (rho * ya - burnt * afr);
    } else {
      progress[i] = 0;
    }
    energy[i] += released - heat * perV;
    heatReleased += released * v;
  }
  src.heatReleased = heatReleased;
  src.wallHeat = wallHeat;
  src.frictionImpulse = frictionImpulse;
  src.wideningImpulse = wideningImpulse;
  flow.mixingRate = mixingRate;
}
